/** What every route works with. */
import type { Result } from '../engine/quantity/types.ts';
import type { Kept, OpenRefit, Store } from '../store/index.ts';
import { json, refusal, refusedBy } from './answer.ts';
import type { Answer } from './http.ts';
import type { Live } from './live.ts';
import type { Turns } from './turns.ts';

export interface Context {
  readonly store: Store;
  readonly live: Live;
  readonly turns: Turns;
  /** The time as ISO 8601. */
  readonly now: () => string;
  /** Six characters that no id had before, most likely. */
  readonly random: () => string;
  readonly version: string;
  readonly dataFolderName: string;
  /** Ids of the sample refits. */
  readonly samples: readonly string[];
}

/** What to answer about a refit that is there; 404 for one that is not. */
export function withRefit(
  { store }: Context,
  id: string,
  answer: (open: OpenRefit) => Answer | Promise<Answer>,
): Answer | Promise<Answer> {
  const open = store.openRefit(id);
  if (open.ok) return answer(open.value);
  return open.problem.code === 'unknown-name'
    ? refusal(404, 'not-found', open.problem.message, 'id')
    : refusedBy(open.problem);
}

/** Tells everybody of a kept edit and acknowledges it; or says why it was not kept. */
export function acknowledge(context: Context, id: string, result: Result<Kept>, head: number): Answer {
  if (!result.ok) return refusedBy(result.problem, head);
  const { edit } = result.value;
  const kept = { edit, head: edit.number };
  context.live.publish(id, kept);
  return json(201, kept);
}
