/** A worker that is asked by number: who waits for which answer, how far it is, and giving it up. */

/** What a reply tells the one who waits. */
export type Told = { readonly done: unknown } | { readonly failed: Error } | { readonly progress: number };

interface Waiting {
  readonly done: (answer: never) => void;
  readonly failed: (fault: Error) => void;
  readonly progress: ((done: number) => void) | undefined;
}

export class Asking<
  Asked extends { [K in keyof Asked]: { readonly ask: unknown; readonly answer: unknown } },
  Reply extends { readonly n: number },
> {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, Waiting>();
  #last = 0;

  /** `tells` hears every reply, also where nobody waits for it any more. */
  constructor(worker: Worker, tells: (reply: Reply) => Told) {
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      const told = tells(data);
      const waiting = this.#waiting.get(data.n);
      if (!waiting) return;
      if ('progress' in told) {
        waiting.progress?.(told.progress);
        return;
      }
      this.#waiting.delete(data.n);
      if ('failed' in told) waiting.failed(told.failed);
      else waiting.done(told.done as never);
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
