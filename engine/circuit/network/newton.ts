/** The unknowns of a system at a moment, by Newton's method with held-back junctions and, where that fails, detours. */
import type { Drive, System } from './system.ts';
import type { Trouble } from './types.ts';

const MOST_STEPS = 80;

/** Undefined when it settled; otherwise why not. */
function settle(system: System, x: Float64Array): Trouble | undefined {
  const before = new Float64Array(x.length);
  let worst = 0;
  for (let n = 0; n < MOST_STEPS; n++) {
    before.set(x);
    const { singular, held } = system.step(x);
    if (singular >= 0) return undetermined(system, singular);
    let off = 0;
    for (let k = 0; k < x.length; k++) {
      const change =
        Math.abs(x[k]! - before[k]!) / (1e-9 + 1e-8 * Math.max(Math.abs(x[k]!), Math.abs(before[k]!)));
      if (!(change <= off)) {
        off = change;
        worst = k;
      }
    }
    if (Number.isNaN(off)) return undetermined(system, worst);
    if (system.isLinear || (n > 0 && !held && off <= 1)) return undefined;
  }
  return {
    kind: 'singular',
    nodes: [],
    elements: [],
    sentence: `No steady state was found in ${MOST_STEPS} steps; it is ${system.names[worst]} that does not settle.`,
  };
}

function undetermined(system: System, unknown: number): Trouble {
  const name = system.names[unknown]!;
  const isNode = system.isNode(unknown);
  return {
    kind: 'singular',
    nodes: isNode ? [name] : [],
    elements: isNode ? [] : [name],
    sentence: isNode ? `Nothing settles the voltage of ${name}.` : `Nothing settles the current of ${name}.`,
  };
}

/** Solves at a moment, starting from `x` and the junctions as they were last; both are changed. */
export function solveAt(system: System, drive: Drive, x: Float64Array): Trouble | undefined {
  system.prepare(drive);
  const first = settle(system, x);
  if (!first || system.isLinear) return first;
  return throughLeaks(system, drive, x) === undefined ? undefined : throughShares(system, drive, x, first);
}

/** All nodes leak, less and less. */
function throughLeaks(system: System, drive: Drive, x: Float64Array): Trouble | undefined {
  x.fill(0);
  system.bias.fill(0);
  for (let power = -2; power >= -12; power--) {
    system.prepare({ ...drive, leak: 10 ** power });
    const trouble = settle(system, x);
    if (trouble) return trouble;
  }
  system.prepare(drive);
  return settle(system, x);
}

/** All sources are brought up from nothing, in steps as large as they settle. */
function throughShares(system: System, drive: Drive, x: Float64Array, first: Trouble): Trouble | undefined {
  x.fill(0);
  system.bias.fill(0);
  const kept = new Float64Array(x.length);
  const bias = new Float64Array(system.bias.length);
  let share = 0;
  let stride = 0.1;
  for (let n = 0; n < 200 && share < 1; n++) {
    kept.set(x);
    bias.set(system.bias);
    const next = Math.min(1, share + stride);
    system.prepare({ ...drive, share: next });
    if (settle(system, x)) {
      x.set(kept);
      system.bias.set(bias);
      stride /= 4;
      if (stride < 1e-6) return first;
    } else {
      share = next;
      stride *= 2;
    }
  }
  return share < 1 ? first : undefined;
}
