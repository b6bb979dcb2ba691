/** Lost motion on reversal, shared out between nut, thrust bearing, coupling, bracket and ways. */
import { benchBacklash } from '../../handbook/bench-backlash.ts';
import { accuracy, PROP } from '../common.ts';
import { draw, thin, turning, words } from '../drawing.ts';
import { exact, meanOf, standardOf } from '../estimate.ts';
import { oddRows } from '../odd.ts';
import { doubtful, good, note, resultOf } from '../outcome.ts';
import { ground, indicator, motorLying, screwThread } from '../symbols.ts';
import { type Estimate, method, type Question, Senseless, type Verdict } from '../types.ts';

const PLACES = {
  slide: 'slide, in line with the screw',
  edge: 'slide, at its far edge',
  screw: 'end of the screw, along its axis (thrust bearing)',
  bracket: 'nut against its slide (loose bracket)',
  arm: 'arm on the motor shaft, screw held (coupling or belt)',
} as const;

const NAMES = {
  slide: 'lost motion of the slide, all together',
  edge: 'lost motion at the far edge',
  screw: 'lost motion of the thrust bearing',
  bracket: 'lost motion of the nut’s bracket',
  arm: 'lost motion of coupling or belt',
} as const;
type PlaceKey = keyof typeof PLACES;

export const backlashSplit = method({
  id: 'backlash-split',
  title: 'Backlash, and which part has it',
  purpose:
    'Tells whether nut, thrust bearing, coupling or gib loses the motion, before the wrong one is bought.',
  hazards: [PROP, 'Turn by hand with the drive unplugged; keep fingers out from between slide and stop.'],
  tools: [
    'dial indicator with a stiff stand',
    'a straight arm to clamp on the motor shaft, where there is a coupling or belt',
  ],
  steps: [
    'Set the indicator on the bed and against the slide, in line with the screw. Push on the stand: if the reading moves, make it stiffer first.',
    'Come to a mark on the handwheel or pulley from the minus side and read; go past, come back to the same mark from the plus side and read. That is one row. Repeat five times: place “slide”.',
    'The same with the indicator against the end of the screw, along its axis: place “screw”. A greased ball in the centre hole keeps the tip still.',
    'The same between nut and slide: place “bracket”. And at the far edge of the slide: place “edge”.',
    'Hold the screw, rock the motor shaft, and read how far the end of the arm moves either way: place “arm”.',
    'Do the places you can reach; only “slide” is needed. Repeat at the ends and in the middle of the travel: wear is mostly where the machine has worked.',
  ],
  drawing: draw(
    'A motor and coupling turn a screw; indicators stand against the slide and against the end of the screw.',
    ground(10, 178, 300),
    motorLying(12, 88),
    screwThread(112, 113, 150),
    [
      {
        kind: 'line',
        style: 'closed',
        points: [
          [150, 72],
          [215, 72],
          [215, 140],
          [150, 140],
        ],
      },
      words(182, 92, 'slide'),
    ],
    indicator(240, 50, 'left', 6),
    indicator(300, 113, 'left', 20),
    turning(62, 113, 34, -110, -40),
    thin([215, 50], [215, 72]),
    words(240, 26, 'slide'),
    words(300, 145, 'screw'),
    words(62, 68, 'arm'),
  ),
  given: [
    {
      key: 'lead',
      kind: 'quantity',
      name: 'lead',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      doubt: 'measured',
      help: 'Travel of one turn; needed for rows at the arm.',
    },
    {
      key: 'arm',
      kind: 'quantity',
      name: 'length of the arm',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      help: 'From the middle of the motor shaft to the indicator’s tip; needed for rows at the arm.',
    },
    accuracy('indicator', 'accuracy of the indicator', 'mm', ['minus', 'plus']),
  ],
  columns: [
    { key: 'place', kind: 'choice', name: 'place', options: PLACES, help: 'Where the indicator stood.' },
    {
      key: 'plus',
      kind: 'quantity',
      name: 'reading coming from one side',
      unit: 'mm',
      help: 'Usually the larger of the two.',
    },
    {
      key: 'minus',
      kind: 'quantity',
      name: 'reading coming from the other side',
      unit: 'mm',
      help: 'At the same mark.',
    },
  ],
  least: 1,
  settles: [],
  sheets: [benchBacklash.id],
  run: (read) => {
    const at = new Map<PlaceKey, { row: number; lost: Estimate }[]>();
    for (const row of read.rows) {
      const place = read.picked('place', row) as PlaceKey;
      const lost = read.through(benchBacklash, 'B', {
        a: read.cell('plus', row)!,
        b: read.cell('minus', row)!,
      });
      at.set(place, [...(at.get(place) ?? []), { row, lost }]);
    }
    if (!at.has('slide'))
      throw new Senseless(
        'place',
        'No row has the place “slide”, and without the whole lost motion it cannot be shared out.',
      );
    const means = new Map<PlaceKey, Estimate>();
    for (const [place, rows] of at) {
      const mean = meanOf(
        rows.map(({ lost }) => lost),
        `scatter at ${place}`,
      );
      // The sign only says which reading was written first.
      means.set(
        place,
        mean.value < 0
          ? { value: -mean.value, parts: mean.parts.map((part) => ({ ...part, amount: -part.amount })) }
          : mean,
      );
    }
    const arm = means.get('arm');
    if (arm) {
      const [Ph, r] = [read.maybe('lead'), read.maybe('arm')];
      if (!Ph || !r)
        throw new Senseless(
          Ph ? 'arm' : 'lead',
          'Rows at the arm need the lead and the length of the arm: give both, or leave those rows out.',
        );
      means.set('arm', read.through(benchBacklash, 'B_arm', { s: arm, r, Ph }));
    }
    const none = exact(0);
    const nut = read.through(benchBacklash, 'B_nut', {
      B_total: means.get('slide')!,
      B_thrust: means.get('screw') ?? none,
      B_turn: means.get('arm') ?? none,
      B_bracket: means.get('bracket') ?? none,
    });
    const edge = means.get('edge');
    const way = edge && read.through(benchBacklash, 'B_way', { B_edge: edge, B_total: means.get('slide')! });
    const parts: [string, string, Estimate][] = [
      ...[...means]
        .filter(([place]) => place !== 'edge')
        .map(([place, mean]): [string, string, Estimate] => [place, NAMES[place], mean]),
      ['nut', 'left for the nut', nut],
      ...(way
        ? [['way', 'turning of the slide on its ways, at the far edge', way] as [string, string, Estimate]]
        : []),
    ];
    const questions: Question[] = [...at].flatMap(([place, rows]) =>
      oddRows(
        rows.map(({ row, lost }) => ({ row, value: lost.value })),
        `lost motion at ${place}`,
      ),
    );
    return {
      results: parts.map(([key, name, each]) => resultOf({ key, name, unit: 'µm' }, each)),
      verdicts: judge(parts, means),
      questions,
    };
  },
});

