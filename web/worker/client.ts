/** Asks the engine in its worker. */
import { Asking } from './asking.ts';
import type { Asked, Reply } from './protocol.ts';
import { Receiver } from './travel.ts';

export class Engine extends Asking<Asked, Reply> {
  constructor() {
    const receiver = new Receiver();
    super(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }), (data) => {
      // Taken in even where nobody waits any more: the next change builds on it.
      const snapshot = 'change' in data && data.change ? receiver.take(data.change) : undefined;
      if ('progress' in data) return { progress: data.progress };
      if ('fault' in data) return { failed: new Error(data.fault) };
      if (!snapshot) return { done: data.answer };
      return { done: data.answer === null ? snapshot : { ...(data.answer as object), snapshot } };
    });
  }
}
