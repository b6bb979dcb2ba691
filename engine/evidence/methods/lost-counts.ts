/** Lost counts over many turns between index pulses or marks. */
import { benchCounting } from '../../handbook/bench-counting.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { box, circle, draw, line, turning, wire, words } from '../drawing.ts';
import { exact } from '../estimate.ts';
import { groupBy } from '../group.ts';
import { bad, countOf, good, note } from '../outcome.ts';
import { method, type QuantityResult, type Question, type Verdict } from '../types.ts';

export const lostCounts = method({
  id: 'lost-counts',
  title: 'Lost counts',
  purpose:
    'Tells whether an encoder and its cable lose or make up counts, before they spoil a part at noon for no reason.',
  hazards: [
    'If the axis is turned by its drive: chuck and tools off, slide in mid travel, hand on the stop.',
  ],
  tools: ['control or counter that latches its count at the index pulse'],
  steps: [
    'Note the count at an index pulse (the once-a-turn mark).',
    'Turn many turns, twenty or more, and note how many counts lie between the first and the last index pulse.',
    'Both ways round, slowly and fast; and once with spindle and pumps running, since noise comes from them.',
    'One row for each run.',
  ],
  drawing: draw(
    'Two channels and an index pulse on their way to a counter; one edge is missing.',
    circle(60, 100, 40),
    line([60, 100], [60, 64]),
    turning(60, 100, 52, -130, -50),
    words(60, 36, 'many turns'),
    line(
      [120, 70],
      [140, 70],
      [140, 50],
      [160, 50],
      [160, 70],
      [180, 70],
      [180, 50],
      [200, 50],
      [200, 70],
      [220, 70],
    ),
    line(
      [120, 115],
      [130, 115],
      [130, 95],
      [150, 95],
      [150, 115],
      [190, 115],
      [190, 95],
      [210, 95],
      [210, 115],
      [220, 115],
    ),
    words(170, 134, 'an edge is missing'),
    line([120, 165], [168, 165], [168, 147], [174, 147], [174, 165], [220, 165]),
    words(112, 64, 'A', 'end'),
    words(112, 110, 'B', 'end'),
    words(114, 168, 'index', 'end'),
    wire([220, 60], [244, 60]),
    wire([220, 105], [244, 105]),
    box(244, 46, 66, 76),
    words(277, 90, '3997'),
  ),
  given: [
    {
      key: 'lines',
      kind: 'quantity',
      name: 'lines a turn',
      unit: 'lines',
      domain: 'positive',
      whole: true,
      help: 'From the plate, or found by counting.',
    },
    {
      key: 'lead',
      kind: 'quantity',
      exact: true,
      name: 'travel of one turn of the encoder',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      help: 'To say how far the slide would be off.',
    },
  ],
  columns: [
    {
      key: 'counts',
      kind: 'quantity',
      name: 'counts between index pulses',
      unit: '1',
      domain: 'not negative',
      whole: true,
      help: 'From the first to the last pulse, without sign.',
    },
    {
      key: 'turns',
      kind: 'quantity',
      name: 'turns',
      unit: '1',
      domain: 'positive',
      whole: true,
      help: 'Whole turns between the two pulses.',
    },
    {
      key: 'run',
      kind: 'choice',
      name: 'how',
      optional: true,
      options: { slow: 'slowly', fast: 'fast', noise: 'with spindle and pumps running' },
      help: 'To see what brings it about.',
    },
  ],
  least: 1,
  settles: [],
  sheets: [benchCounting.id],
  run: (read) => {
    const lines = read.entry('lines');
    const rows = read.rows.map((row) => {
      const [C, N] = [read.cell('counts', row)!, read.cell('turns', row)!];
      const lost = Math.round(read.through(benchCounting, 'lost', { C, N, lines }).value);
      return { row, lost, turns: N.value, run: read.picked('run', row), C };
    });
    const worst = rows.reduce((a, b) => (Math.abs(b.lost) > Math.abs(a.lost) ? b : a));
    const turns = rows.reduce((sum, each) => sum + each.turns, 0);
    const results: QuantityResult[] = [
      countOf({ key: 'lost', name: 'largest difference in a run', unit: 'counts' }, worst.lost),
    ];
    const Ph = read.maybe('lead');
    if (Ph && worst.lost !== 0) {
      const { value } = read.through(benchCounting, 'travel', {
        C: worst.C,
        N: exact(worst.turns),
        lines,
        Ph,
      });
      results.push(countOf({ key: 'travel', name: 'the same as travel of the slide', unit: 'µm' }, value));
    }
    return {
      results,
      verdicts: judge(rows, worst.lost, turns, lines.value),
      questions: questionsOf(rows, lines.value),
    };
  },
});

interface Row {
  readonly row: number;
  readonly lost: number;
  readonly turns: number;
  readonly run: string | undefined;
}

function judge(rows: readonly Row[], worst: number, turns: number, lines: number): Verdict[] {
  if (worst === 0)
    return [
      good(`Not a count was lost in ${formatQuantity(turns, '1', { digits: 9 })} turns.`),
      ...(turns < 20 ? [note('That was few turns: loss shows itself in twenty or more.')] : []),
    ];
  const perTurn = rows.map(({ lost, turns: each }) => lost / each);
  const steady =
    rows.length > 1 &&
    perTurn.every((each) => Math.abs(each - perTurn[0]!) < 0.02 * Math.abs(perTurn[0]!)) &&
    Math.abs(perTurn[0]!) >= 1;
  if (steady)
    return [
      bad(
        `Every run is off by the same number a turn (${perTurn[0]!.toFixed(1)}): that is no loss, the encoder has not ${lines} lines, or the turns were miscounted.`,
      ),
    ];
  const bad_ = groupBy(
    rows.filter(({ lost }) => lost !== 0),
    ({ run }) => run,
  );
  const clean = new Set(rows.filter(({ lost }) => lost === 0).map(({ run }) => run));
  const causes: string[] = [];
  if (bad_.has('fast') && clean.has('slow'))
    causes.push('It happens when fast only: counter or receiver too slow, long cable, missing end resistor.');
  if (bad_.has('noise') && (clean.has('slow') || clean.has('fast')))
    causes.push(
      'It happens with the spindle running: noise. Screen earthed at the cabinet, differential lines, cable away from motor leads.',
    );
  if (bad_.has('slow'))
    causes.push(
      'It happens slowly too: dirty disc, 5 V too low at the encoder, a broken lead, a slipping coupling.',
    );
  return [
    bad(
      `Counts are lost or made up: up to ${worst} in a run. ${causes.join(' ') || 'Any difference at all is a fault.'}`,
    ),
  ];
}

/** More than half a turn off is a miscounted turn, not lost counts. */
const questionsOf = (rows: readonly Row[], lines: number): Question[] =>
  rows
    .filter(({ lost }) => Math.abs(lost) > 2 * lines)
    .map(({ row }) => ({
      row,
      sentence: `Row ${row} is off by more than half a turn. Were the turns miscounted?`,
    }));
