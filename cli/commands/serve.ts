/** `fettle serve`: the screens, on this computer alone. */
import { homedir } from 'node:os';
import { join } from 'node:path';
import { assess } from '../../engine/assess/index.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import type { RunningServer } from '../../server/index.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import type { Io } from '../io.ts';
import { pageOn } from '../print/page.ts';
import { plural } from '../print/text.ts';
import { need, Refusal } from '../refusal.ts';

export const serve: Command = {
  name: 'serve',
  summary: 'opens the screens for the browser of this computer',
  usage: ['serve [--data DIR] [--port N] [--samples]'],
  about:
    'Nobody else on the network can reach it. Every edit is on the disk before it is confirmed. It runs until it is stopped with Ctrl+C.',
  options: {
    data: { takes: 'a folder', says: 'where refits are kept; otherwise where this system keeps such things' },
    port: {
      takes: 'a number',
      says: 'the port; without it the usual one or, where that is in use, the next free one',
    },
    samples: { says: 'also adds the sample refits, where they are not there yet' },
  },
  examples: ['serve --samples', 'serve --data ./refits --port 8000'],
  words: [0, 0],
  run: async ({ io, text, has }) => {
    // Only here, so that no other command waits for the store, or fails where it cannot be loaded.
    const { findHome, readSamples, startServer, usualFolder } = await import('../../server/index.ts');
    const folder = text('data') ?? usualFolder(process.platform, io.env, homedir());
    if (folder === undefined)
      throw new Refusal('This system does not say where your files belong; name a folder with --data.');
    if (folder.trim() === '') throw new Refusal('The name of the folder after --data is empty.');
    const port = readPort(text('port'));
    const home = findHome();
    const started = await startServer({
      folder,
      port,
      pageFolder: join(home.folder, 'dist', 'web'),
      version: home.version,
      samples: has('samples') ? readSamples(home) : [],
      report: (fault) => io.err(`${fault instanceof Error ? (fault.stack ?? fault.message) : fault}\n`),
    });
    const aboutPort = !started.ok && started.problem.where === 'port';
    const running = need(started, aboutPort ? '' : `${shown(folder)} cannot be opened. `);
    printStart(io, running);
    await stopAsked();
    await running.close();
    io.out('Stopped; everything entered is on the disk.\n');
    return EXIT.fine;
  },
};

function readPort(typed: string | undefined): number | undefined {
  if (typed === undefined) return undefined;
  const port = Number(typed);
  if (!/^\d{1,5}$/.test(typed.trim()) || port > 65_535)
    throw new Refusal(`“${shown(typed)}” is no port; write a number from 1 to 65535, such as 8000.`);
  return port;
}

function printStart(io: Io, { address, folder, samples }: RunningServer): void {
  const page = pageOn(io);
  page.line(`Fettle is running: ${page.paint('bold', address)}`);
  page.line(`Refits are kept in ${folder}`);
  const [first] = samples;
  if (first) {
    const counts = countVerdicts(assess(first).findings);
    const all = counts.fails + counts.unknown + counts.tight + counts.fits;
    page.prose(
      `The sample “${first.name}” has ${plural(all, 'finding')}: ${counts.fails} fails, ${counts.unknown} unknown, ${counts.tight} tight, ${counts.fits} fits.`,
    );
    page.line('In another terminal: npx fettle check samples/carriage-works-lathe.json');
  } else page.line('In another terminal, for what there is: npx fettle help');
  page.line('To stop: Ctrl+C');
}

/** Until this process is asked to end. */
const stopAsked = (): Promise<void> =>
  new Promise((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done());
  });
