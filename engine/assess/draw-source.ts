/** Draws of what is in doubt: one array of values for each source, from its own stream of random numbers. */
import { normals, uniforms } from '../metrology/index.ts';
import type { Source } from './trace.ts';
import type { Shape } from './value.ts';

/** Draws of sources by name, kept because the same seed gives the same ones; oldest first. */
const UNITS = new Map<string, Float64Array>();
const MOST_UNITS = 256;

/**
 * Draws of a doubtful source. What two sources share (rows of one table) is drawn once; each has a stream of its own by its
 * name, so that a change elsewhere leaves its draws as they were.
 */
export function drawSource(
  { value, shape, domain }: Source,
  lanes: number,
  seed: number,
  into: Float64Array | undefined,
): Float64Array | undefined {
  if (value.state !== 'known' || value.doubt.size === 0) return undefined;
  const out = into?.length === lanes ? into : new Float64Array(lanes);
  out.fill(value.value);
  for (const [name, standard] of value.doubt) {
    const unit = unitDraws(name, shape, lanes, seed);
    for (let lane = 0; lane < lanes; lane++) out[lane]! += standard * unit[lane]!;
  }
  if (domain === 'any') return out;
  const least = domain === 'positive' ? Math.min(value.value, Math.abs(value.value) * 1e-3) : 0;
  const most = domain === 'fraction' ? 1 : Number.POSITIVE_INFINITY;
  for (let lane = 0; lane < lanes; lane++) {
    const each = out[lane]!;
    if (each < least) out[lane] = least;
    else if (each > most) out[lane] = most;
  }
  return out;
}

/** Draws about 0 with a standard deviation of 1. */
function unitDraws(name: string, shape: Shape, lanes: number, seed: number): Float64Array {
  const key = `${shape} ${lanes} ${seed} ${name}`;
  const found = UNITS.get(key);
  if (found) return found;
  const unit = new Float64Array(lanes);
  const stream = hash(name);
  if (shape === 'normal') normals(seed, stream)(unit);
  else {
    uniforms(seed, stream)(unit);
    for (let lane = 0; lane < lanes; lane++) unit[lane] = (2 * unit[lane]! - 1) * Math.sqrt(3);
  }
  if (UNITS.size >= MOST_UNITS) UNITS.delete(UNITS.keys().next().value!);
  UNITS.set(key, unit);
  return unit;
}

/** FNV-1a. */
function hash(text: string): number {
  let h = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) h = Math.imul(h ^ text.charCodeAt(at), 0x01000193);
  return h >>> 0;
}