function judge(
  parts: readonly [string, string, Estimate][],
  means: ReadonlyMap<PlaceKey, Estimate>,
): Verdict[] {
  const total = means.get('slide')!;
  const suspects = parts
    .filter(([key]) => key !== 'slide' && key !== 'way')
    .sort((a, b) => b[2].value - a[2].value);
  const [key, name, most] = suspects[0]!;
  const missing = (['screw', 'arm', 'bracket'] as const).filter((place) => !means.has(place));
  const verdicts: Verdict[] = [];
  if (total.value < 2 * standardOf(total))
    verdicts.push(good('The slide loses no motion that these readings could see.'));
  else if (key === 'nut' && missing.length > 0)
    verdicts.push(
      doubtful(
        `Most is left for the nut, but ${missing.join(', ')} ${missing.length === 1 ? 'was' : 'were'} not read, and what they lose is counted there. Read them before you buy a nut.`,
      ),
    );
  else if (most.value - 2 * standardOf(most) > 0.5 * total.value)
    verdicts.push(good(`Most of it is here: ${name}.`));
  else
    verdicts.push(
      doubtful(
        'No single part has most of it, or the scatter hides which. More rows at the two largest would tell.',
      ),
    );
  const nut = parts.find(([each]) => each === 'nut')![2];
  if (nut.value < -2 * standardOf(nut))
    verdicts.push(
      doubtful(
        'The parts together lose more than the whole slide does: one of them was read at another mark, or the stand gave way.',
      ),
    );
  const way = parts.find(([each]) => each === 'way')?.[2];
  if (way && Math.abs(way.value) > 2 * standardOf(way))
    verdicts.push(
      note(
        'The far edge moves otherwise than the middle: the slide turns on its ways. Look at the gib before the nut.',
      ),
    );
  return verdicts;
}
