/** Wanted work on a terminal. */
import { marginText } from '../../engine/assess/index.ts';
import { formatQuantity } from '../../engine/quantity/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import {
  FOLLOWING_DRAWS,
  type InStepAnswer,
  inStepHeads,
  inStepRows,
  inStepWords,
  type JudgedWork,
  LINKS,
  noPermission,
  sayChance,
  sayMargin,
  sayNeeds,
  sayRange,
  sayShare,
  type WorkChart,
  type WorkFinding,
} from '../../engine/work/index.ts';
import type { Page } from './page.ts';
import { padEnd, padStart, plural, quoted } from './text.ts';
import { sayVerdict } from './verdict.ts';

const INDENT = '    ';
const rpm = (speed: number | null): string =>
  speed === null ? 'not known' : formatQuantity(speed, 'r/min', { digits: 3 });
const mm = (length: number, digits = 2): string => (length * 1e3).toFixed(digits);

export function printList(page: Page, name: string, path: string, all: readonly JudgedWork[]): void {
  page.prose(page.paint('bold', `Work wanted of ${name}`));
  if (all.length === 0) {
    page.prose('Nothing yet. Say what it must cut:');
    page.line(`${INDENT}fettle work ${quoted(path)} --add thread thread=M20x1.5 length=30mm`);
    page.line(`${INDENT}fettle work ${quoted(path)} --add tap thread=M8 depth=16mm`);
    return;
  }
  for (const each of all) printRow(page, each);
  page.heading('What next');
  const worst = all.find(({ verdict }) => verdict !== 'fits') ?? all[0]!;
  page.line(`${INDENT}fettle work ${quoted(path)} --show ${worst.work.id}`);
}

/** One of a list: verdict, name, and the sentence that counts. */
export function printRow(page: Page, { work, verdict, summary }: JudgedWork): void {
  page.prose(`${sayVerdict(page, verdict)}  ${page.paint('bold', work.name || work.id)} (${work.id})`);
  page.prose(summary, INDENT);
}

/** ', margin 8.68, likely 7.9 to 9.1'; the second half where it says more than the first. */
function sayMarginAndRange(finding: WorkFinding): string {
  if (finding.margin === undefined || finding.margin === null) return '';
  const margin = sayMargin(finding);
  const range = finding.marginRange ? sayRange(finding.marginRange) : margin;
  return `, margin ${margin}${range === margin ? '' : `, likely ${range}`}`;
}

export function printOne(page: Page, { work, verdict, findings, detail, ways, draws }: JudgedWork): void {
  page.prose(`${sayVerdict(page, verdict)}  ${page.paint('bold', work.name || work.id)} (${work.id})`);
  page.prose(
    Object.entries(work.settings)
      .map(([key, value]) => `${key} ${value}`)
      .join(', '),
    INDENT,
  );
  for (const finding of findings) {
    page.line();
    page.prose(
      `${sayVerdict(page, finding.verdict)}  ${page.paint('bold', finding.title)} (${LINKS[finding.link]}${sayMarginAndRange(finding)})`,
    );
    page.prose(finding.sentence, INDENT);
    if (sayChance(finding)) page.prose(sayChance(finding), INDENT);
    for (const each of finding.because) page.prose(each, INDENT, `${INDENT}  `);
    if (finding.needs.length > 0)
      page.prose(`Not known: ${sayNeeds(finding.needs).join('; ')} (${finding.needs.join(', ')}).`, INDENT);
    if (finding.basis) page.prose(page.paint('dim', `basis ${finding.basis}`), INDENT);
  }
  if (draws) {
    page.line();
    page.prose(
      `Drawn ${draws.lanes} times with every doubtful fact as it may be: ${sayShare(draws.chance)}. “Likely” is where a margin lies in 95 of 100 draws. How an axis follows is drawn from ${FOLLOWING_DRAWS} axes moved in the simulation.`,
    );
  }
  if (ways.length > 0) {
    page.heading('Ways round');
    for (const way of ways) {
      page.prose(page.paint('bold', way.name), '', INDENT);
      page.prose(way.how, INDENT);
      page.prose(`Where it ends: ${way.limits}`, INDENT);
    }
    page.prose(page.paint('dim', `Source: ${ways[0]!.source}`), INDENT);
  }
  if (detail) printDetail(page, detail);
}

