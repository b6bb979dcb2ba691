/** Holds every import, type imports included, against the order of the rooms in engine/rooms.ts. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { OUTER_ROOMS } from '../engine/rooms.ts';
import { offence, ROOT } from './rooms.ts';

function* sources(folder: string): Generator<string> {
  let entries: ReturnType<typeof list>;
  try {
    entries = list(folder);
  } catch {
    return;
  }
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* sources(path);
    else if (/\.(ts|tsx)$/.test(entry.name)) yield path;
  }
}
const list = (folder: string) => readdirSync(folder, { withFileTypes: true });

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s(?:[^'"`;]*?\sfrom\s*)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)|new URL\(\s*['"](\.[^'"]+)['"],\s*import\.meta\.url/g;

test('every import follows the order of the rooms', () => {
  const wrong: string[] = [];
  let seen = 0;
  for (const folder of ['engine', ...OUTER_ROOMS]) {
    for (const path of sources(join(ROOT, folder))) {
      if (/\.(test|fixture)\./.test(path)) continue;
      for (const match of readFileSync(path, 'utf8').matchAll(IMPORT)) {
        const target = match[1] ?? match[2] ?? match[3]!;
        if (!target.startsWith('.')) {
          if (/^node:/.test(target) && relative(ROOT, path).startsWith('engine')) {
            wrong.push(`${relative(ROOT, path)}: the engine may not use ${target}`);
          }
          continue;
        }
        seen++;
        const reason = offence(path, resolve(dirname(path), target));
        if (reason) wrong.push(`${relative(ROOT, path)} → ${target}: ${reason}`);
      }
    }
  }
  expect(seen).toBeGreaterThan(100);
  expect(wrong).toEqual([]);
});

test('the engine uses no clock, no randomness, no network, no evaluated text', () => {
  const FORBIDDEN =
    /\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bfetch\(|\beval\(|\bnew Function\b|\bglobalThis\b/;
  const wrong: string[] = [];
  for (const path of sources(join(ROOT, 'engine'))) {
    if (/\.(test|fixture)\./.test(path)) continue;
    for (const [index, line] of readFileSync(path, 'utf8').split('\n').entries()) {
      if (!/^\s*(\*|\/\/|\/\*)/.test(line) && FORBIDDEN.test(line))
        wrong.push(`${relative(ROOT, path)}:${index + 1}`);
    }
  }
  expect(wrong).toEqual([]);
});

test('the check itself refuses what it must', () => {
  const at = (path: string): string => join(ROOT, path);
  expect(offence(at('engine/quantity/a.ts'), at('engine/sheet/b.ts'))).toBeDefined();
  expect(offence(at('engine/assess/a.ts'), at('engine/quantity/b.ts'))).toBeUndefined();
  expect(offence(at('engine/assess/a.ts'), at('cli/b.ts'))).toBeDefined();
  expect(offence(at('web/a.ts'), at('store/b.ts'))).toBeDefined();
  expect(offence(at('server/a.ts'), at('store/b.ts'))).toBeUndefined();
});
