/** What a change did to the findings. */
import type { Assessment, Finding } from '../../engine/assess/index.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import { worstFirst } from './order.ts';
import type { Page } from './page.ts';
import { plural } from './text.ts';
import { sayVerdict } from './verdict.ts';

interface Shift {
  readonly finding: Finding;
  /** Undefined where it was not asked before. */
  readonly before: Finding | undefined;
}

/** Findings whose verdict is another than before, and those that are new and answered. */
export function shiftsBetween(before: Assessment, after: Assessment): Shift[] {
  const old = new Map(before.findings.map((finding) => [finding.id, finding]));
  return worstFirst(after.findings)
    .map((finding) => ({ finding, before: old.get(finding.id) }))
    .filter((shift) =>
      shift.before ? shift.before.verdict !== shift.finding.verdict : shift.finding.verdict !== 'unknown',
    );
}

export function printChanges(page: Page, before: Assessment, after: Assessment): void {
  const shifts = shiftsBetween(before, after);
  for (const { finding, before: old } of shifts) {
    const from = old ? sayVerdict(page, old.verdict) : 'not asked';
    page.prose(
      `${from} → ${sayVerdict(page, finding.verdict)}  ${finding.title} (${finding.id})`,
      '',
      '    ',
    );
    if (finding.verdict !== 'unknown') page.prose(finding.sentence, '    ');
  }
  const ids = (of: Assessment): Set<string> => new Set(of.findings.map(({ id }) => id));
  const [was, is] = [ids(before), ids(after)];
  const gone = [...was].filter((id) => !is.has(id)).length;
  const added = after.findings.filter(({ id, verdict }) => !was.has(id) && verdict === 'unknown').length;
  if (gone > 0) page.prose(`${plural(gone, 'question does', 'questions do')} not apply any more.`);
  if (added > 0) page.prose(`${plural(added, 'question is', 'questions are')} new and not answered yet.`);
  if (shifts.length + gone + added === 0) page.prose('No verdict changed.');
  const counts = countVerdicts(after.findings);
  page.prose(
    `Now ${counts.fails} fails, ${counts.unknown} unknown, ${counts.tight} tight, ${counts.fits} fits.`,
  );
}
