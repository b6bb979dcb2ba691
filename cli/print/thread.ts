/** A thread on a page. */
import { formatQuantity } from '../../engine/quantity/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import {
  type Dimension,
  type Drill,
  type Limits,
  PLAN_CAUTION,
  type Plan,
  type Side,
  type TapPlan,
  type Thread,
} from '../../engine/threads/index.ts';
import type { Page } from './page.ts';
import { padEnd, padStart, plural } from './text.ts';

export interface ThreadAnswer {
  readonly thread: Thread;
  readonly dimensions: readonly Dimension[];
  readonly limits: readonly Limits[];
  readonly drills: readonly Drill[];
  readonly side: Side;
  readonly length: number;
  readonly plan?: Plan;
  /** 'no permission: the chuck’s limit is unknown', where no speed of the plan is permitted. */
  readonly noPermission?: string;
  readonly tap?: TapPlan;
  readonly notes: readonly string[];
}

const INDENT = '  ';
export const mm = (value: number, digits = 3): string => (value * 1e3).toFixed(digits);
const inch = (value: number): string => (value / 0.0254).toFixed(4);
const rpm = (value: number): string => formatQuantity(value, 'r/min', { digits: 3 });
const SIDES: Readonly<Record<Side, string>> = { external: 'outside', internal: 'inside' };

function table(page: Page, rows: readonly (readonly string[])[], left = 1): void {
  const widths = rows[0]?.map((_, at) => Math.max(...rows.map((row) => row[at]!.length))) ?? [];
  for (const row of rows)
    page.line(
      INDENT +
        row
          .map((cell, at) => (at < left ? padEnd(cell, widths[at]!) : padStart(cell, widths[at]!)))
          .join('  '),
    );
}

export function printThread(page: Page, answer: ThreadAnswer): void {
  const { thread, dimensions, limits, drills, plan, tap } = answer;
  const inches = thread.threadsPerInch !== undefined;
  page.prose(
    `${page.paint('bold', thread.designation)}, ${Math.round((thread.flankAngle * 180) / Math.PI)}° between the flanks${thread.hand === 'left' ? ', left-hand' : ''}${thread.starts > 1 ? `, ${thread.starts} starts` : ''}`,
  );
  for (const note of answer.notes) page.prose(note, INDENT);
  page.heading('Sizes, before any tolerance');
  table(
    page,
    dimensions.map(({ name, value, unit }) =>
      unit === 'mm'
        ? [name, `${mm(value)} mm`, ...(inches ? [`${inch(value)} in`] : [''])]
        : [name, unit === '°' ? `${((value * 180) / Math.PI).toFixed(2)}°` : value.toFixed(2), ''],
    ),
  );
  for (const each of limits) {
    page.heading(
      `Limits ${SIDES[each.side]}${each.className.includes(' ') ? '' : `, class ${each.className}`}`,
    );
    table(page, [
      ['', 'smallest', 'largest'],
      ...each.rows.map(({ name, low, high }) => [
        name,
        low === undefined ? '–' : inches ? `${mm(low)} mm (${inch(low)} in)` : `${mm(low)} mm`,
        high === undefined ? '–' : inches ? `${mm(high)} mm (${inch(high)} in)` : `${mm(high)} mm`,
      ]),
    ]);
    if (each.note) page.prose(each.note, INDENT);
    page.prose(page.paint('dim', `Source: ${each.source}`), INDENT);
  }
  if (drills.length > 0) page.heading('Hole');
  for (const { name, use, share, shareOld, inLimits, diameter } of drills)
    page.prose(
      `${name}${name.endsWith('mm') ? '' : ` (${mm(diameter)} mm)`} for a ${use}${share === undefined || share === 1 ? '' : `: ${Math.round(100 * share)} % of the thread is left`}${shareOld === undefined ? '' : ` (${Math.round(100 * shareOld)} % as inch tables count)`}${inLimits === false ? '; outside the limits of the bore' : ''}`.replace(
        'for a bore',
        'bore',
      ),
      INDENT,
      INDENT.repeat(2),
    );
  if (plan) printPlan(page, answer, plan);
  if (tap) printTap(page, tap);
}

function printPlan(page: Page, { thread, side, length, noPermission }: ThreadAnswer, plan: Plan): void {
  page.heading(`Cutting it ${SIDES[side]} with a single point, ${mm(length, 1)} mm long`);
  page.prose(`! ${PLAN_CAUTION}`, INDENT, INDENT.repeat(2));
  const [first] = plan.limits;
  page.prose(
    noPermission
      ? `${capital(noPermission)}. The plan is reckoned at ${rpm(plan.speed)}, where ${first!.name} gives way; it permits no speed. The slide would then move at ${formatQuantity(plan.feed, 'mm/min', { digits: 3 })}.`
      : `At most ${rpm(plan.speed)}: ${first!.name} allows no more. The slide then moves at ${formatQuantity(plan.feed, 'mm/min', { digits: 3 })}.`,
    INDENT,
  );
  for (const { name, speed } of plan.limits.slice(1)) page.prose(`${name}: ${rpm(speed)}`, INDENT.repeat(2));
  page.prose(
    `Begin at least ${mm(plan.runIn, 1)} mm before the thread; leave ${mm(plan.runOut, 1)} mm behind it.`,
    INDENT,
  );
  page.prose(
    `The slide trails by ${mm(plan.trail, 2)} mm at this speed: keep the spindle speed from the first pass to the last.`,
    INDENT,
  );
  if (thread.starts > 1)
    page.prose(
      `Starts: ${plan.starts.map(({ number, angle, shift }) => `${number} at ${((angle * 180) / Math.PI).toFixed(0)}° (or ${mm(shift, 2)} mm further)`).join(', ')}.`,
      INDENT,
    );
  page.prose(
    `${plural(plan.passes.length, 'pass', 'passes')} and ${plan.springs} without infeed, about ${formatQuantity(plan.time, 's', { digits: 2 })} in all.`,
    INDENT,
  );
  table(
    page,
    [
      ['pass', 'depth', 'infeed', 'tool at ø', 'shift along'],
      ...plan.passes.map(({ number, depth, infeed, diameter, shift }) => [
        `${number}`,
        mm(depth),
        mm(infeed),
        mm(diameter),
        mm(shift),
      ]),
    ],
    0,
  );
  for (const sentence of plan.assumed) page.prose(sentence, INDENT);
}

function printTap(page: Page, tap: TapPlan): void {
  page.heading('Rigid tapping');
  page.prose(
    `At ${rpm(tap.speed)} the tap runs on by ${mm(tap.overrun, 2)} mm, until the spindle stands after ${formatQuantity(tap.stopTime, 's', { digits: 2 })}.`,
    INDENT,
  );
  page.prose(
    `Drill at least ${mm(tap.hole, 1)} mm deep, not counting the point. A holder that takes the overrun up needs ${mm(tap.float, 2)} mm of float.`,
    INDENT,
  );
  page.prose(
    tap.highest < 0.1
      ? 'No speed keeps within that hole: drill deeper, or thread less deep.'
      : `Highest speed: ${rpm(tap.highest)}.`,
    INDENT,
  );
}
