/** Constant, symmetry and ripple of a tachogenerator. */
import { benchTacho } from '../../handbook/bench-tacho.ts';
import { accuracy, SPIN } from '../common.ts';
import { box, draw, line, wire, words } from '../drawing.ts';
import { meanOf, weigh } from '../estimate.ts';
import { groupBy } from '../group.ts';
import { oddRows } from '../odd.ts';
import { doubtful, good, graded, percent, resultOf } from '../outcome.ts';
import { drill, meter } from '../symbols.ts';
import { method, type Verdict } from '../types.ts';

/** Ripple, both ways, and straightness: bench policy, no source. */
const RIPPLE = [0.03, 0.1] as const;
const STRAIGHT = 0.02;

export const tachoConstant = method({
  id: 'tacho-constant',
  title: 'Constant of a tachogenerator',
  purpose:
    'Tells the volts a tacho gives for its speed, which an old velocity drive is set by; a wrong one makes the axis run away or crawl.',
  hazards: [SPIN, 'Never put an insulation tester on a tacho.'],
  tools: ['drill', 'tachometer', 'voltmeter; a scope for the ripple'],
  steps: [
    'Unplug the tacho from the drive: a load pulls its volts down.',
    'Spin it at a steady speed; read volts and speed together, both ways round.',
    'Repeat at two or three other speeds.',
    'With a scope, read the ripple from peak to peak at one speed.',
  ],
  drawing: draw(
    'A tachogenerator at a motor’s tail, spun by a drill, a voltmeter on its two leads.',
    box(30, 96, 50, 40),
    words(55, 120, 'tacho'),
    box(80, 84, 60, 64),
    words(110, 120, 'motor'),
    line([140, 116], [158, 116]),
    drill(158, 116),
    meter(40, 10, '7.04 V'),
    wire([50, 72], [44, 96]),
    wire([76, 72], [66, 96]),
    words(240, 60, '1012 r/min'),
  ),
  given: [
    {
      key: 'plate',
      kind: 'quantity',
      name: 'constant of the plate',
      unit: 'V/krpm',
      domain: 'positive',
      optional: true,
      help: 'To compare.',
    },
    accuracy('voltmeter', 'accuracy of the voltmeter', 'V', ['volts']),
    accuracy('tachometer', 'accuracy of the tachometer', 'r/min', ['speed']),
  ],
  columns: [
    { key: 'volts', kind: 'quantity', name: 'volts', unit: 'V', domain: 'positive', help: 'Without sign.' },
    {
      key: 'speed',
      kind: 'quantity',
      name: 'speed',
      unit: 'r/min',
      domain: 'positive',
      help: 'At the same moment.',
    },
    {
      key: 'way',
      kind: 'choice',
      name: 'which way round',
      optional: true,
      options: { cw: 'clockwise', ccw: 'counter-clockwise' },
      help: 'Seen on the shaft.',
    },
    {
      key: 'ripple',
      kind: 'quantity',
      name: 'ripple, peak to peak',
      unit: 'V',
      domain: 'not negative',
      optional: true,
      help: 'From a scope.',
    },
  ],
  least: 1,
  settles: [],
  sheets: [benchTacho.id],
  run: (read) => {
    const rows = read.rows.map((row) => {
      const [V, w, V_pp] = [read.cell('volts', row)!, read.cell('speed', row)!, read.cell('ripple', row)];
      const ripple = V_pp && read.through(benchTacho, 'ripple', { V, V_pp }).value;
      return { row, way: read.picked('way', row) ?? '', K: read.through(benchTacho, 'Kg', { V, w }), ripple };
    });
    const means = [...groupBy(rows, ({ way }) => way)].map(([way, each]) =>
      meanOf(
        each.map(({ K }) => K),
        `scatter ${way}`.trim(),
      ),
    );
    const K = weigh(means.map((mean) => [1 / means.length, mean]));
    const found = resultOf({ key: 'constant', name: 'tacho constant', unit: 'V/krpm' }, K);
    const verdicts: Verdict[] = [];
    const off =
      (Math.max(...rows.map((each) => each.K.value)) - Math.min(...rows.map((each) => each.K.value))) /
      K.value;
    if (rows.length > 1)
      verdicts.push(
        off <= STRAIGHT
          ? good(`Ways and speeds agree within ${percent(off)}.`)
          : doubtful(
              `Ways and speeds differ by ${percent(off)}: worn brushes, weak magnets, or volts and speed not read together.`,
            ),
      );
    const ripples = rows.flatMap(({ ripple }) => (ripple === undefined ? [] : [ripple]));
    if (ripples.length > 0) {
      const most = Math.max(...ripples);
      verdicts.push(
        graded(most, RIPPLE, {
          good: `It ripples by ${percent(most)}, as a sound one does.`,
          doubtful: `It ripples by ${percent(most)}: clean brushes and commutator. The drive will hum.`,
          bad: `It ripples by ${percent(most)}: bad brushes, a bent coupling or a broken segment. The drive cannot be tuned with it.`,
        }),
      );
    }
    const plate = read.maybe('plate');
    if (plate) {
      const share = K.value / plate.value;
      verdicts.push(
        Math.abs(share - 1) <= 0.05 + found.expanded / K.value
          ? good('It agrees with its plate within 5 %.')
          : doubtful(
              `It gives ${percent(share)} of its plate: weak magnets, a loaded tacho, or another speed ratio.`,
            ),
      );
    }
    return {
      results: [found],
      verdicts,
      questions: oddRows(
        rows.map((each) => ({ row: each.row, value: each.K.value })),
        'tacho constant',
      ),
    };
  },
});
