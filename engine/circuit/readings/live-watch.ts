/** What of itself follows from the volts: which coils pull in, which devices have power, which sources give. */
import type { MeshOrder } from '../network/mesh-order.ts';
import { pairsOf } from '../power/conductors.ts';
import type { Source } from '../power/sources.ts';
import type { Load, ReadWiring } from '../wiring/types.ts';
import { nodeIn } from './live-fixed.ts';
import type { Reading } from './live-types.ts';

/** Share of its rated voltage at which a coil surely pulls in: IEC 60947-4-1 (recalled: 85 %). */
const PULLS = 0.85;

type Ends = readonly [a: number, b: number];

interface Coil {
  readonly device: string;
  readonly ends: Ends;
  readonly least: number;
}

/** Whether a device has at least half of some voltage at its feed, or is fed in no way that is drawn. */
type Fed = (reading: Reading) => boolean;

export class Watch {
  readonly #coils: readonly Coil[];
  readonly #fed: ReadonlyMap<string, Fed>;
  /** Sources but the mains. */
  readonly #sources: readonly { readonly id: string; readonly fed: Fed }[];
  readonly #mains: readonly string[];

  /** @param drivers devices that must have power to drive their outputs */
  constructor(wiring: ReadWiring, sources: readonly Source[], drivers: Iterable<string>, order: MeshOrder) {
    const node = nodeIn(wiring);
    const at = (id: string): number => order.node(node(id));
    this.#coils = pairsOf(wiring, ({ nature }) => nature.kind === 'load' && nature.what === 'coil').map(
      ([one, other]) => ({
        device: one.device,
        ends: [at(one.id), at(other.id)],
        least: PULLS * ((one.nature as Load).volts ?? 24),
      }),
    );
    this.#fed = new Map(Array.from(drivers, (id) => [id, fedRule(wiring, id, at)]));
    this.#sources = sources
      .filter(({ kind }) => kind !== 'mains')
      .map(({ id, device }) => ({ id, fed: sourceRule(wiring, device, at) }));
    this.#mains = sources.filter(({ kind }) => kind === 'mains').map(({ id }) => id);
  }

  /** Devices whose coil pulls in. */
  pulled(reading: Reading): ReadonlySet<string> {
    const pulled = new Set<string>();
    for (const { device, ends, least } of this.#coils) if (across(reading, ends) >= least) pulled.add(device);
    return pulled;
  }

  /** Sources that give; with no reading yet the mains alone. */
  giving(mains: boolean, reading: Reading | undefined): ReadonlySet<string> {
    const giving = new Set(mains ? this.#mains : []);
    if (reading) for (const { id, fed } of this.#sources) if (fed(reading)) giving.add(id);
    return giving;
  }

  unfed(reading: Reading): ReadonlySet<string> {
    const unfed = new Set<string>();
    for (const [id, fed] of this.#fed) if (!fed(reading)) unfed.add(id);
    return unfed;
  }
}

const across = (reading: Reading, [a, b]: Ends): number => Math.abs(reading.level(a, b) ?? 0);

function fedRule(wiring: ReadWiring, id: string, at: (id: string) => number): Fed {
  const terminals = (wiring.devices.get(id)?.terminals ?? []).map((each) => wiring.terminals.get(each)!);
  const feeds = terminals.filter(({ nature }) => nature.kind === 'feed' && nature.pole === 'plus');
  if (feeds.length > 0) {
    const ends = feeds.flatMap((plus): readonly Ends[] => {
      const minus = plus.with ?? plus.common;
      return minus === null ? [] : [[at(plus.id), at(minus)]];
    });
    return (reading) => ends.some((each) => across(reading, each) > 3);
  }
  const mains = terminals
    .filter(({ nature }) => nature.kind === 'mains' && nature.side === 'takes')
    .map((each) => at(each.id));
  if (mains.length < 2) return () => mains.length === 0;
  const [one, other] = mains as [number, number];
  return (reading) => across(reading, [one, other]) > 30 || Math.abs(reading.level(one) ?? 0) > 30;
}

function sourceRule(wiring: ReadWiring, device: string, at: (id: string) => number): Fed {
  const fedBy = (wiring.devices.get(device)?.terminals ?? [])
    .map((id) => wiring.terminals.get(id)!)
    .filter(
      ({ nature }) =>
        (nature.kind === 'winding' && nature.side === 'primary') ||
        (nature.kind === 'rectifier' && nature.leg === 'ac'),
    );
  if (fedBy.length < 2) return fedRule(wiring, device, at);
  const ends: Ends = [at(fedBy[0]!.id), at(fedBy[1]!.id)];
  return (reading) => across(reading, ends) > 5;
}
