/** Empty capacitors at switching on: the peak each takes, and what that does to a fuse. */
import { inrush } from '../../handbook/inrush.ts';
import { evaluate, type Outcome } from '../../sheet/index.ts';
import type { Device } from '../wiring/types.ts';
import type { PowerContext } from './context.ts';
import { byName } from './sorted.ts';
import type { Source } from './sources.ts';
import { driveFarads, drivesOn } from './stored.ts';

/** Ω in series while the capacitors charge, where nobody has said: an NTC, cold. Common practice, no source. */
export const USUAL_RESISTOR: Readonly<Record<string, number>> = { supply: 10, drive: 20, inverter: 20 };
/** Rise of a transformer without load, where nobody has said: common practice, no source. */
export const USUAL_RISE = 0.05;

export const CHARGING_SOURCE =
  'derived: switched on at the peak of the mains, capacitors empty, inductance ignored, several at once simply added: on the safe side. What is marked usual: common practice, no source. An NTC that is still hot from before lets far more pass';

export interface Charging {
  readonly device: string;
  /** Terminals it charges through. */
  readonly at: readonly string[];
  /** A; undefined where not even a usual value can be given. */
  readonly peak?: number;
  /** Integral of the current squared over the whole charge, A²·s; undefined without its capacitance. */
  readonly squared?: number;
  /** Whether the peak rests on what is usual. */
  readonly usual: boolean;
  /** Settings that would say the peak. */
  readonly needs: readonly string[];
  /** Settings that would say the rest of what a fuse feels. */
  readonly needsSquared: readonly string[];
}

const drivesBehind = (context: PowerContext, device: Device): readonly string[] =>
  context.flow.sourcesOf(device.id).flatMap(({ id }) => drivesOn(context, id));

interface Behind {
  /** Effective volts, and how far they rise without load. */
  readonly volts: number;
  readonly rise: number;
  readonly ohms: number;
  readonly usual: boolean;
  readonly needs: readonly string[];
}

/** Everything with empty capacitors behind the mains or a transformer. */
export function chargingOf(context: PowerContext): readonly Charging[] {
  const { wiring, guards, terminalsOf } = context;
  const devices = new Set(terminalsOf('charges').map((id) => wiring.terminals.get(id)!.device));
  return [...devices].sort(byName).flatMap((id): readonly Charging[] => {
    const device = wiring.devices.get(id)!;
    const at = device.terminals.filter((each) => {
      const { nature } = wiring.terminals.get(each)!;
      return nature.kind === 'mains'
        ? nature.side === 'takes'
        : nature.kind === 'rectifier' && nature.leg === 'ac';
    });
    const guard = at.map((each) => guards.terminals.get(each)).find((each) => each !== undefined);
    const source = guard && context.flow.source.get(guard.source);
    return source && (Object.hasOwn(USUAL_RESISTOR, device.kind) || device.kind === 'bus')
      ? [chargingAt(context, device, at, source)]
      : [];
  });
}

function chargingAt(context: PowerContext, device: Device, at: readonly string[], source: Source): Charging {
  const setting = (name: string): number | undefined => {
    const value = device.settings[name];
    return typeof value === 'number' ? value : undefined;
  };
  const base = { device: device.id, at };
  const behind = behindOf(context, at, source);
  const said = setting('inrush');
  const bus = device.kind === 'bus';
  // A bus has what is drawn with it; other devices have something inside that their manual tells of.
  const resistor = setting('inrush-resistor') ?? (bus ? 0 : USUAL_RESISTOR[device.kind]!);
  const usual =
    said === undefined && (behind?.usual === true || (!bus && setting('inrush-resistor') === undefined));
  const asked = bus ? [] : setting('inrush-resistor') === undefined ? [`${device.id}.inrush`] : [];
  const needs = said !== undefined ? [] : [...asked, ...(behind?.needs ?? unsaid(context, source))];
  // Drives that hang on a bus charge with it.
  const behindBus = bus
    ? drivesBehind(context, device).reduce((sum, drive) => sum + (driveFarads(context, drive) ?? 0), 0)
    : 0;
  const own = setting(bus ? 'capacitance' : 'input-capacitance');
  const farads = own === undefined ? undefined : own + behindBus;
  const needsSquared =
    farads === undefined ? [`${device.id}.${bus ? 'capacitance' : 'input-capacitance'}`] : [];
  if (behind === undefined || behind.ohms + resistor <= 0)
    return {
      ...base,
      usual,
      needs,
      needsSquared: [...needsSquared, ...unsaid(context, source)],
      ...(said === undefined ? {} : { peak: said }),
    };
  const { volts, rise } = behind;
  const sheet = (Rs: number) =>
    evaluate(inrush, { Vsec: volts, reg: rise, Rs, ...(farads === undefined ? {} : { C: farads }) });
  const worked = sheet(behind.ohms + resistor);
  const peak = said ?? value(worked.I_charge);
  // What the manual gives as a peak tells the resistance too.
  const ohms = said === undefined ? behind.ohms + resistor : (Math.SQRT2 * volts * (1 + rise)) / said;
  const energy = value(worked.E_cap);
  return {
    ...base,
    usual,
    needs,
    needsSquared,
    ...(peak === undefined || peak <= 0 ? {} : { peak }),
    // The energy of a charged capacitor is spent once more in the resistance it charges through.
    ...(energy === undefined ? {} : { squared: energy / ohms }),
  };
}

/** What is missing of the source. */
function unsaid({ wiring, settings }: PowerContext, source: Source): readonly string[] {
  const secondary = source.kind === 'secondary';
  return [
    ...(source.volts === undefined ? [`${source.device}.${secondary ? 'secondary' : 'volts'}`] : []),
    ...(secondary
      ? wiring.devices.get(source.device)?.settings.power === undefined
        ? [`${source.device}.power`]
        : []
      : settings.mainsResistance === undefined
        ? ['settings.mains-resistance']
        : []),
  ];
}

const value = (outcome: Outcome): number | undefined =>
  outcome.state === 'known' ? outcome.value : undefined;

/** What stands behind the terminals: the mains with their resistance, or a transformer with that of its windings. */
function behindOf(
  { wiring, settings }: PowerContext,
  at: readonly string[],
  source: Source,
): Behind | undefined {
  if (source.volts === undefined) return undefined;
  if (source.kind === 'secondary') {
    const transformer = wiring.devices.get(source.device)!;
    const { power, regulation } = transformer.settings;
    if (typeof power !== 'number' || power <= 0) return undefined;
    const said = typeof regulation === 'number' && regulation > 0 ? regulation : undefined;
    const rise = said ?? USUAL_RISE;
    // The rise is what the rated current loses in the windings.
    return {
      volts: source.volts,
      rise,
      ohms: (rise * source.volts * source.volts) / power,
      usual: said === undefined,
      needs: said === undefined ? [`${source.device}.regulation`] : [],
    };
  }
  if (settings.mainsResistance === undefined) return undefined;
  const phases = source.kind === 'mains' && betweenPhases(wiring, at);
  return {
    volts: source.volts * (phases ? Math.sqrt(3) : 1),
    rise: 0,
    ohms: settings.mainsResistance,
    usual: false,
    needs: [],
  };
}

const betweenPhases = (wiring: PowerContext['wiring'], at: readonly string[]): boolean =>
  !at.some((id) => {
    const { nature } = wiring.terminals.get(id)!;
    return nature.kind === 'mains' && nature.pole === 'N';
  });
