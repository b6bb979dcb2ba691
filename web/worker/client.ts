/** Asks the engine in its worker. */
import type { Asked, Reply } from './protocol.ts';
import { Receiver } from './travel.ts';

interface Waiting {
  readonly done: (answer: never) => void;
  readonly failed: (fault: Error) => void;
  readonly progress: ((done: number) => void) | undefined;
}

export class Engine {
  readonly #worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  readonly #waiting = new Map<number, Waiting>();
  readonly #receiver = new Receiver();
  #last = 0;

  constructor() {
    this.#worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      // Taken in even where nobody waits any more: the next change builds on it.
      const snapshot = 'change' in data && data.change ? this.#receiver.take(data.change) : undefined;
      const waiting = this.#waiting.get(data.n);
      if (!waiting) return;
      if ('progress' in data) {
        waiting.progress?.(data.progress);
        return;
      }
      this.#waiting.delete(data.n);
      if ('fault' in data) waiting.failed(new Error(data.fault));
      else if (!snapshot) waiting.done(data.answer as never);
      else
        waiting.done((data.answer === null ? snapshot : { ...(data.answer as object), snapshot }) as never);
    };
  }

  ask<K extends keyof Asked>(
    what: K,
    ask: Asked[K]['ask'],
    options: { progress?: (done: number) => void; signal?: AbortSignal } = {},
  ): Promise<Asked[K]['answer']> {
    const n = ++this.#last;
    return new Promise((done, failed) => {
      this.#waiting.set(n, { done, failed, progress: options.progress });
      options.signal?.addEventListener('abort', () => {
        if (!this.#waiting.delete(n)) return;
        this.#worker.postMessage({ cancel: n });
        failed(new DOMException('cancelled', 'AbortError'));
      });
      this.#worker.postMessage({ n, do: what, ask });
    });
  }

  stop(): void {
    this.#worker.terminate();
  }
}
