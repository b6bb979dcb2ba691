/** The sample refits that come with the program. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PARTS } from '../engine/parts/index.ts';
import { type Refit, readRefit } from '../engine/refit/index.ts';

/** Every refit of a folder, in the order of the file names; none where there is no such folder. */
export function readSamples(folder: string): readonly Refit[] {
  return jsonFiles(folder).map((name) => {
    const read = readRefit(readFileSync(join(folder, name), 'utf8'), Object.keys(PARTS));
    if (!read.ok) throw new Error(`${name}: ${read.problem.message}`);
    return read.value;
  });
}

function jsonFiles(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.json'))
      .sort();
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw fault;
  }
}
