/** How far long work has come, on the error stream, so that what is answered stays clean. */
import type { LookProgress } from '../../engine/circuit/stop/index.ts';
import type { Io } from '../io.ts';

/** Milliseconds between two lines; work that is over sooner says nothing. */
const EVERY = 2000;

/**
 * Says how far it is every two seconds. Ctrl-C ends the program at once: files are changed as a whole, before or after, so
 * nothing is left half written.
 */
export function progressOn({ err }: Pick<Io, 'err'>, clock: () => number = Date.now) {
  let last = clock();
  return ({ doing, done, all }: LookProgress): void => {
    const now = clock();
    if (now - last < EVERY) return;
    last = now;
    err(`Trying ${doing}: ${done}${all > 0 ? ` of ${all}` : ''}\n`);
  };
}
