/** Pole pairs of a brushless motor or a resolver. */
import { benchCounting } from '../../handbook/bench-counting.ts';
import { accuracy, MAKES_VOLTS, SPIN } from '../common.ts';
import { arc, box, draw, line, turning, wire, words } from '../drawing.ts';
import { meanOf } from '../estimate.ts';
import { bad, countOf, doubtful, good, resultOf } from '../outcome.ts';
import { motorEnd } from '../symbols.ts';
import { method, Senseless } from '../types.ts';
import { wholeWithin } from '../whole.ts';

export const polePairs = method({
  id: 'pole-pairs',
  title: 'Pole pairs',
  purpose:
    'Tells how many electrical turns the drive has to make for one of the shaft; set wrongly, a brushless motor runs away.',
  hazards: [SPIN, MAKES_VOLTS],
  tools: [
    'scope, or a meter that shows hertz; or an analogue meter and patience',
    'drill and tachometer, or a mark on the shaft',
  ],
  steps: [
    'By hand: meter or scope on two motor leads (or on a resolver’s fed sine winding). Turn the shaft slowly through whole turns and count full cycles: up, down and back to zero.',
    'By drill: read hertz between two leads and the speed at the same moment.',
    'Do it two or three times; the answer has to be a whole number.',
  ],
  drawing: draw(
    'A shaft is turned once; a scope shows how often the voltage swings.',
    motorEnd(80, 110, 44),
    turning(80, 110, 58, -150, 150),
    words(80, 188, 'one turn'),
    box(170, 40, 130, 90),
    ...[0, 1, 2].flatMap((at) => [arc(190 + at * 36, 85, 9, 180, 360), arc(208 + at * 36, 85, 9, 0, 180)]),
    line([176, 85], [294, 85]),
    words(235, 148, 'three cycles: 3 pole pairs'),
    wire([112, 80], [170, 66]),
    wire([118, 88], [170, 104]),
  ),
  given: [
    accuracy('frequencyMeter', 'accuracy of the frequency', 'Hz', ['hertz']),
    accuracy('tachometer', 'accuracy of the tachometer', 'r/min', ['speed']),
    {
      key: 'mark',
      kind: 'quantity',
      name: 'how well the turns were stopped at the mark',
      unit: '°',
      usual: '0 ± 10 °',
      help: 'Counting by hand.',
    },
  ],
  columns: [
    {
      key: 'cycles',
      kind: 'quantity',
      name: 'cycles counted',
      unit: '1',
      domain: 'positive',
      optional: true,
      help: 'Full swings. A quarter can be told apart.',
    },
    {
      key: 'turns',
      kind: 'quantity',
      name: 'turns of the shaft',
      unit: '1',
      domain: 'positive',
      optional: true,
      help: 'Whole turns.',
    },
    {
      key: 'hertz',
      kind: 'quantity',
      name: 'frequency',
      unit: 'Hz',
      domain: 'positive',
      optional: true,
      help: 'Between two leads.',
    },
    {
      key: 'speed',
      kind: 'quantity',
      name: 'speed',
      unit: 'r/min',
      domain: 'positive',
      optional: true,
      help: 'At the same moment.',
    },
  ],
  least: 1,
  settles: [],
  sheets: [benchCounting.id],
  run: (read) => {
    const turn = read.entry('mark');
    const found = read.rows.map((row) => {
      const [cycles, turns, f, w] = [
        read.cell('cycles', row),
        read.cell('turns', row),
        read.cell('hertz', row),
        read.cell('speed', row),
      ];
      if (f && w && !cycles && !turns) return read.through(benchCounting, 'p_speed', { f, w });
      if (cycles && turns && !f && !w) {
        const N = {
          value: turns.value,
          parts: turn.parts.map((part) => ({ ...part, amount: part.amount / (2 * Math.PI) })),
        };
        return read.through(benchCounting, 'p_turns', { cycles: { value: cycles.value, parts: [] }, N });
      }
      throw new Senseless(`row ${row}`, `Row ${row} needs either cycles and turns, or hertz and speed.`);
    });
    const pairs = meanOf(found, 'scatter of the rows');
    const measured = resultOf({ key: 'measured', name: 'cycles a turn, as measured', unit: '1' }, pairs);
    const { nearest, within } = wholeWithin(pairs);
    const off = Math.abs(pairs.value - nearest);
    if (nearest < 1)
      return {
        results: [measured],
        verdicts: [
          bad(
            'Less than half a cycle in a turn: that is no motor with poles. Were turns and cycles swapped?',
          ),
        ],
      };
    const sure = within.length === 1 || (within.length === 0 && off < 0.1);
    const results = sure
      ? [countOf({ key: 'polePairs', name: 'pole pairs', unit: '1' }, nearest), measured]
      : [measured];
    if (sure)
      return {
        results,
        verdicts: [
          good(`${nearest} pole ${nearest === 1 ? 'pair' : 'pairs'}, which is ${2 * nearest} poles.`),
        ],
      };
    return {
      results,
      verdicts: [
        within.length > 1
          ? doubtful(
              `It could be ${within
                .slice(0, 4)
                .sort((a, b) => a - b)
                .join(' or ')}. More turns, or a steadier speed, would tell.`,
            )
          : doubtful(
              `It comes out as ${measured.text}, between two whole numbers. A cycle or a turn was miscounted, or the speed was not that of this shaft.`,
            ),
      ],
    };
  },
});
