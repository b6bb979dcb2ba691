/** Run-out of a screw or a spindle. */
import { benchRunOut } from '../../handbook/bench-run-out.ts';
import { accuracy } from '../common.ts';
import { box, circle, draw, thin, turning, words } from '../drawing.ts';
import { meanOf, standardOf } from '../estimate.ts';
import { groupBy } from '../group.ts';
import { oddRows } from '../odd.ts';
import { doubtful, good, note, resultOf } from '../outcome.ts';
import { ground, indicator } from '../symbols.ts';
import { type Estimate, method, type Question, Senseless, type Verdict } from '../types.ts';

export const runOut = method({
  id: 'run-out',
  title: 'Run-out of a screw or spindle',
  purpose:
    'Tells a bent screw or a worn spindle from a badly set indicator, before bearings are bought for it.',
  hazards: ['Turn by hand only, drive unplugged: an indicator caught by a turning chuck flies.'],
  tools: ['dial indicator with a stiff stand', 'test bar, or a clean ground place on the shaft'],
  steps: [
    'Set the indicator square to the shaft, near its bearing.',
    'Turn slowly once round; note the highest and the lowest reading. Repeat three times.',
    'Move the indicator out along the shaft, note the distance, and repeat: place “far”.',
    'Take the test bar out, turn it half round in its seat, and repeat: what turns with the bar is the bar’s.',
  ],
  drawing: draw(
    'Two indicators on a test bar in a spindle, one near the bearing, one far out.',
    ground(10, 180, 300),
    box(14, 76, 80, 70),
    words(54, 115, 'spindle'),
    box(94, 100, 190, 22),
    circle(294, 111, 4),
    turning(290, 111, 24, -70, 70),
    indicator(120, 44, 'down', 40),
    indicator(250, 44, 'down', 40),
    words(120, 18, 'near'),
    words(250, 18, 'far'),
    thin([120, 134], [120, 160]),
    thin([250, 134], [250, 160]),
    thin([120, 152], [250, 152]),
    words(185, 148, 'distance'),
  ),
  given: [
    {
      key: 'distance',
      kind: 'quantity',
      name: 'distance between near and far',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      help: 'Needed when both were read.',
    },
    {
      key: 'allowed',
      kind: 'quantity',
      exact: true,
      name: 'run-out that would do',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      help: 'From the machine’s papers: often 0.01 mm at the nose.',
    },
    accuracy('indicator', 'accuracy of the indicator over its swing', 'mm', ['high']),
  ],
  columns: [
    { key: 'high', kind: 'quantity', name: 'highest reading', unit: 'mm', help: 'Of one turn.' },
    { key: 'low', kind: 'quantity', name: 'lowest reading', unit: 'mm', help: 'Of the same turn.' },
    {
      key: 'where',
      kind: 'choice',
      name: 'where',
      optional: true,
      options: { near: 'near the bearing', far: 'far out' },
      help: 'Left empty: near.',
    },
  ],
  least: 1,
  settles: [],
  sheets: [benchRunOut.id],
  run: (read) => {
    const rows = read.rows.map((row) => {
      const [high, low] = [read.cell('high', row)!, read.cell('low', row)!];
      if (high.value < low.value)
        throw new Senseless(
          `row ${row}`,
          `Row ${row}: the highest reading is lower than the lowest. Were they swapped?`,
        );
      return {
        row,
        where: read.picked('where', row) ?? 'near',
        swing: read.through(benchRunOut, 'swing', { high, low }),
      };
    });
    const means = new Map(
      [...groupBy(rows, ({ where }) => where)].map(([where, each]) => [
        where,
        meanOf(
          each.map(({ swing }) => swing),
          `scatter ${where}`,
        ),
      ]),
    );
    const named = { near: 'run-out near the bearing', far: 'run-out far out' } as const;
    const results = (['near', 'far'] as const).flatMap((where) => {
      const mean = means.get(where);
      return mean ? [resultOf({ key: where, name: named[where], unit: 'µm' }, mean)] : [];
    });
    const verdicts: Verdict[] = [];
    const [s_near, s_far] = [means.get('near'), means.get('far')];
    if (s_near && s_far) {
      const L = read.maybe('distance');
      if (!L)
        throw new Senseless('distance', 'Near and far were read, so the distance between them is needed.');
      const tilt = (key: 'tilt' | 'tilt_least'): Estimate =>
        read.through(benchRunOut, key, { s_near, s_far, L });
      results.push(
        resultOf(
          { key: 'tiltLeast', name: 'tilt of the axis, at least', unit: 'arcsec' },
          tilt('tilt_least'),
        ),
      );
      results.push(
        resultOf({ key: 'tilt', name: 'tilt of the axis, at most', unit: 'arcsec' }, tilt('tilt')),
      );
      const grows = s_far.value - s_near.value;
      const room = 2 * Math.hypot(standardOf(s_far), standardOf(s_near));
      verdicts.push(
        Math.abs(grows) <= room
          ? note('Near and far swing alike: the seat is off centre, not tilted.')
          : grows > 0
            ? note(
                'It swings more far out: the axis is tilted in its seat, or the bar or screw is bent. Turn the bar half round in its seat to tell which.',
              )
            : note(
                'It swings less far out than near: it crosses the axis somewhere between. A bent bar, or a dirty seat.',
              ),
      );
    }
    const allowed = read.maybe('allowed');
    if (allowed) {
      const most = results
        .filter(({ key }) => key === 'near' || key === 'far')
        .reduce((a, b) => (b.value > a.value ? b : a));
      verdicts.push(
        most.value + most.expanded <= allowed.value
          ? good(`The ${most.name} is within what would do.`)
          : most.value - most.expanded > allowed.value
            ? doubtful(`The ${most.name} is more than would do.`)
            : doubtful(`The ${most.name} lies so near what would do that these readings cannot decide.`),
      );
    } else verdicts.push(note('No limit was given, so this is neither good nor bad.'));
    const questions: Question[] = [...groupBy(rows, ({ where }) => where).values()].flatMap((each) =>
      oddRows(
        each.map(({ row, swing }) => ({ row, value: swing.value })),
        'run-out',
      ),
    );
    return { results, verdicts, questions };
  },
});
