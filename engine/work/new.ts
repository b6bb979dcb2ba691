/** New pieces of work. */
import type { Refit, Work } from '../refit/types.ts';

/** 'thread-1', 'tap-3': the first number that was never given. */
export function newWorkId(refit: Pick<Refit, 'work'>, kind: Work['kind']): string {
  let number = 1;
  while (Object.hasOwn(refit.work, `${kind}-${number}`)) number++;
  return `${kind}-${number}`;
}
