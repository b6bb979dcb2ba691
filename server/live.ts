/** Live updates: each kept edit goes to everybody who has that refit open (server-sent events). */
import type { ServerResponse } from 'node:http';
import type { Result } from '../engine/quantity/types.ts';
import type { Edit } from '../engine/refit/index.ts';
import type { EditKept, LiveHead } from '../engine/refit/wire.ts';

/** A listener that has so many bytes yet to read is cut off; its page comes back and catches up at its own pace. */
const MOST_UNREAD = 4_000_000;
/** Edits read at once while catching up. */
const PAGE = 200;

export interface Live {
  readonly publish: (refit: string, kept: EditKept) => void;
  /** Sends what came after edit `after`, then every edit as it is kept. */
  readonly listen: (refit: string, after: number, response: ServerResponse) => void;
  /** Says 'gone' to everybody and ends. */
  readonly close: () => void;
}

/** What catching up reads from. */
export interface Past {
  readonly head: (refit: string) => Result<number>;
  readonly edits: (refit: string, from: number, to: number) => Result<readonly Edit[]>;
}

const event = (name: string, data: object, id?: number): string =>
  `${id === undefined ? '' : `id: ${id}\n`}event: ${name}\ndata: ${JSON.stringify(data)}\n\n`;

/** `beat` is the time between signs of life, in milliseconds. */
export function makeLive(past: Past, beat = 15_000): Live {
  /** Those who have caught up, by refit. */
  const listeners = new Map<string, Set<ServerResponse>>();
  const all = new Set<ServerResponse>();
  let closed = false;

  const heart = setInterval(() => {
    for (const response of all) response.write(': still here\n\n');
  }, beat);
  heart.unref();

  function leave(refit: string, response: ServerResponse): void {
    all.delete(response);
    const others = listeners.get(refit);
    others?.delete(response);
    if (others?.size === 0) listeners.delete(refit);
  }

  /** No edit falls between the last page and joining: both happen without a pause. */
  async function catchUp(refit: string, after: number, response: ServerResponse): Promise<void> {
    let seen = after;
    while (all.has(response)) {
      const head = past.head(refit);
      if (!head.ok) return end(response);
      if (seen >= head.value) {
        const others = listeners.get(refit) ?? new Set();
        listeners.set(refit, others.add(response));
        return;
      }
      const edits = past.edits(refit, seen + 1, Math.min(head.value, seen + PAGE));
      if (!edits.ok) return end(response);
      for (const edit of edits.value) {
        const kept: EditKept = { edit, head: head.value };
        response.write(event('edit', kept, edit.number));
      }
      // An imported history may begin after the first edit, so a page can be empty.
      seen = Math.min(head.value, seen + PAGE);
      await drained(response);
    }
  }

  return {
    publish: (refit, kept) => {
      const here = listeners.get(refit);
      if (!here) return;
      const text = event('edit', kept, kept.edit.number);
      for (const response of here) {
        if (response.writableLength > MOST_UNREAD) response.destroy();
        else response.write(text);
      }
    },
    listen: (refit, after, response) => {
      if (closed) return end(response);
      const head = past.head(refit);
      if (!head.ok) return end(response);
      all.add(response);
      response.on('close', () => leave(refit, response));
      const now: LiveHead = { head: head.value };
      // The id is where a page that is cut off before the first edit goes on from.
      response.write(`retry: 1000\n${event('head', now, after)}`);
      // A fault of ours ends this stream alone; the page comes back and asks again.
      catchUp(refit, after, response).catch(() => response.destroy());
    },
    close: () => {
      closed = true;
      clearInterval(heart);
      for (const response of all) response.end(event('gone', {}));
      all.clear();
      listeners.clear();
    },
  };
}

const end = (response: ServerResponse): void => void response.end();

/** Waits until what was written has gone out, or the listener has. Always a turn for others. */
function drained(response: ServerResponse): Promise<void> {
  return new Promise((done) => {
    if (response.writableNeedDrain) {
      response.once('drain', done);
      response.once('close', done);
    } else setImmediate(done);
  });
}
