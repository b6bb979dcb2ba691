/** What each device in the cabinet turns into heat while everything runs. */
import { andList } from '../../quantity/words.ts';
import type { Device } from '../wiring/types.ts';
import { inCabinet, type PowerContext } from './context.ts';
import { type Load, SWITCHED } from './loads.ts';

/** Shares of what passes through that become heat, where nobody has said: common practice, no source. */
export const LOST = {
  /** Of an inverter's power: 3 to 4 %. */
  inverter: 0.035,
  /** Of what a drive takes: volts times amperes. */
  drive: 0.05,
  /** Of what a transformer gives, at an efficiency of 95 %. */
  transformer: 1 / 0.95 - 1,
  /** Of what a switched-mode supply gives. */
  supply: 1 / SWITCHED.efficiency - 1,
} as const;
/** Two diodes of a bridge, always on the way: common practice, no source. */
export const BRIDGE_VOLTS = 2.2;

export const HEAT_SOURCE =
  'losses of devices that say nothing (inverter 3.5 % of its power, drive 5 %, transformer 5 %, supply 15 %, two diodes of 1.1 V): common practice, no source';

export interface Heat {
  readonly device: string;
  /** W; a lower bound where `needs` is not empty. */
  readonly watts: number;
  /** Typed by somebody, rather than worked out. */
  readonly typed: boolean;
  /** Settings it waits for. */
  readonly needs: readonly string[];
}

/** Undefined of a device outside, and of one that gives off nothing and waits for nothing. */
export function heatIn(context: PowerContext, id: string): Heat | undefined {
  const device = context.wiring.devices.get(id);
  if (!device || !inCabinet(device.where)) return undefined;
  const heat = ofDevice(context, device);
  return heat.watts > 0 || heat.needs.length > 0 ? heat : undefined;
}

type Part = Pick<Heat, 'watts' | 'needs'>;
const NOTHING: Part = { watts: 0, needs: [] };
const times = ({ watts, needs }: Part, share: number): Part => ({ watts: watts * share, needs });
const plus = (a: Part, b: Part): Part => ({ watts: a.watts + b.watts, needs: [...a.needs, ...b.needs] });

function ofDevice(context: PowerContext, device: Device): Heat {
  const typed = device.settings.heat;
  if (typeof typed === 'number') return { device: device.id, watts: typed, typed: true, needs: [] };
  return { device: device.id, typed: false, ...lossOf(context, device) };
}

function lossOf(context: PowerContext, device: Device): Part {
  const of = (name: string): number | undefined => {
    const value = device.settings[name];
    return typeof value === 'number' ? value : undefined;
  };
  switch (device.kind) {
    case 'inverter':
    case 'drive':
      return times(taken(context, device), LOST[device.kind]);
    case 'transformer':
      return times(given(context, device), LOST.transformer);
    case 'supply':
      return times(given(context, device), LOST.supply);
    case 'bus': {
      const [volts, bleeder] = [of('volts'), of('bleeder')];
      const burnt = volts !== undefined && bleeder !== undefined ? (volts * volts) / bleeder : 0;
      return plus(given(context, device, BRIDGE_VOLTS), { watts: burnt, needs: [] });
    }
    case 'dump-resistor':
      // How often the motors brake is not in the wiring.
      return { watts: 0, needs: [`${device.id}.heat`] };
    default:
      // Coils, lamps, fans and logic keep nothing of what they take; a.c. coils are counted by their volt-amperes.
      return taken(context, device);
  }
}

/** Volts times amperes of all it takes; the larger guess where its supply's current has not been said. */
function taken({ flow, guards, wiring }: PowerContext, device: Device): Part {
  return flow
    .loadsOf(device.id)
    .map((load): Part => {
      const takes = flow.takes.get(load.id);
      if (!takes?.fed) return NOTHING;
      const guard = guards.terminals.get(load.from) ?? guards.terminals.get(load.to);
      const source = guard && flow.source.get(guard.source);
      // Without volts of its source the solver lets one volt stand in.
      const volts = source !== undefined && source.volts === undefined ? printed(load) : takes.volts;
      if (volts === undefined) return { watts: 0, needs: [`${source!.device}.volts`] };
      if (takes.needs.length === 0) return { watts: volts * takes.amps, needs: [] };
      const motor = wiring.devices.get(device.id)!.settings['motor-current'];
      return typeof motor === 'number'
        ? { watts: volts * motor, needs: [] }
        : { watts: volts * takes.amps, needs: takes.needs };
    })
    .reduce(plus, NOTHING);
}

/** What is printed on it, between phase and neutral. */
const printed = ({ volts, ac, to }: Load): number | undefined =>
  volts === undefined ? undefined : ac && to.startsWith(' ') ? volts / Math.sqrt(3) : volts;

/** What it gives: watts, or its amperes times some volts lost on the way. */
function given({ flow }: PowerContext, device: Device, lost?: number): Part {
  return flow
    .sourcesOf(device.id)
    .map((source): Part => {
      const gives = flow.gives.get(source.id);
      if (!gives) return NOTHING;
      const volts = lost ?? source.volts;
      if (volts === undefined)
        return {
          watts: 0,
          needs: [`${device.id}.${source.kind === 'secondary' ? 'secondary' : 'volts'}`],
        };
      return { watts: volts * gives.amps, needs: gives.needs };
    })
    .reduce(plus, NOTHING);
}

/** Those named one by one; the rest are many and small. */
const NAMED = 5;

/** 'T4 84 W, T1 33 W (typed), and 4 others 12 W' */
export function namedHeat(heats: readonly Heat[]): string {
  const warm = heats.filter(({ watts }) => watts >= 0.05);
  const rest = warm.slice(NAMED);
  const others = rest.reduce((sum, { watts }) => sum + watts, 0);
  return andList([
    ...warm.slice(0, NAMED).map(({ device, watts, typed, needs }) => {
      const more = needs.length > 0 ? ' or more' : '';
      return `${device} ${inWatts(watts)}${more}${typed ? ' (typed)' : ''}`;
    }),
    ...(rest.length === 0
      ? []
      : [`${rest.length} ${rest.length === 1 ? 'other' : 'others'} ${inWatts(others)}`]),
  ]);
}

export const inWatts = (watts: number): string =>
  `${watts < 10 ? Number(watts.toPrecision(2)) : Math.round(watts)} W`;
