/** A thread as JSON for scripts: everything SI and radians. */
import type { ThreadAnswer } from '../print/thread.ts';

export const threadJson = ({
  thread,
  dimensions,
  limits,
  drills,
  side,
  length,
  plan,
  noPermission,
  tap,
  notes,
}: ThreadAnswer) => ({
  format: 'fettle-thread',
  version: 1,
  thread: { ...thread, notes: undefined },
  dimensions,
  limits,
  drills,
  plan: plan && { side, length, ...plan },
  ...(noPermission ? { noPermission } : {}),
  tap,
  notes,
});
