/** What comes by message is a copy; things that are equal to before are put back as the same objects, so that only what differs is judged anew. */
import type { Wiring } from '../../../engine/refit/types.ts';

const equal = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

export const reconcile = <T>(before: T | undefined, now: T): T =>
  before !== undefined && equal(before, now) ? before : now;

function records<T>(
  before: Readonly<Record<string, T>>,
  now: Readonly<Record<string, T>>,
): Readonly<Record<string, T>> {
  return Object.fromEntries(
    Object.entries(now).map(([id, each]) => [
      id,
      reconcile(Object.hasOwn(before, id) ? before[id] : undefined, each),
    ]),
  );
}

export const reconcileWiring = (before: Wiring | undefined, now: Wiring): Wiring =>
  before === undefined
    ? now
    : {
        devices: records(before.devices, now.devices),
        wires: records(before.wires, now.wires),
        cables: records(before.cables, now.cables),
        settings: reconcile(before.settings, now.settings),
      };
