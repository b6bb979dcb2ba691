/** What takes current: coils, feeds of devices, primaries, rectifiers, supplies on the mains. */
import type {
  Feed,
  Load as LoadNature,
  Mains,
  Nature,
  ReadWiring,
  Rectifier,
  Terminal,
  Winding,
} from '../wiring/types.ts';
import type { Shape } from './grid/channels.ts';
import { settingOf } from './setting-of.ts';
import { shapeOf } from './shape.ts';
import { byGroup, NEUTRAL, type Source } from './sources.ts';

export interface Load {
  /** Its first terminal. */
  readonly id: string;
  readonly device: string;
  readonly name: string;
  readonly from: string;
  /** A terminal, or the neutral of the mains for one line of a three-phase load. */
  readonly to: string;
  /** For good; undefined where nobody has said and it does not follow from other loads. */
  readonly amps?: number;
  readonly volts?: number;
  readonly ac: boolean;
  /** Takes what this source gives, times the factor. */
  readonly follows?: { readonly source: Source; readonly factor: (volts: number) => number };
  /** Where its phase shift and its harmonics have been said. */
  readonly shape?: Shape;
  /** The setting to fill in, where it is not known. */
  readonly needs: string;
}

/** Secondary amperes (effective) for each ampere of d.c.: a transformer maker's note, bridge with capacitor. */
export const SECONDARY_AMPS = 1.8;

/**
 * Mains amperes of a switched-mode supply: its watts over volts, efficiency and power factor.
 * Common practice, no source: 0.85 and 0.6, for one without power-factor correction.
 */
export const SWITCHED = { efficiency: 0.85, powerFactor: 0.6 };

export function loadsOf(wiring: ReadWiring, sources: readonly Source[]): readonly Load[] {
  return [
    ...coils(wiring),
    ...feeds(wiring),
    ...mainsLoads(wiring, sources),
    ...primaries(wiring, sources),
    ...rectifiers(wiring, sources),
  ];
}

const nameOf = (wiring: ReadWiring, terminal: Terminal): string =>
  wiring.devices.get(terminal.device)?.name || terminal.device;

const known = (fields: { amps?: number | undefined; volts?: number | undefined }): Partial<Load> => ({
  ...(fields.amps === undefined ? {} : { amps: fields.amps }),
  ...(fields.volts === undefined ? {} : { volts: fields.volts }),
});

function coils(wiring: ReadWiring): readonly Load[] {
  const made: Load[] = [];
  const seen = new Set<string>();
  for (const terminal of wiring.terminals.values()) {
    if (terminal.nature.kind !== 'load' || terminal.with === null || seen.has(terminal.id)) continue;
    const nature: LoadNature = terminal.nature;
    seen.add(terminal.with);
    const { volts, ohms, watts } = nature;
    const amps =
      nature.amps ??
      (watts !== undefined && volts ? watts / volts : undefined) ??
      (volts !== undefined && ohms ? volts / ohms : undefined);
    made.push({
      id: terminal.id,
      device: terminal.device,
      name: nameOf(wiring, terminal),
      from: terminal.id,
      to: terminal.with,
      ac: nature.supply === 'ac',
      needs: settingOf(wiring, terminal.device, 'coil-current', 'current'),
      ...known({ amps, volts }),
    });
  }
  return made;
}

function feeds(wiring: ReadWiring): readonly Load[] {
  const feed = (nature: Nature): nature is Feed => nature.kind === 'feed';
  const key = (each: Terminal): string => `${each.device}\n${each.group}\n${(each.nature as Feed).role}`;
  return byGroup(wiring, feed, key).flatMap((poles): Load[] => {
    const plus = poles.find(({ nature }) => nature.pole === 'plus');
    const minus = poles.find(({ nature }) => nature.pole === 'minus');
    const to = minus?.id ?? plus?.common;
    if (!plus || !to) return [];
    return [
      {
        id: plus.id,
        device: plus.device,
        name: nameOf(wiring, plus),
        from: plus.id,
        to,
        ac: false,
        needs: settingOf(wiring, plus.device, 'supply-current', 'current'),
        ...known({ amps: plus.nature.amps, volts: plus.nature.volts }),
      },
    ];
  });
}

