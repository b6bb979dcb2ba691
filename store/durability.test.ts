/** Held against processes of their own: killed, traced, and on a disk that is full. */

import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, beforeEach, describe, expect, onTestFinished, test } from 'vitest';
import type { Result } from '../engine/quantity/types.ts';
import { type Change, type Edit, type Fact, newRefit, writeArchive } from '../engine/refit/index.ts';
import { png } from '../engine/refit/photo.fixture.ts';
import { openStore, reasonOf, type Store } from './index.ts';

const repository = fileURLToPath(new URL('..', import.meta.url));
/** Inside the repository, so that the bundle finds its packages. */
const bundle = join(repository, 'node_modules', '.cache', `fettle-store-${process.pid}`);
const scratch = mkdtempSync(join(tmpdir(), 'fettle-durable-'));
let folder: string;
let folders = 0;

beforeAll(async () => {
  await build({
    root: repository,
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: join(repository, 'store', 'child.fixture.ts'),
      outDir: bundle,
      emptyOutDir: true,
      target: 'node20',
    },
  });
}, 60_000);
afterAll(() => {
  rmSync(bundle, { recursive: true, force: true });
  rmSync(scratch, { recursive: true, force: true });
});
beforeEach(() => {
  folder = join(scratch, `folder-${folders++}`);
});

const entry = () =>
  join(bundle, ['child.fixture.js', 'child.fixture.mjs'].find((name) => existsSync(join(bundle, name)))!);
const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};

