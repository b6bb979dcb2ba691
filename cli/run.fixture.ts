/** Runs command lines inside the test, in a folder of its own. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { main } from './main.ts';

export const FIXTURES = join(import.meta.dirname, '..', 'tests', 'fixtures');
export const fixture = (name: string): string => join(FIXTURES, name);

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export async function run(...argv: readonly string[]): Promise<Ran> {
  let out = '';
  let err = '';
  const code = await main(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    columns: 100,
    terminal: false,
    env: { USER: 'bench' },
    now: () => '2024-03-01T10:00:00.000Z',
  });
  return { code, out, err };
}

export async function inFolder(use: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'fettle-'));
  try {
    await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
