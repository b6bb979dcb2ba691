/** Axial stiffness of a bearing housing, or of the bearings in it: known forces both ways, an indicator, a line each way. */
import { benchStiffness } from '../../handbook/bench-stiffness.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { accuracy, PROP } from '../common.ts';
import { arrow, box, circle, draw, line, words } from '../drawing.ts';
import { exact, minus, standardOf, weigh } from '../estimate.ts';
import { type Line, lineThrough } from '../line.ts';
import { oddRows } from '../odd.ts';
import { doubtful, good, note, resultOf } from '../outcome.ts';
import { ground, indicator, screwThread, springScale } from '../symbols.ts';
import { type Estimate, method, type QuantityResult, Senseless, type Verdict } from '../types.ts';

const WHAT = {
  housing: 'the housing, read against the bed',
  bearings: 'the end of the screw, read against its housing (thrust bearings)',
} as const;
const FACTS = {
  housing: { place: 'slide', fact: 'housingStiffness' },
  bearings: { place: 'screw', fact: 'bearingStiffness' },
} as const;
const NAMES = {
  housing: 'stiffness of the bearing housing and its seat',
  bearings: 'axial stiffness of the thrust bearings',
} as const;

type Way = 'push' | 'pull';
/** A line needs a third load to tell whether the readings lie on one: bench policy, no source. */
const FEWEST = 3;

export const axialStiffness = method({
  id: 'axial-stiffness',
  title: 'Axial stiffness by force and indicator',
  purpose:
    'Tells how far a bearing housing or its bearings give way along the screw, and whether they have play, which decides at what pace the axis begins to swing.',
  hazards: [
    PROP,
    'Unplug the drive: nothing may start by itself while a lever lies on the screw.',
    'A lever multiplies the pull: 200 N at its end may be 2000 N at the screw. Stand out of its swing, let nothing slip off, and never push harder than the axis itself does when it cuts.',
    'Stop at once when something creaks, a bolt moves or the reading creeps under a steady load.',
  ],
  tools: [
    'dial indicator that reads 0.001 mm, on a stiff stand',
    'spring scale, or weights on a string over a pulley',
    'a lever of known arms, to reach some hundreds of newtons',
  ],
  steps: [
    'Uncouple the nut or move the slide to mid-travel and leave it free, so that only the bearings hold the screw.',
    'Housing: stand the indicator on the bed, as near as it goes, its tip on the housing in line with the screw. Bearings: stand it on the housing, its tip on the end of the screw, a greased ball in the centre hole.',
    'Push once to the greatest load and let go, so that everything sits. Set the indicator to nought.',
    'Push the end of the screw along its axis with four or five loads, evenly spread, up and then down again; note force and reading of each.',
    'Do the same pulling, without touching the indicator in between: only then can the jump at no load be told from the give.',
    'Push on the bed beside the stand as hard: if the indicator moves by that alone, stand it elsewhere.',
  ],
  drawing: draw(
    'A lever on a pivot pushes the end of a screw along its axis; a spring scale pulls the lever; an indicator on the bed reads the bearing housing.',
    ground(10, 178, 300),
    box(150, 88, 46, 90),
    words(173, 162, 'housing'),
    screwThread(60, 113, 150),
    arrow([248, 113], [214, 113]),
    line([248, 40], [248, 150]),
    circle(248, 150, 5),
    words(258, 154, 'pivot', 'start'),
    springScale([248, 44], [312, 44]),
    indicator(112, 146, 'right', 22),
    line([112, 162], [112, 178]),
    words(90, 88, 'screw'),
    words(270, 28, 'pull'),
    words(238, 90, 'lever', 'end'),
  ),
  given: [
    {
      key: 'what',
      kind: 'choice',
      name: 'what gives way',
      options: WHAT,
      help: 'Where the indicator stood and what its tip touched.',
    },
    {
      key: 'lever',
      kind: 'quantity',
      name: 'times the lever multiplies the pull',
      unit: '1',
      domain: 'positive',
      optional: true,
      help: 'Distance from pivot to scale, by distance from pivot to screw: 500 mm by 50 mm is 10. Leave it out without a lever.',
    },
    accuracy('scale', 'accuracy of the scale', 'N', ['force']),
    accuracy('indicator', 'accuracy of the indicator', 'mm', ['reading']),
  ],
  columns: [
    {
      key: 'way',
      kind: 'choice',
      name: 'which way',
      options: { push: 'push', pull: 'pull' },
      help: 'Along the screw; which of the two is called push does not matter, as long as it stays so.',
    },
    {
      key: 'force',
      kind: 'quantity',
      name: 'pull on the scale',
      unit: 'N',
      domain: 'positive',
      help: 'In newton or kgf, without sign; before the lever multiplies it.',
    },
    {
      key: 'reading',
      kind: 'quantity',
      name: 'reading of the indicator',
      unit: 'mm',
      domain: 'any',
      help: 'With its sign, the same nought for every row.',
    },
  ],
  least: FEWEST,
  settles: [FACTS.housing, FACTS.bearings],
  sheets: [benchStiffness.id],
  run: (read) => {
    const what = read.choice('what') as keyof typeof WHAT;
    const n = read.maybe('lever') ?? exact(1);
    const rows = read.rows.map((row) => {
      const way = read.picked('way', row) as Way;
      const F = read.through(benchStiffness, 'F', { P: read.cell('force', row)!, n });
      return { row, way, x: way === 'push' ? F : weigh([[-1, F]]), y: read.cell('reading', row)! };
    });
    const lines = new Map<Way, Line>();
    const left: { row: number; value: number }[] = [];
    for (const way of ['push', 'pull'] as const) {
      const own = rows.filter((each) => each.way === way);
      if (own.length === 0) continue;
      if (new Set(own.map(({ x }) => x.value)).size < FEWEST)
        throw new Senseless(
          'force',
          `The rows of “${way}” have fewer than three different forces: one load cannot tell give from play. Take four or five.`,
        );
      const fit = lineThrough(own, `scatter about the line, ${way}`, 'force');
      lines.set(way, fit);
      own.forEach(({ row }, at) => {
        left.push({ row, value: fit.residuals[at]! });
      });
    }
    const [push, pull] = [lines.get('push'), lines.get('pull')];
    const slope =
      push && pull
        ? read.through(benchStiffness, 's_both', { s_push: push.slope, s_pull: pull.slope })
        : (push ?? pull)!.slope;
    // Which way the indicator counts is as it happens to stand: what gives way is what moves with the force.
    const sign = slope.value < 0 ? -1 : 1;
    const results: QuantityResult[] = [];
    const verdicts: Verdict[] = [];
    const seen = Math.abs(slope.value) > 2 * standardOf(slope);
    const against = push && pull && push.slope.value * pull.slope.value < 0;
    if (against && seen)
      verdicts.push(
        doubtful(
          'Pushed and pulled it moves the same way. Were the signs of the readings left out, or does the stand lean? It is not recorded as a stiffness.',
        ),
      );
    if (seen && !against) {
      const k = read.through(benchStiffness, 'k', { s: weigh([[sign, slope]]) });
      results.push(resultOf({ key: 'stiffness', name: NAMES[what], unit: 'N/µm', fact: FACTS[what] }, k));
    } else if (!seen) {
      const most = Math.abs(slope.value) + 2 * standardOf(slope);
      verdicts.push(
        doubtful(
          `It gives way less than these readings can see${most > 0 ? `: more than ${formatQuantity(1 / most, 'N/µm', { digits: 2 })}` : ''}. Use greater loads or a finer indicator.`,
        ),
      );
    }
    if (push && pull) both(push, pull, sign, what, read, results, verdicts);
    else
      verdicts.push(
        note('Loaded one way only: play cannot be told, and a lever or stand that leans counts as give.'),
      );
    const floating = [push, pull].some((each) => each && each.freedom < 2);
    if (floating) verdicts.push(note('Three loads hardly tell the scatter: take five a way, up and down.'));
    return { results, verdicts, questions: oddRows(left, 'reading beside the line') };
  },
});

