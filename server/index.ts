/** The server: refits over HTTP to pages on this same computer. docs/server.md has the routes. */
import { randomBytes } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import { basename, resolve } from 'node:path';
import { PARTS } from '../engine/parts/index.ts';
import { ok, type Result } from '../engine/quantity/types.ts';
import type { Refit } from '../engine/refit/index.ts';
import { openStore, type Store } from '../store/index.ts';
import { makeApp } from './app.ts';
import { listen, refuseNonsense } from './listen.ts';
import { makeLive } from './live.ts';
import { makeTurns } from './turns.ts';

export { usualFolder } from './folder.ts';
export { findHome, type Home } from './home.ts';
export { USUAL_PORT } from './listen.ts';
export { readSamples } from './samples.ts';

export interface ServerOptions {
  readonly folder: string;
  /** Without one the usual port; the next free one where it is taken; 0 for any free one. */
  readonly port?: number | undefined;
  /** Where the built page lies; without it there is the API alone. */
  readonly pageFolder?: string | undefined;
  readonly version: string;
  /** Added where there is no refit with their id. */
  readonly samples?: readonly Refit[];
  /** Hears of mistakes of our own; the page gets a sentence. */
  readonly report: (fault: unknown) => void;
  /** The time as ISO 8601. */
  readonly now?: () => string;
  /** Milliseconds between signs of life on live streams. */
  readonly beat?: number;
  /** Instead of the one in `folder`, for tests of a disk that fails. */
  readonly store?: Store;
}

export interface RunningServer {
  /** 'http://127.0.0.1:7373/' */
  readonly address: string;
  readonly port: number;
  /** The whole path. */
  readonly folder: string;
  /** The sample refits as they are in the folder by now. */
  readonly samples: readonly Refit[];
  /** Lets go of everybody, then of the folder; what was acknowledged is on the disk already. */
  readonly close: () => Promise<void>;
}

/** How long requests under way may take to end on closing, in milliseconds. */
const PATIENCE = 2_000;

export async function startServer(options: ServerOptions): Promise<Result<RunningServer>> {
  const folder = resolve(options.folder);
  const now = options.now ?? (() => new Date().toISOString());
  const opened = options.store ? ok(options.store) : openStore(folder, { kinds: PARTS });
  if (!opened.ok) return opened;
  const store = opened.value;
  const samples = addSamples(store, options.samples ?? [], now());
  if (!samples.ok) {
    store.close();
    return samples;
  }

  const live = makeLive(
    {
      head: (id) => {
        const open = store.openRefit(id);
        return open.ok ? ok(open.value.head) : open;
      },
      edits: (id, from, to) => store.history(id, { from, to }),
    },
    options.beat,
  );
  const context = {
    store,
    live,
    turns: makeTurns(),
    now,
    random: () => randomBytes(3).toString('hex'),
    version: options.version,
    dataFolderName: basename(folder),
    samples: samples.value.map(({ id }) => id),
  };
  const app = makeApp(context, options.pageFolder, options.report);
  // Without a Host there would be an answer without a sentence; the guard refuses it with one.
  const server = createServer({ requireHostHeader: false }, app);
  server.on('clientError', refuseNonsense);

  const port = await listen(server, options.port);
  if (!port.ok) {
    live.close();
    store.close();
    return port;
  }
  return ok({
    address: `http://127.0.0.1:${port.value}/`,
    port: port.value,
    folder,
    samples: samples.value,
    close: async () => {
      live.close();
      await closeServer(server);
      store.close();
    },
  });
}

function addSamples(store: Store, samples: readonly Refit[], when: string): Result<readonly Refit[]> {
  const there: Refit[] = [];
  for (const sample of samples) {
    const known = store.openRefit(sample.id);
    if (!known.ok && known.problem.code !== 'unknown-name') return known;
    const open = known.ok ? known : store.createRefit(sample, 'Fettle', when);
    if (!open.ok) return open;
    there.push(open.value.refit);
  }
  return ok(there);
}

function closeServer(server: Server): Promise<void> {
  return new Promise((done) => {
    const impatient = setTimeout(() => server.closeAllConnections(), PATIENCE);
    server.close(() => {
      clearTimeout(impatient);
      done();
    });
    server.closeIdleConnections();
  });
}
