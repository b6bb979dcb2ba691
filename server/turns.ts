/** Writing in turns: syncing to the disk holds this process up, so between turns others are answered. */

/** How long writing may hold up everything else, in milliseconds. */
const TURN = 15;

export interface Turns {
  /** Does the work when its turn comes, in the order asked. */
  readonly take: <T>(work: () => T | Promise<T>) => Promise<T>;
}

export function makeTurns(): Turns {
  const waiting: (() => void)[] = [];
  let running = false;

  function run(): void {
    const until = performance.now() + TURN;
    let next = waiting.shift();
    while (next) {
      next();
      if (performance.now() >= until) break;
      next = waiting.shift();
    }
    running = waiting.length > 0;
    // After what has come in meanwhile has been looked at.
    if (running) setImmediate(run);
  }

  return {
    take: (work) =>
      new Promise((done, fail) => {
        waiting.push(() => {
          try {
            done(work());
          } catch (fault) {
            fail(fault);
          }
        });
        if (!running) {
          running = true;
          setImmediate(run);
        }
      }),
  };
}
