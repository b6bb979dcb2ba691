/** A server on a free port over a folder of its own, and a client that can send what no browser would. */
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, type IncomingHttpHeaders, type IncomingMessage, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Fact } from '../engine/refit/index.ts';
import type { Change } from '../engine/refit/types.ts';
import type { RefitMade, RefitOpened } from '../engine/refit/wire.ts';
import { type RunningServer, type ServerOptions, startServer } from './index.ts';

export interface Said {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
  readonly bytes: Buffer;
  // biome-ignore lint/suspicious/noExplicitAny: what a test asks of an answer is checked by the test itself.
  readonly json: any;
}

export interface Sent {
  readonly headers?: Readonly<Record<string, string>>;
  readonly json?: unknown;
  readonly body?: string | Uint8Array;
}

export interface Trial {
  readonly running: RunningServer;
  readonly folder: string;
  /** Faults of our own; every test expects none. */
  readonly faults: unknown[];
  readonly call: (method: string, path: string, sent?: Sent) => Promise<Said>;
  /** A new lathe with the axes X and Z. */
  readonly lathe: () => Promise<string>;
  readonly open: (id: string) => Promise<RefitOpened>;
}

/** Ends with the test. */
export async function trial(options: Partial<ServerOptions> = {}): Promise<Trial> {
  const scratch = mkdtempSync(join(tmpdir(), 'fettle-server-'));
  const folder = options.folder ?? join(scratch, 'refits');
  const faults: unknown[] = [];
  const started = await startServer({
    folder,
    port: 0,
    version: '1.2.3',
    report: (fault) => faults.push(fault),
    ...options,
  });
  if (!started.ok) throw new Error(started.problem.message);
  const running = started.value;
  const agent = new Agent({ keepAlive: true, maxSockets: 16 });
  onTestFinished(async () => {
    agent.destroy();
    await running.close();
    rmSync(scratch, { recursive: true, force: true });
  });

  const call = (method: string, path: string, { headers = {}, json, body }: Sent = {}): Promise<Said> =>
    new Promise((done, fail) => {
      const content = json === undefined ? body : JSON.stringify(json);
      const asked = request(
        {
          agent,
          host: '127.0.0.1',
          port: running.port,
          method,
          path,
          headers: { ...(json === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
        },
        (response) => collect(response).then(done, fail),
      );
      asked.on('error', fail);
      asked.end(content);
    });

  return {
    running,
    folder,
    faults,
    call,
    lathe: async () => {
      const made = await call('POST', '/api/refits', {
        json: { name: 'Bench lathe', machine: 'lathe', axes: ['X', 'Z'] },
      });
      return (made.json as RefitMade).id;
    },
    open: async (id) => (await call('GET', `/api/refits/${id}`)).json,
  };
}

async function collect(response: IncomingMessage): Promise<Said> {
  const pieces: Buffer[] = [];
  for await (const piece of response) pieces.push(piece as Buffer);
  const bytes = Buffer.concat(pieces);
  const text = bytes.toString('utf8');
  const isJson = (response.headers['content-type'] ?? '').startsWith('application/json');
  return {
    status: response.statusCode ?? 0,
    headers: response.headers,
    text,
    bytes,
    json: isJson && text !== '' ? JSON.parse(text) : undefined,
  };
}

export const measured = (text: string): Fact => ({ value: { kind: 'quantity', text }, basis: 'measured' });
export const told = (text: string): Fact => ({ value: { kind: 'text', text }, basis: 'told' });

export const factChange = (fact: string, old: Fact | null, now: Fact | null, part = 'x-motor'): Change => ({
  do: 'fact',
  part,
  fact,
  old,
  new: now,
});

/** Events of a live stream as they come. */
export interface Stream {
  readonly events: { readonly id?: string; readonly event: string; readonly data: string }[];
  readonly comments: string[];
  readonly headers: IncomingHttpHeaders;
  readonly until: (enough: () => boolean) => Promise<void>;
  readonly leave: () => void;
}

export function follow(port: number, path: string, headers: Record<string, string> = {}): Promise<Stream> {
  return new Promise((done, fail) => {
    const asked = request({ host: '127.0.0.1', port, path, headers, agent: false }, (response) => {
      const events: Stream['events'] = [];
      const comments: string[] = [];
      const waiting = new Set<() => void>();
      let rest = '';
      response.setEncoding('utf8');
      response.on('data', (piece: string) => {
        const blocks = (rest + piece).split('\n\n');
        rest = blocks.pop()!;
        for (const block of blocks) {
          const fields = new Map<string, string>();
          for (const line of block.split('\n')) {
            const at = line.indexOf(':');
            if (at === 0) comments.push(line);
            else fields.set(line.slice(0, at), line.slice(at + 1).trim());
          }
          const [id, event] = [fields.get('id'), fields.get('event')];
          if (event) events.push({ ...(id === undefined ? {} : { id }), event, data: fields.get('data')! });
        }
        for (const look of waiting) look();
      });
      response.on('error', () => undefined);
      done({
        events,
        comments,
        headers: response.headers,
        until: (enough) =>
          new Promise((found, late) => {
            const timer = setTimeout(() => late(new Error('the stream did not bring it')), 20_000);
            const look = () => {
              if (!enough()) return;
              clearTimeout(timer);
              waiting.delete(look);
              found();
            };
            waiting.add(look);
            look();
          }),
        leave: () => asked.destroy(),
      });
    });
    asked.on('error', fail);
    asked.end();
    onTestFinished(() => void asked.destroy());
  });
}
