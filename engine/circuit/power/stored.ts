/** Capacitors on a d.c. bus: those of its rectifier, and those of the drives that hang on it. */
import type { Device } from '../wiring/types.ts';
import type { PowerContext } from './context.ts';
import { byName } from './sorted.ts';
import type { Source } from './sources.ts';

/** IEC 60204-1:2016, 6.2.4: no more than 60 V five seconds after switching off; one where pins of a plug can be touched. */
export const SAFE_VOLTS = 60;
export const SAFE_SECONDS = 5;
export const PIN_SECONDS = 1;
/** Charge that is exempt, in C. */
export const EXEMPT_CHARGE = 60e-6;
export const STORED_SOURCE =
  'IEC 60204-1:2016, 6.2.4 (EN 60204-1): 60 V within 5 s, 1 s for pins of a plug that can be touched, otherwise a warning plate; up to 60 µC exempt; derived: exponential decay through the bleeder';

export interface Stored {
  /** F; what has not been said is left out. */
  readonly farads: number;
  readonly needs: readonly string[];
  /** Drives that hang on it. */
  readonly drives: readonly string[];
}

const numberIn = (device: Device | undefined, name: string): number | undefined => {
  const value = device?.settings[name];
  return typeof value === 'number' ? value : undefined;
};

export const driveFarads = ({ wiring }: PowerContext, drive: string): number | undefined =>
  numberIn(wiring.devices.get(drive), 'input-capacitance');

/** Devices whose power is fed from a source. */
export function drivesOn({ wiring, guards, terminalsOf }: PowerContext, source: string): readonly string[] {
  const fed = terminalsOf('power-feed').filter((id) => {
    const guard = guards.terminals.get(id);
    return guard !== undefined && (guard.source === source || guard.beside.includes(source));
  });
  return [...new Set(fed.map((id) => wiring.terminals.get(id)!.device))].sort(byName);
}

export function storedOn(context: PowerContext, source: Source): Stored {
  const device = context.wiring.devices.get(source.device);
  const drives = drivesOn(context, source.id);
  const bus = device?.kind === 'bus';
  const own = bus ? numberIn(device, 'capacitance') : 0;
  const each = drives.map((drive) => ({ drive, farads: driveFarads(context, drive) }));
  return {
    farads: (own ?? 0) + each.reduce((sum, { farads }) => sum + (farads ?? 0), 0),
    needs: [
      ...(own === undefined ? [`${source.device}.capacitance`] : []),
      ...each.flatMap(({ drive, farads }) => (farads === undefined ? [`${drive}.input-capacitance`] : [])),
    ],
    drives,
  };
}

/** The highest its volts get: without load, and with the mains high where that has been worked out for the drives' bus. */
export function highestVolts(
  { facts }: PowerContext,
  source: Source,
  drives: readonly string[],
): number | undefined {
  const high = drives.length > 0 ? facts.drawn.busHigh : undefined;
  if (source.volts === undefined) return high;
  return Math.max(source.volts, high ?? 0);
}

export const bleederOf = ({ wiring }: PowerContext, source: Source): number | undefined =>
  numberIn(wiring.devices.get(source.device), 'bleeder');
