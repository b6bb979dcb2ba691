/** The layout library in a worker of its own, which can be ended in the middle of its work. */
import Elk from 'elkjs/lib/elk-api.js';
import type { Layouter } from '../../../engine/circuit/drawing/index.ts';

export interface EndableLayouter {
  readonly layOut: Layouter;
  readonly end: () => void;
}

export function elkWorker(): EndableLayouter {
  const elk = new Elk({
    workerFactory: () =>
      new Worker(new URL('elkjs/lib/elk-worker.min.js', import.meta.url), { type: 'module' }),
  });
  let give: (reason: Error) => void = () => {};
  return {
    layOut: (graph) =>
      new Promise((done, failed) => {
        give = failed;
        elk.layout(graph).then(done, failed);
      }),
    end: () => {
      elk.terminateWorker();
      give(new Error('ended'));
    },
  };
}
