/** Which room may import which: engine/rooms.ts read as a rule. */
import { relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ENGINE_ROOMS, OUTER_EXCEPTIONS, OUTER_ROOMS } from '../engine/rooms.ts';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/** 'engine/quantity', 'cli', … */
function roomOf(path: string): string {
  const [first = '', second = ''] = relative(ROOT, path).split(sep);
  return first === 'engine' && !second.includes('.') ? `engine/${second}` : first;
}

/** Why an import may not be, or undefined. */
export function offence(from: string, to: string): string | undefined {
  const a = roomOf(from);
  const b = roomOf(to);
  if (a === b) return undefined;
  const order: readonly string[] = ENGINE_ROOMS.map((room) => `engine/${room}`);
  const outer: readonly string[] = OUTER_ROOMS;
  if (b.startsWith('engine')) {
    if (outer.includes(a) || a === 'samples') return undefined;
    if (!a.startsWith('engine')) return undefined;
    if (!order.includes(a)) return `${a} is not in the list of rooms`;
    if (!order.includes(b)) return `${b} is not in the list of rooms`;
    return order.indexOf(b) < order.indexOf(a) ? undefined : `${a} stands above ${b} in the list`;
  }
  if (a.startsWith('engine')) return `the engine may not import ${b}`;
  if (outer.includes(a) && outer.includes(b)) {
    return OUTER_EXCEPTIONS.some(([x, y]) => x === a && y === b) ? undefined : `${a} may not import ${b}`;
  }
  return undefined;
}
