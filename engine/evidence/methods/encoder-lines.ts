/** Lines of an encoder by counting over whole turns. */
import { benchCounting } from '../../handbook/bench-counting.ts';
import { box, circle, draw, line, turning, wire, words } from '../drawing.ts';
import { meanOf } from '../estimate.ts';
import { countOf, doubtful, good, note, resultOf } from '../outcome.ts';
import { type Candidate, method } from '../types.ts';
import { wholeWithin } from '../whole.ts';

/** Line counts that encoders are made with: common practice, no source. */
const USUAL = [
  50, 60, 100, 120, 125, 128, 144, 180, 200, 250, 256, 300, 360, 400, 500, 512, 600, 625, 720, 800, 900, 1000,
  1024, 1200, 1250, 1270, 1440, 1500, 1800, 2000, 2048, 2400, 2500, 2540, 3000, 3600, 4000, 4096, 5000, 8192,
  9000, 10000,
];

export const encoderLines = method({
  id: 'encoder-lines',
  title: 'Lines of an encoder',
  purpose:
    'Tells the lines of an encoder whose plate is gone; taken wrongly, every move is too long or too short.',
  hazards: [
    '5 V only, polarity checked twice, current limited to 200 mA: a wrong supply destroys it.',
    'Turn by hand; the drive stays unplugged.',
  ],
  tools: ['counter, or the control’s own position display', 'mark on the shaft'],
  steps: [
    'Set the mark and the counter to zero.',
    'Turn exactly ten turns, or more, in one direction, back onto the mark.',
    'Read the counter; say whether it counts every edge of both channels (most controls) or lines only.',
    'Repeat, and the other way round.',
  ],
  drawing: draw(
    'An encoder disc with its lines, a mark on the shaft, and a counter.',
    circle(92, 100, 56),
    circle(92, 100, 8),
    ...Array.from({ length: 24 }, (_, at) => {
      const angle = (at * Math.PI) / 12;
      return line(
        [92 + 42 * Math.cos(angle), 100 + 42 * Math.sin(angle)],
        [92 + 52 * Math.cos(angle), 100 + 52 * Math.sin(angle)],
      );
    }),
    turning(92, 100, 68, -140, -40),
    words(92, 22, 'whole turns'),
    box(138, 84, 16, 32),
    wire([154, 92], [210, 92]),
    wire([154, 108], [210, 108]),
    words(182, 86, 'A'),
    words(182, 124, 'B'),
    box(210, 72, 90, 56),
    words(255, 106, '40000'),
  ),
  given: [
    {
      key: 'counting',
      kind: 'choice',
      name: 'what the counter counts',
      options: {
        edges: 'every edge of both channels (four for a line)',
        lines: 'one edge of one channel (one for a line)',
      },
      usual: 'edges',
      help: 'A control’s position display counts every edge.',
    },
    {
      key: 'mark',
      kind: 'quantity',
      name: 'how well the shaft was back on its mark',
      unit: '°',
      usual: '0 ± 3 °',
      help: 'A long pointer does 1°.',
    },
  ],
  columns: [
    {
      key: 'counts',
      kind: 'quantity',
      name: 'counts',
      unit: '1',
      domain: 'positive',
      whole: true,
      help: 'Without sign.',
    },
    {
      key: 'turns',
      kind: 'quantity',
      name: 'turns',
      unit: '1',
      domain: 'positive',
      whole: true,
      help: 'Ten or more.',
    },
  ],
  least: 1,
  settles: [{ place: 'feedback', fact: 'lines' }],
  sheets: [benchCounting.id],
  run: (read) => {
    const each = read.choice('counting') === 'lines' ? 4 : 1;
    const off = read.entry('mark').parts.map((part) => ({ ...part, amount: part.amount / (2 * Math.PI) }));
    const rows = read.rows.map((row) => {
      const C = { value: read.cell('counts', row)!.value * each, parts: [] };
      const N = {
        value: read.cell('turns', row)!.value,
        parts: off.map((part) => ({ ...part, id: `${part.id}:${row}` })),
      };
      return read.through(benchCounting, 'lines_found', { C, N });
    });
    const lines = meanOf(rows, 'scatter of the rows');
    const measured = resultOf({ key: 'measured', name: 'lines a turn, as measured', unit: 'lines' }, lines);
    const { nearest } = wholeWithin(lines);
    const room = Math.max(
      measured.expanded,
      0.5 / Math.max(...read.column('turns').map(({ value }) => value)),
    );
    const usual = USUAL.filter((one) => Math.abs(one - lines.value) <= room);
    const [only] = usual;
    const candidates = likelyLines(lines.value, measured.standard, usual);
    if (usual.length === 1 && only !== undefined)
      return {
        results: [
          countOf(
            { key: 'lines', name: 'lines a turn', unit: 'lines', fact: { place: 'feedback', fact: 'lines' } },
            only,
          ),
          measured,
        ],
        verdicts: [good(`${only} lines a turn, which is ${4 * only} counts.`)],
        candidates,
      };
    if (usual.length > 1)
      return {
        results: [measured],
        verdicts: [
          doubtful(
            `Several usual counts lie within the doubt: ${usual.join(', ')}. Turn more turns: the mark’s doubt is shared out over them.`,
          ),
        ],
        candidates,
      };
    return {
      results: [measured],
      verdicts: [
        doubtful(
          `No usual number of lines is near ${measured.text}. Were turns miscounted, is there a belt between, or does the counter count lines instead of edges?`,
        ),
        ...(USUAL.some(
          (one) => Math.abs(one / 4 - lines.value) <= room || Math.abs(one * 4 - lines.value) <= 4 * room,
        )
          ? [
              note(
                'A usual number would come out if the counter counted otherwise: try the other way of counting.',
              ),
            ]
          : []),
        ...(measured.expanded < 0.5 ? [note(`Whole numbers nearby: ${nearest}.`)] : []),
      ],
    };
  },
});

function likelyLines(found: number, standard: number, usual: readonly number[]): Candidate[] {
  const spread = Math.max(standard, 1e-6 * found);
  const weights = usual.map((one) => Math.exp(-0.5 * ((one - found) / spread) ** 2) + 1e-12);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return usual
    .map((one, at) => ({
      name: `${one} lines`,
      likely: weights[at]! / total,
      why: `the count is ${(found - one).toFixed(2)} lines off`,
    }))
    .sort((a, b) => b.likely - a.likely);
}
