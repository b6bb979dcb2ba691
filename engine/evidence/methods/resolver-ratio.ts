/** Ratio of a resolver, and whether it stays the same round the turn. */
import { benchResolver } from '../../handbook/bench-resolver.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { accuracy } from '../common.ts';
import { arc, circle, draw, turning, wire, words } from '../drawing.ts';
import { exact, meanOf } from '../estimate.ts';
import { oddRows } from '../odd.ts';
import { bad, doubtful, graded, note, percent, resultOf } from '../outcome.ts';
import { meter } from '../symbols.ts';
import { method, Senseless, type Verdict } from '../types.ts';

/** Change of the ratio round a turn: bench policy, no source. */
const STEADY = [0.05, 0.1] as const;

export const resolverRatio = method({
  id: 'resolver-ratio',
  title: 'Resolver: ratio and angle',
  purpose: 'Tells whether a resolver is sound and what ratio a converter has to be set to.',
  hazards: ['2 to 7 V at some kilohertz: nothing to fear. Disconnect it from the drive first.'],
  tools: [
    'audio oscillator of 2 to 5 kHz',
    'scope, or a meter that is true at that frequency (most hand meters are not)',
  ],
  steps: [
    'Feed the excitation pair (the odd one by its ohms) with 2 to 7 V at 2 to 5 kHz.',
    'Read the sine and the cosine pair; give a minus where it swings against the excitation.',
    'Turn the shaft by about a twelfth of a turn and read again, all the way round.',
  ],
  drawing: draw(
    'A resolver: one winding fed with a sine, two at right angles read.',
    circle(150, 100, 52),
    circle(150, 100, 20),
    turning(150, 100, 66, -130, -60),
    arc(150, 62, 8, 180, 360),
    arc(166, 62, 8, 180, 360),
    arc(190, 96, 8, 270, 450),
    arc(190, 112, 8, 270, 450),
    wire([130, 100], [60, 100]),
    wire([130, 108], [60, 108]),
    words(54, 96, '4 V, 3 kHz', 'end'),
    meter(256, 20, '1.29 V'),
    meter(256, 116, '1.53 V'),
    wire([202, 92], [240, 92], [266, 82]),
    wire([166, 152], [240, 186], [266, 178]),
    words(236, 52, 'sine', 'end'),
    words(236, 170, 'cosine', 'end'),
  ),
  given: [
    {
      key: 'excitation',
      kind: 'quantity',
      name: 'excitation',
      unit: 'V',
      domain: 'positive',
      help: 'Read with the same instrument, while it feeds.',
    },
    accuracy('meter', 'accuracy of the instrument', 'V', ['sine', 'cosine', 'excitation']),
  ],
  columns: [
    {
      key: 'sine',
      kind: 'quantity',
      name: 'sine pair',
      unit: 'V',
      help: 'Minus where it swings against the excitation.',
    },
    {
      key: 'cosine',
      kind: 'quantity',
      name: 'cosine pair',
      unit: 'V',
      help: 'Minus where it swings against the excitation.',
    },
  ],
  least: 1,
  settles: [],
  sheets: [benchResolver.id],
  run: (read) => {
    const Ve = read.entry('excitation');
    const rows = read.rows.map((row) => {
      const [Vs, Vc] = [read.cell('sine', row)!, read.cell('cosine', row)!];
      if (Vs.value === 0 && Vc.value === 0)
        throw new Senseless(
          `row ${row}`,
          `Row ${row}: both pairs read nothing, at which no resolver can stand. Is the excitation on the right pair?`,
        );
      return { row, Vs, Vc, TR: read.through(benchResolver, 'TR', { Ve, Vs, Vc }) };
    });
    const TR = meanOf(
      rows.map((each) => each.TR),
      'scatter round the turn',
    );
    const ratio = resultOf({ key: 'ratio', name: 'transformation ratio', unit: '1' }, TR);
    const last = rows.at(-1)!;
    const angle = resultOf(
      { key: 'angle', name: `angle at row ${last.row}`, unit: '°' },
      read.through(benchResolver, 'theta', { Vs: last.Vs, Vc: last.Vc }),
    );
    const verdicts: Verdict[] = [];
    const values = rows.map((each) => each.TR.value);
    if (rows.length < 3)
      verdicts.push(note('Few places: whether the ratio stays the same round the turn is not known yet.'));
    else {
      const off = (Math.max(...values) - Math.min(...values)) / TR.value;
      const error = read.through(benchResolver, 'error', { delta: exact(off) }).value;
      verdicts.push(
        graded(off, STEADY, {
          good: `The ratio stays within ${percent(off)} round the turn, worth ${formatQuantity(error, '°', { digits: 2 })} of angle at most.`,
          doubtful: `The ratio changes by ${percent(off)} round the turn, worth up to ${formatQuantity(error, '°', { digits: 2 })} of angle: sine and cosine are unlike. Are the leads long, or one loaded?`,
          bad: `The ratio changes by ${percent(off)} round the turn: a damaged winding, or a sign or a pair mixed up.`,
        }),
      );
    }
    if (TR.value > 2 || TR.value < 0.1)
      verdicts.push(bad('The ratio is far from the usual 0.5: excitation and an output may be swapped.'));
    else if (Math.abs(TR.value - 0.5) > 0.1)
      verdicts.push(
        doubtful('The ratio is not the usual 0.5; that can be right, but the converter has to be set to it.'),
      );
    return {
      results: [ratio, angle],
      verdicts,
      questions: oddRows(
        rows.map((each) => ({ row: each.row, value: each.TR.value })),
        'ratio',
      ),
    };
  },
});
