/** The sample refits that come with the program, read from where it lies. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PARTS } from '../engine/parts/index.ts';
import { type Refit, readRefit } from '../engine/refit/index.ts';
import { SAMPLES } from '../samples/index.ts';
import type { Home } from './home.ts';

/** Every sample, in its usual order. */
export const readSamples = ({ folder }: Home): readonly Refit[] =>
  SAMPLES.map(({ file }) => {
    const read = readRefit(readFileSync(join(folder, 'samples', file), 'utf8'), Object.keys(PARTS));
    if (!read.ok) throw new Error(`${file}: ${read.problem.message}`);
    return read.value;
  });
