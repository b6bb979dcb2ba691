/** The built command line's `serve`, as a process of its own. */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { findHome } from './home.ts';

const { folder: home, version } = findHome();
const built = existsSync(join(home, 'dist', 'cli', 'commands', 'serve.js'));

function fettle(...args: string[]) {
  const child = spawn(process.execPath, [join(home, 'bin', 'fettle.js'), ...args]);
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  let complained = '';
  child.stdout.on('data', (piece) => {
    said += piece;
  });
  child.stderr.on('data', (piece) => {
    complained += piece;
  });
  const ended = new Promise<number | null>((done) => child.on('close', done));
  const until = async (words: string) => {
    while (!said.includes(words)) {
      if (child.exitCode !== null) throw new Error(`it ended: ${said}${complained}`);
      await new Promise((wait) => setTimeout(wait, 10));
    }
  };
  return { child, ended, until, said: () => said, complained: () => complained };
}

test.skipIf(!built)(
  'derived: starts with the samples, refuses a second on the same folder, stops when asked (skipped before a build)',
  async () => {
    const data = mkdtempSync(join(tmpdir(), 'fettle-serve-'));
    onTestFinished(() => rmSync(data, { recursive: true, force: true }));
    const first = fettle('serve', '--samples', '--data', data, '--port', '0');
    await first.until('To stop: Ctrl+C');
    const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(first.said())![0];
    expect(first.said()).toContain(`Refits are kept in ${data}`);
    expect(first.said().replace(/\s+/g, ' ')).toMatch(/The sample “.+” has \d+ findings?: \d+ fails, /);
    expect(first.said()).toContain('npx fettle check samples/carriage-works-lathe.json');
    const hello = await (await fetch(`${address}api/hello`)).json();
    expect(hello).toMatchObject({ version });
    expect(hello.samples.length).toBeGreaterThan(0);

    const port = new URL(address).port;
    const second = fettle('serve', '--data', data);
    expect(await second.ended).toBe(2);
    expect(second.complained().replace(/\s+/g, ' ')).toContain(
      `Another Fettle (process ${first.child.pid}) has this folder open. Close it there first.`,
    );
    const beside = fettle('serve', '--data', join(data, 'other'), '--port', port);
    await beside.until('To stop: Ctrl+C');
    expect(beside.said()).not.toContain(address);
    beside.child.kill('SIGINT');
    expect(await beside.ended).toBe(0);

    first.child.kill('SIGTERM');
    expect(await first.ended).toBe(0);
    expect([first.complained(), second.said()]).toEqual(['', '']);
    const again = fettle('serve', '--data', data, '--port', '0');
    await again.until('To stop: Ctrl+C');
    again.child.kill('SIGTERM');
    expect(await again.ended).toBe(0);
  },
  60_000,
);

test.skipIf(!built)(
  'derived: a port that is none is refused in a sentence (skipped before a build)',
  async () => {
    for (const port of ['x', '70000', '-1', '1.5', '']) {
      const { ended, complained } = fettle('serve', '--port', port);
      expect(await ended).toBe(2);
      expect(complained()).toContain('no port');
    }
  },
);
