/** Lead of a screw from its travel over several turns, and which usual lead that is. */
import { benchTravel } from '../../handbook/bench-travel.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { accuracy, PROP } from '../common.ts';
import { arrow, draw, thin, turning, words } from '../drawing.ts';
import { meanOf } from '../estimate.ts';
import { type RankedLead, rankLeads } from '../lead-candidates.ts';
import { oddRows } from '../odd.ts';
import { bad, doubtful, good, resultOf } from '../outcome.ts';
import { ground, indicator, screwThread } from '../symbols.ts';
import { type Candidate, method, type QuantityResult, type Verdict } from '../types.ts';

/** From here on a lead is called settled. */
const SURE = 0.95;

export const travelPerTurn = method({
  id: 'travel-per-turn',
  title: 'Lead of a screw from its travel',
  purpose:
    'Tells the lead, and whether the screw is metric or inch, before a control is set up that would cut everything 1.6 % wrong.',
  hazards: [
    PROP,
    'Turn by hand only, the drive unplugged: a screw that starts by itself takes fingers with it.',
  ],
  tools: [
    'long rule, calliper or dial indicator with gauge blocks',
    'pencil or tape for a mark on the screw',
  ],
  steps: [
    'Unplug the drive. Make a mark on the screw’s end or pulley and one beside it on the casting.',
    'Take up the play: turn some way in one direction and stop with the marks in line. Keep this direction.',
    'Note where the slide stands.',
    'Turn on, in the same direction, ten whole turns or as many as the travel allows, and stop with the marks in line.',
    'Note how far the slide went. Go back beyond the start, take up the play again and repeat three to five times.',
  ],
  drawing: draw(
    'A slide on its screw, a mark at the screw’s end, an indicator against the slide.',
    ground(20, 165, 280),
    screwThread(60, 110, 210),
    turning(45, 110, 20, -60, 200),
    words(45, 150, 'whole turns'),
    [
      {
        kind: 'line',
        style: 'closed',
        points: [
          [130, 70],
          [210, 70],
          [210, 135],
          [130, 135],
        ],
      },
      words(170, 95, 'slide'),
    ],
    indicator(268, 84, 'left', 40),
    thin([130, 60], [130, 40]),
    arrow([130, 48], [170, 48]),
    words(150, 38, 'travel'),
  ),
  given: [
    {
      key: 'turns',
      kind: 'quantity',
      name: 'turns of the screw',
      unit: '1',
      domain: 'positive',
      whole: true,
      help: 'Count whole turns of the screw, not of the motor. Ten or more.',
    },
    {
      key: 'mark',
      kind: 'quantity',
      name: 'how well the marks were in line',
      unit: '°',
      usual: '0 ± 3 °',
      help: 'The eye sees about 3° on a small pulley, 1° on a large one.',
    },
    {
      key: 'pitch',
      kind: 'quantity',
      name: 'pitch',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      help: 'From one thread to the next, if you could measure it: it tells how many starts there are. Write its ±.',
    },
    accuracy('rule', 'accuracy of rule or indicator', 'mm', ['travel']),
  ],
  columns: [
    {
      key: 'travel',
      kind: 'quantity',
      name: 'travel',
      unit: 'mm',
      domain: 'positive',
      help: 'How far the slide went over all the turns.',
    },
  ],
  least: 1,
  settles: [{ place: 'screw', fact: 'lead' }],
  sheets: [benchTravel.id],
  run: (read) => {
    const [N, phi] = [read.entry('turns'), read.entry('mark')];
    const travels = read.column('travel');
    const leads = travels.map((x) => read.through(benchTravel, 'Ph', { x, N, phi }));
    const lead = resultOf(
      { key: 'lead', name: 'lead: travel of one turn', unit: 'mm', fact: { place: 'screw', fact: 'lead' } },
      meanOf(leads, 'scatter of the travel'),
    );
    const ranked = rankLeads(lead, read.maybe('pitch'));
    return {
      results: [lead],
      verdicts: judge(lead, ranked, N.value),
      candidates: ranked
        .filter(({ likely }, at) => at < 3 || likely > 0.001)
        .slice(0, 6)
        .map((each) => candidateOf(each, lead)),
      questions: oddRows(travels, 'travel'),
    };
  },
});

function candidateOf({ lead, names, likely }: RankedLead, found: QuantityResult): Candidate {
  if (lead === undefined)
    return {
      name: 'none of the usual leads',
      likely,
      why: 'turns miscounted, a belt or gear between, the travel misread, or a screw made for this machine alone',
    };
  const off = Math.abs(found.value - lead);
  const times = found.standard > 0 ? `, ${(off / found.standard).toFixed(1)} times the standard doubt` : '';
  const size = formatQuantity(off, off < 1e-4 ? 'µm' : 'mm', { digits: 2 });
  return {
    name: names.join('; or '),
    likely,
    why: `the measured lead is ${size} ${found.value < lead ? 'less' : 'more'}${times}`,
  };
}

function judge(lead: QuantityResult, ranked: readonly RankedLead[], turns: number): Verdict[] {
  const [first, second] = ranked as [RankedLead, RankedLead | undefined];
  if (first.lead === undefined)
    return [
      bad(
        `No usual lead lies near ${lead.text}. Count the turns again, look for a belt or gear between the mark and the screw, and measure once more.`,
      ),
    ];
  if (first.likely >= SURE)
    return [good(`It is a lead of ${first.names[0]}: everything else is far less likely.`)];
  const near = ranked.filter((each) => each.lead !== undefined && each.likely > 0.01 * first.likely);
  if (second?.lead === undefined || near.length < 2)
    return [
      doubtful(
        `The nearest usual lead is ${first.names[0]}, but the measured value is off by more than its doubt explains. Measure once more.`,
      ),
    ];
  // Apart once ±2 standard doubts of either do not meet; the doubt of one turn shrinks as turns are added.
  const apart = Math.min(...near.slice(1).map((each) => Math.abs(each.lead! - first.lead!)));
  const wanted = Math.ceil((turns * 4 * lead.standard) / apart);
  const more =
    wanted > turns
      ? `About ${wanted} turns, read as well as now, would tell them apart (${wanted - turns} more).`
      : 'A few more readings would tell them apart.';
  return [
    doubtful(
      `It cannot be told yet whether this is ${near
        .slice(0, 3)
        .map(({ names }) => names[0])
        .join(' or ')}. ${more}`,
    ),
  ];
}
