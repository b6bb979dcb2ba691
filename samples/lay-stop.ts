/**
 * The stop circuits of the samples brought to what is wired: the spindle drive takes mains by poles of its own.
 * `npm run build && node dist/samples/lay-stop.js` writes both files; one that is so already comes back as it is.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fedFromMains, type Phases } from '../engine/circuit/stop/patterns/mains-feed.ts';
import { type Refit, readRefit } from '../engine/refit/index.ts';
import { SAMPLES } from './index.ts';

/** By refit: its spindle drive in the stop circuit, and the phases it takes. */
const FED: Readonly<Record<string, readonly [drive: string, phases: Phases]>> = {
  'carriage-works-lathe': ['T3', 'three'],
  'boatyard-mill': ['T4', 'one'],
};

export function layStop(refit: Refit): Refit {
  const fed = FED[refit.id];
  if (!fed || refit.stop === null || Object.hasOwn(refit.stop.elements, 'X0')) return refit;
  return { ...refit, stop: fedFromMains(refit.stop, ...fed) };
}

function writeAll(): void {
  // Built, it lies in dist/samples.
  const folder = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'samples');
  for (const { file } of SAMPLES) {
    const path = join(folder, file);
    const text = readFileSync(path, 'utf8');
    const read = readRefit(text);
    if (!read.ok) throw new Error(`${file}: ${read.problem.message}`);
    const { stop } = layStop(read.value);
    writeFileSync(path, `${JSON.stringify({ ...JSON.parse(text), stop }, null, 2)}\n`);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeAll();
