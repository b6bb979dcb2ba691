/** What would not be fine with a proposal: what fails or is tight one by one, what is unknown folded by what is asked. */
import { type Resting, sayNeeds } from '../../engine/circuit/whole/index.ts';
import type { ReadWiring, WiringFinding } from '../../engine/circuit/wiring/index.ts';
import { byVerdict } from '../../engine/quantity/verdict.ts';
import { andList } from '../../engine/quantity/words.ts';
import type { Page } from './page.ts';
import { printWiringFindings } from './wiring.ts';

const INDENT = '    ';
/** Subjects named; more are only counted. */
const NAMED = 6;

/** @param all each by itself */
export function printProposedFindings(
  page: Page,
  findings: readonly WiringFinding[],
  read: ReadWiring,
  resting: Resting,
  all: boolean,
): void {
  const sorted = [...findings].sort(byVerdict);
  const folded = new Map<string, WiringFinding[]>();
  if (!all)
    for (const each of sorted)
      if (each.verdict === 'unknown') folded.set(each.title, [...(folded.get(each.title) ?? []), each]);
  const isFolded = ({ title }: WiringFinding): boolean => (folded.get(title)?.length ?? 0) > 1;
  printWiringFindings(
    page,
    sorted.filter((each) => each.verdict !== 'unknown' || !isFolded(each)),
    read,
    resting,
  );
  for (const [title, each] of folded) {
    if (each.length < 2) continue;
    const subjects = each.map(({ id }) => id.slice(id.indexOf(':') + 1));
    const shown = subjects.length > NAMED + 1 ? subjects.slice(0, NAMED) : subjects;
    const more = subjects.length - shown.length;
    page.prose(
      `${page.paint('cyan', 'unknown ')}${title} ${each.length} answers: ${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`,
      '',
      INDENT,
    );
    const rests = [...new Set(each.flatMap(({ id }) => resting.get(id) ?? []))];
    if (rests.length > 0)
      page.prose(`They rest on ${andList(rests)}; nobody has looked at that yet.`, INDENT);
    const needs = [...new Set(each.flatMap((one) => one.needs ?? []))];
    if (needs.length > 0) page.prose(`Wait for: ${sayNeeds(needs, read)}.`, INDENT);
  }
}
