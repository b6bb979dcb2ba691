/** Elements of the stop circuit that the wiring has not, or has as something else. */
import type { Sides } from './sides.ts';
import type { Difference } from './types.ts';

/** Kinds of device that an element of the stop circuit may be, where it is not called the same. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  supply: ['bus', 'battery', 'mains-inlet', 'transformer'],
  fuse: ['breaker', 'motor-breaker'],
  drive: ['inverter'],
  inverter: ['drive'],
  button: ['key'],
  key: ['button'],
  limit: ['sensor'],
  home: ['sensor', 'limit'],
};
/** What stops nothing by itself: its being left out of the wiring loses nothing that is counted on. */
const HARMLESS = new Set(['fuse', 'home']);

export function* elementDifferences({ circuit, read }: Sides): Generator<Difference> {
  for (const { id, kind } of Object.values(circuit.elements)) {
    const device = read.devices.get(id);
    if (!device)
      yield {
        kind: 'missing',
        verdict: HARMLESS.has(kind) ? 'tight' : 'unknown',
        about: [id],
        says: `${id} is in the stop circuit and not in the wiring.`,
        change: `Add ${id} to the wiring under this name, or rename whichever of the two is called otherwise.`,
      };
    else if (device.kind !== kind && device.kind !== 'unknown' && !ALSO[kind]?.includes(device.kind))
      yield {
        kind: 'other-kind',
        verdict: 'fails',
        about: [id],
        says: `${id} is a ${kind.replaceAll('-', ' ')} in the stop circuit and a ${device.kindName} in the wiring.`,
        change: 'Give both the same name only where both are the same thing.',
      };
  }
}
