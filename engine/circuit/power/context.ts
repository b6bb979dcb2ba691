/** Everything the rules of the supply look at. Each look is noted, so that a rule is asked anew when what it saw changes. */
import {
  AMBIENT_FACTORS,
  ambientFactor,
  groupingFactor,
  LAYING_SOURCES,
  type Laying,
  multicoreFactor,
  tableCurrent,
} from '../../tables/conductor-current.ts';
import type { Cable, Device, Terminal, Wire, WiringProblem } from '../wiring/types.ts';
import type { Current, Flow } from './flow.ts';
import type { PowerFacts } from './given.ts';
import type { PowerSettings } from './settings.ts';

/** One by its id; whoever looks is told when it changes. */
export interface Lookup<T> {
  readonly get: (id: string) => T | undefined;
}

/** What stands between a terminal and the source it is fed from. */
export interface Guarded {
  /** Id of the source. */
  readonly source: string;
  /** Its terminal. */
  readonly pole: string;
  /** Ids of others that feed the same metal: what can come is the sum of all. */
  readonly beside: readonly string[];
  /** Terminals (the side towards the source) of fuses and breakers passed on the way, nearest to the source first. */
  readonly passed: readonly string[];
  /** Residual current devices passed on every way there is. */
  readonly residual: readonly string[];
}

/** The way of a load: wires there and back. */
export interface Way {
  /** Device of its source. */
  readonly device: string;
  /** Volts of its source, where they are known. */
  readonly volts?: number;
  readonly wires: readonly string[];
}

/** What lies between two terminals. */
export interface Passed {
  readonly wires: readonly string[];
  /** Of each contact and fuse an end. */
  readonly ends: readonly string[];
  /** Devices whose metal is passed. */
  readonly devices: readonly string[];
}

/** Terminals by what the supply is asked about them. */
export type Role = 'takes' | 'leaks' | 'residual' | 'primary' | 'inlet' | 'charges' | 'power-feed';

export interface PowerContext {
  readonly wiring: {
    readonly devices: Lookup<Device>;
    readonly terminals: Lookup<Terminal>;
    readonly wires: Lookup<Wire>;
    readonly cables: Lookup<Cable>;
  };
  readonly settings: PowerSettings;
  readonly problems: readonly WiringProblem[];
  readonly facts: PowerFacts;
  readonly flow: Flow;
  readonly guards: { readonly terminals: Lookup<Guarded>; readonly wires: Lookup<Guarded> };
  /** Current of each wire, motor leads included. */
  readonly currents: Lookup<Current>;
  readonly capacity: (wire: Wire) => Capacity;
  /** Ids of all devices, in their order. */
  readonly devices: () => readonly string[];
  /** Ids of terminals, in their order. */
  readonly terminalsOf: (role: Role) => readonly string[];
  /** Ids of wires that name this terminal. */
  readonly wiresAt: (terminal: string) => readonly string[];
  /** Of a load: the wires there and back, from what gives to it. */
  readonly ways: Lookup<Way>;
  /** Live terminals of the mains that a terminal hangs on, everything switched on. */
  readonly phases: (terminal: string) => readonly string[];
  /** Wires whose nearest fuse this is. */
  readonly wiresBehind: (pole: string) => readonly string[];
  /** Cables that motor leads of a device lie in. */
  readonly motorCables: (device: string) => readonly string[];
  /** Whether somebody has said the capacitance of a cable, or it is only what is usual. */
  readonly capacitanceSaid: (cable: string) => boolean;
  /** Terminals passed on the way from one to another through contacts, fuses and connectors; undefined without a way. */
  readonly passed: (from: string, to: string) => Passed | undefined;
}

/** What a wire may carry: between the worst and the best of what is not known about how it lies. */
export interface Capacity {
  readonly laying: Laying;
  readonly inside: boolean;
  /** Undefined where its area is not known or beyond the tables. */
  readonly worst?: number;
  readonly best?: number;
  readonly table?: number;
  /** Settings that would bring worst and best together. */
  readonly needs: readonly string[];
  readonly source: string;
}

const KELVIN = 273.15;
/** Hottest and coolest printed surroundings, for what is not known. */
const HOTTEST = AMBIENT_FACTORS.at(-1)![1];
const COOLEST = AMBIENT_FACTORS[0]![1];

/** Whether a device sits in the cabinet; what has no place said does. */
export const inCabinet = (where: string): boolean => /^$|cabinet|panel|box/i.test(where.trim());

export function capacityOf(
  { wiring, settings, currents }: Pick<PowerContext, 'wiring' | 'settings' | 'currents'>,
  wire: Wire,
): Capacity {
  const place = (terminal: string): string =>
    wiring.devices.get(wiring.terminals.get(terminal)?.device ?? '')?.where ?? '';
  const inside = inCabinet(place(wire.from)) && inCabinet(place(wire.to));
  const laying = inside ? settings.laidInside : settings.laidOutside;
  const { source, status } = LAYING_SOURCES[laying];
  const base = { laying, inside, source: status === 'published' ? source : `${source} (check the standard)` };
  if (wire.section === undefined) return { ...base, needs: [`${wire.id}.section`] };
  const area = wire.section * 1e6;
  // Below the table's end in proportion to the area, which is on the safe side: thin wires cool better.
  const table =
    tableCurrent(area, laying) ?? (area < 0.75 ? (tableCurrent(0.75, laying)! * area) / 0.75 : undefined);
  if (table === undefined) return { ...base, needs: [] };
  const needs: string[] = [];
  const kelvin = inside ? settings.cabinetTemperature : settings.outsideTemperature;
  const ambient = kelvin === undefined ? undefined : (ambientFactor(kelvin - KELVIN) ?? 0);
  if (ambient === undefined)
    needs.push(inside ? 'settings.cabinet-temperature' : 'settings.outside-temperature');
  const { together } = settings;
  if (together === undefined) needs.push('settings.together');
  const grouping =
    together === undefined ? undefined : (groupingFactor(together, laying) ?? groupingFactor(9, laying)!);
  const cable = wire.cable === null ? undefined : wiring.cables.get(wire.cable);
  const loaded = cable ? cable.wires.filter((id) => (currents.get(id)?.amps ?? 0) >= 0.2).length : 0;
  const cores = multicoreFactor(loaded) ?? 0.4;
  return {
    ...base,
    table,
    worst: table * (ambient ?? HOTTEST) * (grouping ?? groupingFactor(9, laying)!) * cores,
    best: table * (ambient ?? COOLEST) * (grouping ?? 1) * cores,
    needs,
  };
}