/** A child and what it has said so far; `ended` waits until its pipe is empty, so nothing said is missed. */
function start(act: string, count = 0) {
  const child: ChildProcess = spawn(process.execPath, [entry(), folder, act, String(count)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  child.stdout!.setEncoding('utf8');
  child.stdout!.on('data', (piece: string) => {
    said += piece;
  });
  const ended = new Promise<void>((done) => child.on('close', () => done()));
  const until = async (words: string): Promise<void> => {
    while (!said.includes(words) && child.exitCode === null) await new Promise((wait) => setTimeout(wait, 2));
  };
  return {
    child,
    ended,
    until,
    said: () => said,
    kept: () => [...said.matchAll(/^kept (\d+)$/gm)].map(([, n]) => Number(n)),
  };
}

describe('killed', () => {
  test('derived: a thousand acknowledged edits, killed at random moments, and not one is lost', async () => {
    let seed = 20260301;
    let acknowledged = 0;
    let kills = 0;
    // Each kill may leave one edit that is on the disk and was not yet said to be.
    let unsaid = 0;
    while (acknowledged < 1000) {
      const { child, ended, until, kept } = start('append', 100_000);
      await until('ready');
      seed = (seed * 48271) % 2147483647;
      await new Promise((wait) => setTimeout(wait, 5 + (seed % 1000)));
      child.kill('SIGKILL');
      await ended;
      kills++;
      const [first, last] = [kept()[0], kept().at(-1)];
      if (first !== undefined && last !== undefined) {
        expect(first).toBeGreaterThan(acknowledged);
        expect(first).toBeLessThanOrEqual(acknowledged + 1 + unsaid);
        acknowledged = last;
        unsaid = 0;
      }
      unsaid++;
      if (kills > 200) throw new Error('the child keeps too little between kills');
    }
    const store = must(openStore(folder));
    const { refit, head } = must(store.openRefit('test'));
    expect(head).toBeGreaterThanOrEqual(acknowledged);
    expect(head).toBeLessThanOrEqual(acknowledged + unsaid);
    expect(must(store.verify('test'))).toBe(head);
    expect(refit.parts.motor!.facts.resistance!.value).toEqual({ kind: 'quantity', text: `${head} ohm` });
    expect(must(store.history('test')).map(({ number }) => number)).toEqual(
      Array.from({ length: head }, (_, n) => n + 1),
    );
    expect(kills).toBeGreaterThan(2);
    store.close();
  }, 120_000);

  test('derived: a second process is refused in words, and let in when the first is killed', async () => {
    const { child, ended, until } = start('hold');
    await until('open');
    const refused = openStore(folder);
    expect(refused.ok ? '' : refused.problem.message).toBe(
      `Another Fettle (process ${child.pid}) has this folder open. Close it there first.`,
    );
    child.kill('SIGKILL');
    await ended;
    const store = must(openStore(folder));
    const other = start('append', 1);
    await other.ended;
    expect(other.said()).toMatch(/^refused Another Fettle \(process \d+\) has this folder open/);
    store.close();
  }, 30_000);
});

describe('synced to the disk', () => {
  const tracing = spawnSync('strace', ['-o', '/dev/null', 'true']).status === 0;

  test.skipIf(!tracing)(
    'derived: each edit is written, then synced, then acknowledged (skipped where strace is missing or may not trace)',
    () => {
      const trace = join(scratch, 'trace');
      const options = ['-f', '-y', '-s', '64', '-e', 'trace=fsync,fdatasync,pwrite64,write', '-o', trace];
      const ran = spawnSync('strace', [...options, process.execPath, entry(), folder, 'append', '20'], {
        encoding: 'utf8',
      });
      expect(ran.stdout).toContain('closed');
      let written = 0;
      let synced = 0;
      let acknowledged = 0;
      for (const line of readFileSync(trace, 'utf8').split('\n')) {
        if (/pwrite64\(\d+<[^>]*refits\.db-wal>/.test(line)) {
          written++;
          synced = 0;
        } else if (/f(data)?sync\(\d+<[^>]*refits\.db-wal>\) += 0/.test(line)) {
          if (written > 0) synced++;
        } else if (/write\(1<[^>]*>, "kept \d+/.test(line)) {
          expect(written, `writes before '${line}'`).toBeGreaterThan(0);
          expect(synced, `syncs after the last write before '${line}'`).toBeGreaterThan(0);
          acknowledged++;
          written = 0;
          synced = 0;
        }
      }
      expect(acknowledged).toBe(20);
      // The new file's own entry in the folder, and the folder's in its parent.
      expect(readFileSync(trace, 'utf8')).toMatch(new RegExp(`fsync\\(\\d+<${folder}>\\) += 0`));
      expect(readFileSync(trace, 'utf8')).toMatch(new RegExp(`fsync\\(\\d+<${scratch}>\\) += 0`));
    },
    60_000,
  );
});

describe('a full disk', () => {
  /** Edits until one is refused; the facts before it, and the refusal. */
  function fill(store: Store) {
    const part = { id: 'motor', kind: 'motor', name: 'Motor', facts: {} };
    const when = '2026-03-01T18:30:00Z';
    must(
      store.createRefit(
        { ...newRefit({ id: 'test', name: 'Test', machine: 'lathe' }), parts: { motor: part } },
        'bench',
        when,
      ),
    );
    let old: Fact | null = null;
    for (let head = 0; head < 5000; head++) {
      const next: Fact = { value: { kind: 'text', text: `${head} `.padEnd(1900, 'x') }, basis: 'told' };
      const kept = store.appendEdit('test', {
        who: 'bench',
        when,
        basedOn: head,
        changes: [{ do: 'fact', part: 'motor', fact: 'notes', old, new: next }],
      });
      if (!kept.ok) return { head, old, problem: kept.problem };
      old = next;
    }
    throw new Error('the disk did not fill');
  }

  test('derived: is said, and what was kept before stays (skipped where no small disk can be mounted)', ({
    skip,
  }) => {
    const disk = join(scratch, 'small-disk');
    mkdirSync(disk);
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=1500k', 'tmpfs', disk]).status === 0;
    skip(!mounted, 'no small disk can be mounted here');
    // Lazily, for the store's statements keep the file open until they are collected.
    onTestFinished(() => {
      spawnSync('umount', ['-l', disk]);
    });
    folder = join(disk, 'refits');
    const store = must(openStore(folder));
    const { head, old, problem } = fill(store);
    expect(reasonOf(problem)).toBe('full');
    expect(problem.message).toBe(
      'The disk is full, so this was not kept; everything kept before is still there. Make room and do it again.',
    );
    expect(head).toBeGreaterThan(10);
    const now = must(store.openRefit('test'));
    expect(now.head).toBe(head);
    expect(now.refit.parts.motor!.facts.notes).toEqual(old);
    const photo = png([], new Uint8Array(2_000_000));
    const refused = store.savePhoto('test', 'plate.png', photo);
    expect(refused.ok ? '' : reasonOf(refused.problem)).toBe('full');

    // Room is made, and the very same store goes on.
    expect(spawnSync('mount', ['-o', 'remount,size=8m', disk]).status).toBe(0);
    must(store.savePhoto('test', 'plate.png', photo));
    must(store.undo('test', head, { who: 'bench', when: '2026-03-01T18:30:00Z' }));
    store.close();
    const again = must(openStore(folder));
    expect(must(again.verify('test'))).toBe(head + 1);
    again.close();
  }, 60_000);
});

describe('a disk that refuses to write', () => {
  test.skipIf(process.platform === 'win32')(
    'derived: is said, and what was kept before stays (a limit on the size of files stands for the fault)',
    () => {
      const limited = `ulimit -f 1500 && exec "$0" "$1" "$2" append 5000`;
      const ran = spawnSync('sh', ['-c', limited, process.execPath, entry(), folder], { encoding: 'utf8' });
      const kept = [...ran.stdout.matchAll(/^kept (\d+)$/gm)].length;
      expect(kept).toBeGreaterThan(10);
      expect(ran.stdout).toMatch(
        /^refused (The disk could not be written or read|The disk is full), so this was not kept/m,
      );
      expect(ran.stdout).toContain(`still ${kept}\n`);
      expect(ran.stderr).toBe('');
      const store = must(openStore(folder));
      expect(must(store.verify('test'))).toBe(kept);
      store.close();
    },
    60_000,
  );
});

describe('opening', () => {
  test('derived: ten thousand edits open nearly as quickly as ten, for only the last of them are folded', () => {
    const store = must(openStore(folder));
    const when = '2026-03-01T18:30:00Z';
    const motor = { id: 'motor', kind: 'motor', name: 'Motor', facts: {} };
    const grow = (id: string, count: number) => {
      const edits: Edit[] = [];
      let old: Fact | null = null;
      for (let number = 1; number <= count; number++) {
        const next: Fact = { value: { kind: 'quantity', text: `${number} ohm` }, basis: 'told' };
        const change: Change = { do: 'fact', part: 'motor', fact: 'r', old, new: next };
        edits.push({ number, who: 'bench', when, basedOn: number - 1, changes: [change], says: 'r' });
        old = next;
      }
      const refit = {
        ...newRefit({ id, name: id, machine: 'lathe' }),
        parts: { motor: { ...motor, facts: { r: old! } } },
      };
      // Carried in, because one sync for each of ten thousand edits would take a minute.
      must(
        store.importArchive(must(writeArchive({ refit, edits, photos: new Map() })), { who: 'bench', when }),
      );
      for (let n = 0; n < 9; n++) {
        const next: Fact = { value: { kind: 'quantity', text: `${n} mohm` }, basis: 'told' };
        const change: Change = { do: 'fact', part: 'motor', fact: 'r', old, new: next };
        must(store.appendEdit(id, { who: 'bench', when, basedOn: count + n, changes: [change] }));
        old = next;
      }
    };
    grow('ten', 1);
    grow('many', 10_000);
    store.close();
    const times = { ten: Number.POSITIVE_INFINITY, many: Number.POSITIVE_INFINITY };
    for (let round = 0; round < 5; round++) {
      const fresh = must(openStore(folder));
      for (const id of round % 2 ? (['ten', 'many'] as const) : (['many', 'ten'] as const)) {
        const before = performance.now();
        must(fresh.openRefit(id));
        times[id] = Math.min(times[id], performance.now() - before);
      }
      fresh.close();
    }
    // Nine edits are folded in both; folding the whole log takes about a hundred times as long.
    expect(times.many / times.ten).toBeLessThan(20);
  }, 120_000);
});
