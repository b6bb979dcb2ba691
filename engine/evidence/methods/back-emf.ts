/** Back-EMF constant by spinning the shaft. */
import { benchBackEmf } from '../../handbook/bench-back-emf.ts';
import { coverage } from '../../metrology/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { MAGNETS } from '../../tables/magnets.ts';
import { accuracy, MAKES_VOLTS, SPIN, temperature } from '../common.ts';
import { arrow, draw, wire, words } from '../drawing.ts';
import { doubtOf, estimate, exact, meanOf, standardOf, weigh } from '../estimate.ts';
import { groupBy } from '../group.ts';
import { lineThrough } from '../line.ts';
import { oddRows } from '../odd.ts';
import { bad, choiceOf, doubtful, good, graded, note, percent, resultOf } from '../outcome.ts';
import { drill, meter, motorLying } from '../symbols.ts';
import { type Estimate, method, type Question, type Verdict } from '../types.ts';

/** Both ways round, phases, and share of the plate: bench policy, no source. */
const WAYS = [0.02, 0.05] as const;
const PHASES = [0.01, 0.03] as const;
const PLATE = { fine: 0.95, weak: 0.9 };

/** No magnet in use changes by more than ferrite does; which it is, is not known. */
const ANY_MAGNET = estimate(
  -0.0011,
  doubtOf({ id: 'magnet', name: 'kind of magnet', kind: 'guess' }, 0.0011 / Math.sqrt(3)),
);

export const backEmf = method({
  id: 'back-emf',
  title: 'Back-EMF constant by spinning the shaft',
  purpose:
    'Tells how fast the motor will run on a given voltage and how much torque an ampere makes, and shows weakened magnets before the motor is built in.',
  hazards: [
    SPIN,
    MAKES_VOLTS,
    'Nothing but the meter may be connected: a drive or a short makes the motor brake hard in your hands.',
  ],
  tools: [
    'drill or lathe that turns the shaft steadily',
    'tachometer',
    'voltmeter (true r.m.s. for a brushless motor), or a scope for the peak',
  ],
  steps: [
    'Clamp the motor, couple the drill by a short piece of hose or a nut driver that cannot fly off.',
    'Brushed: meter on d.c. volts at the two leads. Brushless: meter on a.c. volts between two of the three leads.',
    'Spin at a steady speed; read volts and speed at the same moment.',
    'Repeat the other way round, and at two or three other speeds. Brushless: all three pairs of leads.',
  ],
  drawing: draw(
    'A drill spins the motor’s shaft; a voltmeter sits on its open leads; a tachometer reads the speed.',
    motorLying(20, 90),
    drill(122, 115),
    meter(40, 8, '36.4 V'),
    wire([50, 70], [32, 90]),
    wire([76, 70], [46, 90]),
    [
      {
        kind: 'line',
        style: 'closed',
        points: [
          [226, 20],
          [290, 20],
          [290, 56],
          [226, 56],
        ],
      },
      words(258, 42, '1012 r/min'),
    ],
    arrow([226, 50], [122, 106]),
    words(258, 14, 'tachometer'),
  ),
  given: [
    {
      key: 'read',
      kind: 'choice',
      name: 'what was read',
      options: {
        dc: 'DC volts at the brushes',
        'line-rms': 'a.c. volts between two leads (r.m.s.)',
        'line-peak': 'peak between two leads, on a scope',
      },
      help: 'Brushed motors give d.c.; brushless ones a.c.',
    },
    temperature('temperature', 'temperature of the motor'),
    {
      key: 'magnet',
      kind: 'choice',
      name: 'magnets',
      optional: true,
      options: Object.fromEntries(MAGNETS.map(({ id, name }) => [id, name])),
      help: 'If you know. It only matters when the motor is not at 20 °C.',
    },
    {
      key: 'plate',
      kind: 'quantity',
      name: 'back-EMF constant of the plate',
      unit: 'V/krpm',
      domain: 'positive',
      optional: true,
      help: 'In the same way of reading, to compare.',
    },
    accuracy('voltmeter', 'accuracy of the voltmeter', 'V', ['volts']),
    accuracy('tachometer', 'accuracy of the tachometer', 'r/min', ['speed']),
  ],
  columns: [
    {
      key: 'volts',
      kind: 'quantity',
      name: 'volts',
      unit: 'V',
      domain: 'positive',
      help: 'Without its sign.',
    },
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
      help: 'Seen on the shaft. Both ways together cancel a brush axis that is off.',
    },
    {
      key: 'pair',
      kind: 'choice',
      name: 'pair of leads',
      optional: true,
      options: { '1-2': 'first and second lead', '2-3': 'second and third', '3-1': 'third and first' },
      help: 'Brushless: which two of the three leads.',
    },
  ],
  least: 1,
  settles: [
    { place: 'motor', fact: 'emf' },
    { place: 'motor', fact: 'emfAs' },
  ],
  sheets: [benchBackEmf.id],
  run: (read) => {
    const how = read.choice('read')!;
    const magnet = MAGNETS.find(({ id }) => id === read.choice('magnet'));
    const aB = magnet ? exact(magnet.perKelvin) : ANY_MAGNET;
    const t = read.entry('temperature');
    const rows = read.rows.map((row) => {
      const [V, w] = [read.cell('volts', row)!, read.cell('speed', row)!];
      return {
        row,
        V,
        w,
        K: read.through(benchBackEmf, 'Ke20', { V, w, t, aB }),
        way: read.picked('way', row),
        pair: read.picked('pair', row),
      };
    });
    const groups = groupBy(rows, ({ way = '', pair = '' }) => `${way} ${pair}`.trim());
    const means = [...groups].map(([name, each]) =>
      meanOf(
        each.map(({ K }) => K),
        name === '' ? 'scatter' : `scatter, ${name}`,
      ),
    );
    const K = weigh(means.map((mean) => [1 / means.length, mean]));
    const constant = resultOf(
      {
        key: 'emf',
        name: 'back-EMF constant at 20 °C',
        unit: 'V/krpm',
        fact: { place: 'motor', fact: 'emf' },
      },
      K,
    );
    const verdicts: Verdict[] = [];
    const meanBy = (of: 'way' | 'pair'): Map<string, number> =>
      new Map(
        [
          ...groupBy(
            rows.filter((each) => each[of] !== undefined),
            (each) => each[of]!,
          ),
        ].map(([key, each]) => [
          key,
          meanOf(
            each.map((one) => one.K),
            key,
          ).value,
        ]),
      );
    const ways = meanBy('way');
    if (ways.size === 2) {
      const [V_cw, V_ccw] = ['cw', 'ccw'].map((way) => exact(ways.get(way)! * rows[0]!.w.value));
      const off = read.through(benchBackEmf, 'asymmetry', { V_cw: V_cw!, V_ccw: V_ccw! }).value;
      verdicts.push(
        graded(off, WAYS, {
          good: `Both ways round agree within ${percent(off)}.`,
          doubtful: `The two ways round differ by ${percent(off)}: the brushes may stand off their neutral place. The mean of both is still right.`,
          bad: `The two ways round differ by ${percent(off)}: brushes far off their neutral place, or one reading is wrong.`,
        }),
      );
    } else if (how === 'dc')
      verdicts.push(
        note(
          'Spun one way only: with brushes off their neutral place the other way gives another value. Spin it both ways.',
        ),
      );
    const pairs = [...meanBy('pair').values()];
    if (pairs.length > 1) {
      const off = (Math.max(...pairs) - Math.min(...pairs)) / K.value;
      verdicts.push(
        graded(off, PHASES, {
          good: `The pairs of leads agree within ${percent(off)}.`,
          doubtful: `The pairs of leads differ by ${percent(off)}: read again at the same speed.`,
          bad: `The pairs of leads differ by ${percent(off)}: shorted turns in one phase, or unlike magnets.`,
        }),
      );
    }
    if ([...groups.values()].every((each) => each.length === 1) && rows.length > 1)
      verdicts.push(
        note(
          'Nothing was read twice in the same way, so the ± does not know how readings scatter. Read again at another speed.',
        ),
      );
    const K_plate = read.maybe('plate');
    if (K_plate) verdicts.push(judgePlate(read.through(benchBackEmf, 'ratio', { K, K_plate })));
    return {
      results: [
        constant,
        choiceOf(
          { key: 'emfAs', name: 'how the back-EMF is stated', fact: { place: 'motor', fact: 'emfAs' } },
          how,
          how,
        ),
      ],
      verdicts,
      questions: [
        ...oddRows(
          rows.map((each) => ({ row: each.row, value: each.K.value })),
          'back-EMF constant',
        ),
        ...throughZero(rows),
      ],
    };
  },
});

