/** How a typed text was understood, as the page shows it. */
import type { setPath } from '../../engine/assess/set-policy.ts';
import type { Reading } from './protocol.ts';

export function readingOf(
  { path, text }: { readonly path: string; readonly text: string },
  set: ReturnType<typeof setPath>,
): Reading {
  return set.ok
    ? { path, text, notes: set.value.notes, questions: set.value.questions, changes: set.value.changes }
    : { path, text, problem: set.problem, notes: [], questions: [], changes: [] };
}