function printDetail(page: Page, detail: NonNullable<JudgedWork['detail']>): void {
  if (detail.kind === 'cut') {
    page.heading('Links, the first that gives way at the head');
    for (const { name, margin, depth, feed } of detail.links)
      page.prose(
        `${name}: margin ${Number.isFinite(margin) ? marginText(margin) : '–'}${depth === undefined ? '' : `, gives way at ${mm(depth)} mm deep`}${feed === undefined ? '' : `, at ${mm(feed, 3)} mm of feed`}`,
        INDENT,
        `${INDENT}  `,
      );
    return;
  }
  page.heading('Spindle speed that each link allows');
  const refused = noPermission(detail.limits);
  if (refused !== null)
    page.prose(
      `${capital(refused)}. What stands below is each link for itself; it permits no speed.`,
      INDENT,
    );
  for (const { name, speed } of detail.limits)
    page.prose(`${padStart(rpm(speed), 12)}  ${name}`, INDENT, `${INDENT}${' '.repeat(14)}`);
  if (detail.kind === 'thread' && detail.plan) {
    const { plan } = detail;
    page.heading('Plan');
    page.prose(`! ${detail.caution}`, INDENT, `${INDENT}  `);
    page.prose(
      `${plural(plan.passes.length, 'pass', 'passes')} and ${plan.springs} without infeed at ${rpm(plan.speed)}, about ${formatQuantity(plan.time, 's', { digits: 2 })}. Run-in ${mm(plan.runIn)} mm, run-out ${mm(plan.runOut)} mm.`,
      INDENT,
    );
    page.prose(`Depths: ${plan.passes.map(({ depth }) => mm(depth, 3)).join(', ')} mm.`, INDENT);
    if (plan.starts.length > 1)
      page.prose(
        `Starts: ${plan.starts.map(({ number, angle, shift }) => `${number} at ${((angle * 180) / Math.PI).toFixed(0)}° or ${mm(shift)} mm further`).join('; ')}.`,
        INDENT,
      );
  }
  if (detail.kind === 'milled' && detail.feed !== null && detail.time !== null) {
    page.heading('The helix');
    page.prose(`! ${detail.caution}`, INDENT, `${INDENT}  `);
    page.prose(
      `The middle of the ${mm(detail.cutter)} mm cutter goes round on ${mm(detail.radius)} mm of radius at ${formatQuantity(detail.feed, 'mm/min', { digits: 3 })}, ${detail.axis} climbs at ${formatQuantity(detail.climb ?? 0, 'mm/min', { digits: 3 })}; about ${formatQuantity(detail.time, 's', { digits: 2 })} in all.`,
      INDENT,
    );
  }
  if (detail.kind === 'tap') {
    page.heading('Highest speed by size of tap, overrun two pitches, a worn tap');
    page.prose(`! ${detail.caution}`, INDENT, `${INDENT}  `);
    for (const { name, speed, byOverrun, byTorque } of detail.sizes)
      page.prose(
        `${padEnd(name, 5)}${padStart(speed > 0 ? rpm(speed) : 'not at all', 12)}  (by overrun ${rpm(byOverrun)}, by torque ${byTorque > 0 ? rpm(byTorque) : 'too weak'})`,
        INDENT,
        `${INDENT}  `,
      );
  }
}

export function printChart(page: Page, name: string, chart: WorkChart): void {
  page.prose(page.paint('bold', `Threads ${name} can cut, along ${chart.axis}`));
  page.prose(
    'Travel of one turn, the highest spindle speed, and the link that gives way first. Multiply pitch by starts for the travel.',
  );
  if (chart.noPermission !== null) {
    page.prose(
      `${capital(chart.noPermission)}. Until it is known there is no speed to hang on the wall. Not known: ${chart.unknown.join('; ')}.`,
    );
    if (chart.known.length > 0)
      page.prose(
        `What is known limits it all the same: ${chart.known.map(({ name: each, speed }) => `${each} ${rpm(speed)}`).join('; ')}.`,
      );
  }
  page.line();
  page.line(`${padStart('mm a turn', 10)}  ${padStart('per inch', 8)}  ${padStart('at most', 12)}  limit`);
  for (const { lead, speed, by } of chart.rows)
    page.line(
      `${padStart(mm(lead), 10)}  ${padStart((0.0254 / lead).toFixed(1), 8)}  ${chart.noPermission ?? `${padStart(speed !== null && speed < chart.slowest ? 'too slow' : rpm(speed), 12)}  ${by}`}`,
    );
  if (chart.points.length > 0) page.heading('Wanted');
  for (const { name: each, lead, speed, verdict } of chart.points)
    page.prose(
      `${sayVerdict(page, verdict)}  ${each}: ${mm(lead)} mm a turn${speed === null ? `, ${chart.noPermission}` : ` at ${rpm(speed)}`}`,
      INDENT,
    );
}

export function printInStep(page: Page, { work }: JudgedWork, answer: InStepAnswer): void {
  page.prose(page.paint('bold', `${work.name || work.id} in time, spindle and axis in step`));
  for (const { level, says } of answer.sentences)
    page.prose(`${level === 'bad' ? '✕' : level === 'mind' ? '◐' : '●'} ${says}`, '', '  ');
  page.line();
  page.line(
    inStepHeads(answer)
      .map((each) => padStart(each, 16))
      .join(''),
  );
  const all = inStepRows(answer);
  const rows = 16;
  for (let row = 0; row <= rows; row++) {
    const { time, turns, speed, place, off } = all[Math.round((row * (all.length - 1)) / rows)]!;
    page.line(
      [
        time.toFixed(3),
        turns.toFixed(2),
        ((speed * 30) / Math.PI).toFixed(0),
        mm(place, 3),
        off === null ? 'not in the cut' : (off * 1e6).toFixed(1),
      ]
        .map((each) => padStart(each, 16))
        .join(''),
    );
  }
  page.line();
  for (const each of inStepWords(answer)) page.prose(each, '', '  ');
  page.line();
  for (const each of answer.assumed) page.prose(page.paint('dim', each), '', '  ');
}