function judgePlate(ratio: Estimate): Verdict {
  const said = percent(ratio.value);
  const room = 2 * standardOf(ratio);
  if (ratio.value - room > 1.1)
    return doubtful(
      `It makes ${said} of its plate: more than new cannot be. Peak against r.m.s., or another winding?`,
    );
  if (ratio.value - room >= PLATE.fine) return good(`It makes ${said} of its plate: the magnets are sound.`);
  if (ratio.value + room < PLATE.weak)
    return bad(
      `It makes only ${said} of its plate: the magnets are weak, or the plate states another value (peak, r.m.s., hot). Confirm by the torque with lever and scale.`,
    );
  return doubtful(
    `It makes ${said} of its plate, ± ${percent(room)}: a little weak, or not measured well enough to say.`,
  );
}

/** Volts against speed are a line through zero; one that misses it has an offset or a slip of a reading in it. */
function throughZero(rows: readonly { readonly V: Estimate; readonly w: Estimate }[]): Question[] {
  if (new Set(rows.map(({ w }) => w.value)).size < 3 || rows.length < 4) return [];
  const bare = rows.map(({ V, w }) => ({ x: exact(w.value), y: exact(V.value) }));
  const { intercept, freedom } = lineThrough(bare, 'volts against speed', 'speed');
  if (Math.abs(intercept.value) <= coverage(freedom, 0.99) * standardOf(intercept)) return [];
  return [
    {
      sentence: `The line of volts over speed does not go through zero: at standstill it would still show ${formatQuantity(intercept.value, 'V', { digits: 2 })}. Is the meter’s zero right, and were volts and speed read at the same moment?`,
    },
  ];
}
