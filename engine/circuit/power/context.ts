/** Everything the rules of the supply look at, worked out once. */
import type { Refit } from '../../refit/types.ts';
import {
  AMBIENT_FACTORS,
  ambientFactor,
  groupingFactor,
  LAYING_SOURCES,
  type Laying,
  multicoreFactor,
  tableCurrent,
} from '../../tables/conductor-current.ts';
import type { Net, ReadWiring, Wire, WiringProblem } from '../wiring/types.ts';
import { type Current, type Flow, flowOf } from './flow.ts';
import { type Drawn, type PowerFacts, powerFacts } from './given.ts';
import { type Guards, guardsOf } from './guards.ts';
import { settingOf } from './setting-of.ts';
import { type PowerSettings, readPowerSettings } from './settings.ts';

export interface PowerContext {
  readonly wiring: ReadWiring;
  readonly settings: PowerSettings;
  readonly problems: readonly WiringProblem[];
  readonly facts: PowerFacts;
  readonly flow: Flow;
  readonly guards: Guards;
  /** The same from the side the current comes back to. */
  readonly returns: Guards;
  /** Current of each wire, motor leads included. */
  readonly currents: ReadonlyMap<string, Current>;
  readonly capacity: (wire: Wire) => Capacity;
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

export function powerContext(refit: Refit, wiring: ReadWiring, drawn: Drawn = {}): PowerContext {
  const problems: WiringProblem[] = [];
  const settings = readPowerSettings(refit.wiring.settings, problems);
  const flow = flowOf(wiring);
  const currents = new Map(flow.wires);
  // Once for each net: a common net of thousands of terminals has as many wires.
  const leads = new Map<Net, Current | undefined>();
  for (const wire of wiring.wires.values()) {
    const net = wiring.netOf.get(wire.from) ?? wiring.netOf.get(wire.to);
    if (!net) continue;
    if (!leads.has(net)) leads.set(net, motorLead(wiring, net));
    const lead = leads.get(net);
    if (lead) currents.set(wire.id, lead);
  }
  return {
    wiring,
    settings,
    problems,
    facts: powerFacts(refit, drawn),
    flow,
    guards: guardsOf(wiring, flow.sources),
    returns: guardsOf(wiring, flow.sources, ({ back }) => back),
    currents,
    capacity: (wire) => capacityOf(wiring, settings, currents, wire),
  };
}

/** What a motor lead carries for good: what the motor takes, or else what the drive gives. */
function motorLead(wiring: ReadWiring, net: Net): Current | undefined {
  const leads = net.terminals.flatMap((id) => {
    const nature = wiring.terminals.get(id)!.nature;
    return nature.kind === 'motor-phase' ? [{ id, nature }] : [];
  });
  if (leads.length === 0) return undefined;
  const takes = leads.find(({ nature }) => nature.side === 'takes' && nature.amps !== undefined);
  const gives = leads.find(({ nature }) => nature.side === 'gives' && nature.amps !== undefined);
  // A drive may give more than the motor's plate for as long as it is set to: the larger counts where both are known.
  const amps = Math.max(takes?.nature.amps ?? 0, gives?.nature.amps ?? 0);
  if (amps > 0) return { amps, needs: [] };
  const device = wiring.terminals.get(leads[0]!.id)!.device;
  return { amps: 0, needs: [settingOf(wiring, device, 'motor-current', 'current')] };
}

function capacityOf(
  wiring: ReadWiring,
  settings: PowerSettings,
  currents: ReadonlyMap<string, Current>,
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
  const loaded = cable ? cable.wires.filter((id) => (currents.get(id)?.amps ?? 0) > 0.2).length : 0;
  const cores = multicoreFactor(loaded) ?? 0.4;
  return {
    ...base,
    table,
    worst: table * (ambient ?? HOTTEST) * (grouping ?? groupingFactor(9, laying)!) * cores,
    best: table * (ambient ?? COOLEST) * (grouping ?? 1) * cores,
    needs,
  };
}
