/** What would let a part stay: a wish that asks a little less, or another setting of the part itself. */

import { type Assessment, type Finding, type Remedy, seekRemedies } from '../assess/index.ts';
import { factSpec } from '../parts/index.ts';
import { parseQuantity } from '../quantity/index.ts';
import { andList } from '../quantity/words.ts';
import { findFact } from '../refit/place.ts';
import type { Cure } from './types.ts';

/** A wish that has to change by more than this is another wish: common practice, no source. */
const MOST_LESS = 2;

function mild({ refit }: Assessment, { path, text }: Remedy): boolean {
  const now = findFact(refit, path)?.value;
  const spec = factSpec(...(path.split('.').slice(-2) as [string, string]));
  if (now?.kind !== 'quantity' || spec?.kind !== 'quantity') return false;
  const [before, after] = [now.text, text].map((each) => parseQuantity(each, spec.unit));
  if (!before?.ok || !after?.ok) return false;
  const ratio = after.value.value / before.value.value;
  return ratio >= 1 / MOST_LESS && ratio <= MOST_LESS;
}

/** Wishes, and settings of the part itself, that would make its failing findings fit without upsetting others. */
export function* cure(
  assessment: Assessment,
  place: string,
  fails: readonly Finding[],
): Generator<number, Cure[]> {
  const cures: Cure[] = [];
  const cured = new Set<string>();
  for (const { id } of fails) {
    if (cured.has(id)) continue;
    const search = seekRemedies(assessment, id, (path) =>
      ['duty', 'spindle-duty', place].includes(path.split('.').at(-2) ?? ''),
    );
    let step = search.next();
    for (; !step.done; step = search.next()) yield step.value;
    const free = step.value.find(
      (remedy) =>
        remedy.kind === 'value' &&
        remedy.free &&
        (!remedy.path.includes('duty.') || mild(assessment, remedy)) &&
        remedy.changes.every(({ before, after }) => after !== 'fails' || before === 'fails'),
    );
    if (!free) continue;
    // What it mends along the way needs no cure of its own.
    const along = fails.filter(
      (each) =>
        each.id === id ||
        free.changes.some(
          (change) => change.id === each.id && (change.after === 'fits' || change.after === 'tight'),
        ),
    );
    const says = `${free.says} (for ${andList(along.map(({ title }) => `“${title}”`))})`;
    for (const each of along) {
      cured.add(each.id);
      cures.push({ finding: each.id, wish: free.path.includes('duty.'), says });
    }
  }
  return cures;
}
