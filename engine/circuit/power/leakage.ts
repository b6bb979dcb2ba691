/** What leaks to earth all the time through the filters of what hangs on the mains, phase by phase. */
import { andList } from '../../quantity/words.ts';
import { filterLeakage } from '../wiring/kinds/mains-filter.ts';
import type { Device } from '../wiring/types.ts';
import type { PowerContext } from './context.ts';
import { amps } from './say.ts';
import { byName } from './sorted.ts';

/**
 * Usual leakage of a filter in A, where the manual has not been read: common practice, no source. Inverters with
 * large filters leak three times as much.
 */
export const USUAL_LEAKAGE: Readonly<Record<string, number>> = {
  supply: 1e-3,
  drive: 3.5e-3,
  inverter: 3.5e-3,
  'mains-filter': 3.5e-3,
};
export const USUAL_SOURCE =
  'what is marked usual: common practice, no source; a motor cable by its own length, and by its capacitance where that has been said; phases added alone, the heaviest counts: on the safe side, as currents of different phases partly cancel';

export interface Leak {
  /** 'T3', 'cable WM-S' */
  readonly name: string;
  readonly device: string;
  /** Its terminals on the mains. */
  readonly at: readonly string[];
  /** Live terminals of the mains it leaks from. */
  readonly lines: readonly string[];
  /** Undefined where not even a usual value can be given. */
  readonly amps?: number;
  /** Whether the number is only what is usual. */
  readonly usual: boolean;
  /** Settings that would say it. */
  readonly needs: readonly string[];
}

export interface Leakage {
  /** On the heaviest phase, from what has been said alone. */
  readonly sure: number;
  /** With usual values for the rest. */
  readonly likely: number;
  /** Those that leak from the heaviest phase, largest first. */
  readonly leaks: readonly Leak[];
  /** Settings that would turn the usual into the said. */
  readonly needs: readonly string[];
  /** Whether something leaks of which not even the usual is known. */
  readonly open: boolean;
}

export function leaksOf(context: PowerContext): readonly Leak[] {
  const { wiring, flow, guards, phases, terminalsOf } = context;
  const mains = flow.sources.filter(({ kind }) => kind === 'mains');
  if (mains.length === 0) return [];
  const all = mains.flatMap(({ live }) => live);
  const devices = new Set(terminalsOf('leaks').map((id) => wiring.terminals.get(id)!.device));
  return [...devices].sort(byName).flatMap((name): readonly Leak[] => {
    const device = wiring.devices.get(name)!;
    const usual = Object.hasOwn(USUAL_LEAKAGE, device.kind) ? USUAL_LEAKAGE[device.kind] : undefined;
    const at = device.terminals.filter((id) => {
      const { nature } = wiring.terminals.get(id)!;
      return nature.kind === 'mains' && nature.side !== 'gives';
    });
    if (usual === undefined || at.length === 0) return [];
    const found = [...new Set(at.flatMap((id) => phases(id)))];
    // Behind a transformer of its own it is not joined to the mains' earth; without a wire yet, any phase may be meant.
    if (found.length === 0 && at.some((id) => guards.terminals.get(id) !== undefined)) return [];
    const lines = found.length > 0 ? found : all;
    const typed =
      device.kind === 'mains-filter'
        ? filterLeakage(device.settings, mains[0]!.volts)
        : device.settings.leakage;
    const base = { device: device.id, at, lines };
    const own: Leak =
      typeof typed === 'number'
        ? { ...base, name: device.id, amps: typed, usual: false, needs: [] }
        : { ...base, name: device.id, amps: usual, usual: true, needs: [`${device.id}.leakage`] };
    return [own, ...cablesOf(context, device, base)];
  });
}

/**
 * Motor cables behind it, each by its own length: the chopped voltage drives current through the capacitance of the cable,
 * to its screen, or to the metal it lies on. What leaks grows with that capacitance.
 */
function cablesOf(
  context: PowerContext,
  device: Device,
  base: Pick<Leak, 'device' | 'at' | 'lines'>,
): readonly Leak[] {
  if (device.kind === 'supply') return [];
  const { wiring, settings } = context;
  const { cableLeakage: per, screenedCapacitance, openCapacitance } = settings;
  return context.motorCables(device.id).flatMap((id): readonly Leak[] => {
    const cable = wiring.cables.get(id);
    // A wire may name one that is not there.
    if (!cable) return [];
    const { length, shield, capacitance } = cable;
    // One whose screen has not been described counts as screened: motor cables are.
    const usual = shield === 'none' ? openCapacitance : screenedCapacitance;
    const said = context.capacitanceSaid(id);
    const farads = said ? capacitance : usual;
    const settingsOpen = [
      ...(per === undefined ? ['settings.motor-cable-leakage'] : []),
      ...(screenedCapacitance === undefined ? ['settings.screened-cable-capacitance'] : []),
      ...(usual === undefined && shield === 'none' ? ['settings.open-cable-capacitance'] : []),
    ];
    const needs = [
      ...settingsOpen,
      ...(length === undefined ? [`${id}.length`] : []),
      ...(settingsOpen.length > 0 || length === undefined
        ? []
        : settings.cableLeakageSaid
          ? said || shield !== 'none'
            ? []
            : [`${id}.capacitance`]
          : ['settings.motor-cable-leakage', ...(said ? [] : [`${id}.capacitance`])]),
    ];
    const kind = shield === 'none' ? 'unscreened cable' : 'cable';
    const leak: Leak = {
      ...base,
      name: `${kind} ${id}`,
      // The typed leakage is that of a metre of screened cable; another cable follows from it by capacitance.
      usual: !settings.cableLeakageSaid || (shield === 'none' && !said),
      needs,
      ...(per === undefined ||
      length === undefined ||
      farads === undefined ||
      screenedCapacitance === undefined
        ? {}
        : { amps: (per * length * farads) / screenedCapacitance }),
    };
    return [leak];
  });
}

/** Adds up by phase; the heaviest counts. */
export function addUp(leaks: readonly Leak[]): Leakage {
  const lines = [...new Set(leaks.flatMap((each) => each.lines))];
  const sum = (line: string, which: (leak: Leak) => boolean): number =>
    leaks.reduce((all, each) => all + (each.lines.includes(line) && which(each) ? (each.amps ?? 0) : 0), 0);
  const heaviest = lines
    .map((line) => ({ line, likely: sum(line, () => true) }))
    .sort((a, b) => b.likely - a.likely)[0];
  const here = leaks
    .filter((each) => heaviest !== undefined && each.lines.includes(heaviest.line))
    .sort((a, b) => (b.amps ?? 0) - (a.amps ?? 0));
  return {
    sure: Math.max(0, ...lines.map((line) => sum(line, ({ usual }) => !usual))),
    likely: heaviest?.likely ?? 0,
    leaks: here,
    needs: [
      ...new Set(
        leaks.filter(({ usual, amps: said }) => usual || said === undefined).flatMap(({ needs }) => needs),
      ),
    ],
    open: leaks.some((each) => each.amps === undefined),
  };
}

/** 'T3 3.5 mA (usual), G1 0.4 mA' */
export const namedLeaks = (leaks: readonly Leak[]): string =>
  andList(
    leaks.map(({ name, amps: each, usual }) =>
      each === undefined ? `${name} (length not said)` : `${name} ${amps(each)}${usual ? ' (usual)' : ''}`,
    ),
  );