/** What a supply on the mains takes follows from what it gives. */
function followed(wiring: ReadWiring, device: string, sources: readonly Source[]): Load['follows'] {
  // A drive or control gives its encoder some milliamperes too; what it takes itself does not follow from them.
  if (wiring.devices.get(device)?.kind !== 'supply') return undefined;
  const source = sources.find((each) => each.device === device && each.kind === 'supply');
  if (!source) return undefined;
  return {
    source,
    factor: (volts) => (source.volts ?? 0) / (volts * SWITCHED.efficiency * SWITCHED.powerFactor),
  };
}

function mainsLoads(wiring: ReadWiring, sources: readonly Source[]): readonly Load[] {
  const takes = (nature: Nature): nature is Mains => nature.kind === 'mains' && nature.side === 'takes';
  return byGroup(wiring, takes).flatMap((poles): Load[] => {
    const lines = poles.filter(({ nature }) => nature.pole !== 'N');
    const neutral = poles.find(({ nature }) => nature.pole === 'N');
    const single = lines.length === 1 && neutral !== undefined;
    return lines.map((line): Load => {
      const follows = line.nature.amps === undefined ? followed(wiring, line.device, sources) : undefined;
      return {
        id: line.id,
        device: line.device,
        name: nameOf(wiring, line),
        from: line.id,
        // Several lines: each takes its amperes, and they cancel in the star point.
        to: single ? neutral.id : NEUTRAL,
        ac: true,
        needs: settingOf(wiring, line.device, 'mains-current', 'supply-current', 'current'),
        ...known({ amps: line.nature.amps, volts: line.nature.volts }),
        ...(follows ? { follows } : {}),
        ...shapeOf(wiring.devices.get(line.device)),
      };
    });
  });
}

function primaries(wiring: ReadWiring, sources: readonly Source[]): readonly Load[] {
  const primary = (nature: Nature): nature is Winding =>
    nature.kind === 'winding' && nature.side === 'primary';
  return byGroup(wiring, primary).flatMap(([one, ...rest]): Load[] => {
    const other = rest.find(({ id }) => id === one?.with) ?? rest[0];
    if (!one || !other) return [];
    const source = sources.find((each) => each.device === one.device && each.kind === 'secondary');
    const volts = one.nature.volts;
    return [
      {
        id: one.id,
        device: one.device,
        name: nameOf(wiring, one),
        from: one.id,
        to: other.id,
        ac: true,
        needs: settingOf(wiring, one.device, 'secondary', 'volts'),
        // What it carries follows from the other winding; what is printed on it is only the most it may.
        ...known({ amps: source?.volts === undefined ? one.nature.amps : undefined, volts }),
        ...(source?.volts === undefined
          ? {}
          : { follows: { source, factor: (there: number) => source.volts! / (volts ?? there) } }),
      },
    ];
  });
}

function rectifiers(wiring: ReadWiring, sources: readonly Source[]): readonly Load[] {
  const rectifier = (nature: Nature): nature is Rectifier => nature.kind === 'rectifier';
  return byGroup(wiring, rectifier, (each) => each.device).flatMap((legs): Load[] => {
    const ac = legs.filter(({ nature }) => nature.leg === 'ac');
    // Its d.c. side is a rectifier's, or that of a supply with capacitors.
    const source = sources.find(
      (each) => each.device === legs[0]!.device && (each.kind === 'rectifier' || each.kind === 'supply'),
    );
    if (ac.length < 2 || !source) return [];
    return [
      {
        id: ac[0]!.id,
        device: ac[0]!.device,
        name: nameOf(wiring, ac[0]!),
        from: ac[0]!.id,
        to: ac[1]!.id,
        ac: true,
        needs: settingOf(wiring, ac[0]!.device, 'current'),
        ...known({ volts: ac[0]!.nature.volts }),
        follows: { source, factor: () => SECONDARY_AMPS },
      },
    ];
  });
}
