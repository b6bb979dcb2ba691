/** What gives: supplies, rectifiers, secondaries and the mains, with the terminals they give from. */
import type { Element } from '../network/index.ts';
import type { Mains, Nature, ReadWiring, Rectifier, Supply, Terminal, Winding } from '../wiring/types.ts';

export type SourceKind = 'mains' | 'secondary' | 'rectifier' | 'supply';

export interface Source {
  readonly id: string;
  readonly kind: SourceKind;
  readonly device: string;
  /** Terminals that are live against the others: L1, plus. */
  readonly live: readonly string[];
  /** N, minus; empty where there is none. */
  readonly back: readonly string[];
  readonly ac: boolean;
  /** Effective volts between live and back; undefined where not known. */
  readonly volts?: number;
  /** What it gives for good. */
  readonly amps?: number;
  /** Limits its own current. */
  readonly limits: boolean;
}

/**
 * Phases as numbers of one network: effective volts add as numbers here, so that phases only have to differ from each
 * other and from the neutral for what hangs between them to be fed. The third is a hair beside the first.
 */
const PHASE_SIGNS = [1, -1, 1.001] as const;
export const phaseSign = (source: Source, live: string): number =>
  source.kind === 'mains' ? (PHASE_SIGNS[source.live.indexOf(live)] ?? 1) : 1;

/** The node all mains sources stand against; no terminal has such an id. */
export const NEUTRAL = ' neutral of the mains';

/** Volts of one diode of a bridge under load: common practice, no source. */
const DIODE_VOLTS = 1.1;
/** Inner resistance of a source as the currents are shared: common practice, no source. */
export const INNER_OHMS = 5e-3;

const optional = <K extends string>(key: K, value: number | undefined): Partial<Record<K, number>> =>
  value === undefined ? {} : ({ [key]: value } as Record<K, number>);

const group = (terminal: Terminal): string => `${terminal.device}\n${terminal.group}`;

/** Terminals by device and group, of those that some nature fits. */
export function byGroup<N extends Nature>(
  wiring: ReadWiring,
  fits: (nature: Nature) => nature is N,
  key: (terminal: Terminal) => string = group,
): readonly (readonly (Terminal & { readonly nature: N })[])[] {
  const groups = new Map<string, (Terminal & { readonly nature: N })[]>();
  for (const terminal of wiring.terminals.values()) {
    if (!fits(terminal.nature)) continue;
    const name = key(terminal);
    groups.set(name, [...(groups.get(name) ?? []), terminal as Terminal & { readonly nature: N }]);
  }
  return [...groups.values()];
}

export function sourcesOf(wiring: ReadWiring): readonly Source[] {
  return [...mainsOf(wiring), ...secondariesOf(wiring), ...rectifiersOf(wiring), ...suppliesOf(wiring)];
}

function mainsOf(wiring: ReadWiring): readonly Source[] {
  const gives = (nature: Nature): nature is Mains => nature.kind === 'mains' && nature.side === 'gives';
  return byGroup(wiring, gives, (each) => each.device).map((poles) => ({
    id: poles[0]!.device,
    kind: 'mains',
    device: poles[0]!.device,
    live: poles.filter(({ nature }) => nature.pole !== 'N').map(({ id }) => id),
    back: poles.filter(({ nature }) => nature.pole === 'N').map(({ id }) => id),
    ac: true,
    ...optional('volts', poles.find(({ nature }) => nature.volts !== undefined)?.nature.volts),
    ...optional('amps', poles.find(({ nature }) => nature.amps !== undefined)?.nature.amps),
    limits: false,
  }));
}

function secondariesOf(wiring: ReadWiring): readonly Source[] {
  const secondary = (nature: Nature): nature is Winding =>
    nature.kind === 'winding' && nature.side === 'secondary';
  return byGroup(wiring, secondary).flatMap(([one, ...rest]): Source[] => {
    const other = rest.find(({ id }) => id === one!.with) ?? rest[0];
    if (!one || !other) return [];
    const { volts, amps, power } = one.nature;
    return [
      {
        id: one.id,
        kind: 'secondary',
        device: one.device,
        live: [one.id],
        back: [other.id],
        ac: true,
        ...optional('volts', volts),
        ...optional('amps', amps ?? (power !== undefined && volts ? power / volts : undefined)),
        limits: false,
      },
    ];
  });
}

function rectifiersOf(wiring: ReadWiring): readonly Source[] {
  const rectifier = (nature: Nature): nature is Rectifier => nature.kind === 'rectifier';
  return byGroup(wiring, rectifier, (each) => each.device).flatMap((legs): Source[] => {
    const plus = legs.filter(({ nature }) => nature.leg === 'plus');
    const minus = legs.filter(({ nature }) => nature.leg === 'minus');
    if (plus.length === 0 || minus.length === 0) return [];
    const { volts, amps } = plus[0]!.nature;
    return [
      {
        id: plus[0]!.id,
        kind: 'rectifier',
        device: plus[0]!.device,
        live: plus.map(({ id }) => id),
        back: minus.map(({ id }) => id),
        ac: false,
        ...optional(
          'volts',
          volts === undefined ? undefined : Math.max(0, Math.SQRT2 * volts - 2 * DIODE_VOLTS),
        ),
        ...optional('amps', amps),
        limits: false,
      },
    ];
  });
}

function suppliesOf(wiring: ReadWiring): readonly Source[] {
  const supply = (nature: Nature): nature is Supply => nature.kind === 'supply';
  return byGroup(wiring, supply).flatMap((poles): Source[] => {
    const plus = poles.filter(({ nature }) => nature.pole === 'plus');
    const minus = poles.filter(({ nature }) => nature.pole === 'minus');
    if (plus.length === 0) return [];
    const { volts, amps, regulated } = plus[0]!.nature;
    return [
      {
        id: plus[0]!.id,
        kind: 'supply',
        device: plus[0]!.device,
        live: plus.map(({ id }) => id),
        back: minus.length > 0 ? minus.map(({ id }) => id) : plus[0]!.common ? [plus[0]!.common] : [],
        ac: false,
        ...optional('volts', volts),
        ...optional('amps', amps),
        limits: regulated === true,
      },
    ];
  });
}

const ORDER: readonly SourceKind[] = ['mains', 'secondary', 'rectifier', 'supply'];

/** Mains first, then what hangs on them; of one kind by their ids. */
export const inSourceOrder = (a: Source, b: Source): number =>
  ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Sources as elements: every live terminal against the back, or against the neutral of the mains. */
export function sourceElements(sources: readonly Source[]): Element[] {
  const elements: Element[] = [];
  for (const source of sources) {
    // Where its volts are not known one volt stands in: how the current is shared does not depend on it.
    const volts = source.volts ?? 1;
    const [first] = source.back;
    if (source.kind !== 'mains' && first === undefined) continue;
    const against = source.kind === 'mains' ? NEUTRAL : first!;
    for (const live of source.live)
      elements.push({
        kind: 'voltage',
        id: sourceElement(live),
        plus: live,
        minus: against,
        volts: volts * phaseSign(source, live),
        ohms: INNER_OHMS,
      });
    const joined = source.kind === 'mains' ? source.back : source.back.slice(1);
    for (const back of joined)
      elements.push({ kind: 'resistor', id: sourceElement(back), a: against, b: back, ohms: INNER_OHMS });
  }
  return elements;
}

export const sourceElement = (terminal: string): string => `source ${terminal}`;
