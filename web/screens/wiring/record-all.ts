/** Several changes made from the newest state, as one edit. */
import type { Result } from '../../../engine/quantity/types.ts';
import type { Change, Refit } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';

/** What is wrong in a sentence; undefined where it was recorded, or was so already. */
export async function recordAll(
  session: Session,
  make: (refit: Refit) => Result<readonly Change[]>,
): Promise<string | undefined> {
  const state = session.get();
  if (state.state !== 'open') return 'The refit is not open yet; try again in a moment.';
  const made = make(state.view.refit);
  if (!made.ok) return made.problem.message;
  if (made.value.length === 0 || (await session.record(made.value))) return undefined;
  return 'It could not be recorded; the foot of the page says why.';
}