type Reads = Parameters<typeof axialStiffness.run>[0];

/** What only both ways together tell: the jump at no load, and whether it gives alike. */
function both(
  push: Line,
  pull: Line,
  sign: number,
  what: keyof typeof WHAT,
  read: Reads,
  results: QuantityResult[],
  verdicts: Verdict[],
): void {
  const turned = (of: Estimate): Estimate => weigh([[sign, of]]);
  const play = read.through(benchStiffness, 'play', {
    x_push: turned(push.intercept),
    x_pull: turned(pull.intercept),
  });
  const found = resultOf({ key: 'play', name: 'play at no load', unit: 'µm' }, play);
  results.push(found);
  const cause =
    what === 'housing'
      ? 'the housing shifts on its seat: look for loose bolts and dowels'
      : 'the bearings are not preloaded: look at the locknut first';
  if (play.value > found.expanded && play.value > 0)
    verdicts.push(
      doubtful(`It jumps by ${found.text} where push turns to pull: ${cause}. Mend that, and measure again.`),
    );
  else if (play.value < -found.expanded)
    verdicts.push(
      note(
        'The lines cross before no load: it sticks and creeps back slowly. Tap beside it with a soft hammer before each reading.',
      ),
    );
  else verdicts.push(good('No play that these readings could see.'));
  const apart = minus(push.slope, pull.slope);
  if (Math.abs(apart.value) > 2 * standardOf(apart) && push.slope.value * pull.slope.value > 0)
    verdicts.push(
      note(
        'It gives more one way than the other, as bearings of unequal size or a seat with one shoulder do; the mean of both is recorded.',
      ),
    );
}
