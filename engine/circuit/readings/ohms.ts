/** Bounds of ohmmeter readings between any two nets, contacts at rest or moved. */
import { MeshOrder } from '../network/mesh-order.ts';
import { type Branch, StarMesh } from '../network/star-mesh.ts';
import type { ReadWiring } from '../wiring/types.ts';
import type { Band } from './types.ts';
import { type ContactWay, contactWays, type Way, waysOf } from './ways.ts';

/** What a hand meter no longer tells from no path at all, and from none of resistance. */
export const OPEN_OHMS = 20e6;
const LEAST_OHMS = 1e-6;

type Bound = 'low' | 'high';

/** The paths of a wiring without power, taken apart once for all readings. */
export class OhmPaths {
  readonly ways: readonly Way[];
  readonly #contacts: ReadonlyMap<string, readonly ContactWay[]>;
  readonly #order: MeshOrder;
  readonly #meshes: Readonly<Record<Bound, StarMesh>>;
  #moved: string | undefined;

  /** @param contacts by the device that moves them */
  constructor(ways: readonly Way[], contacts: ReadonlyMap<string, readonly ContactWay[]> = new Map()) {
    this.ways = ways;
    this.#contacts = contacts;
    const all = [...this.ways, ...[...this.#contacts.values()].flatMap((each) => each.map(({ way }) => way))];
    this.#order = new MeshOrder(all.map(({ a, b }) => [a, b] as const));
    this.#meshes = { low: this.#mesh('low'), high: this.#mesh('high') };
  }

  static of(wiring: ReadWiring): OhmPaths {
    return new OhmPaths(waysOf(wiring), contactWays(wiring));
  }

  #mesh(bound: Bound): StarMesh {
    return new StarMesh(
      this.#order,
      this.ways.flatMap((way) => this.#branch(way, bound)),
    );
  }

  #branch({ a, b, ...way }: Way, bound: Bound): Branch[] {
    return Number.isFinite(way[bound])
      ? [
          {
            a: this.#order.node(a),
            b: this.#order.node(b),
            siemens: 1 / Math.max(LEAST_OHMS, way[bound]),
            amps: 0,
          },
        ]
      : [];
  }

  /**
   * What a meter shows between two nets; low and high `Infinity` where no path leads.
   *
   * @param moved device whose contacts are moved, all others being at rest
   */
  band(a: string, b: string, moved?: string): Band {
    this.#move(moved);
    return { low: this.#shown(a, b, 'low'), high: this.#shown(a, b, 'high') };
  }

  #shown(a: string, b: string, bound: Bound): number {
    const [one, other] = [this.#order.node(a), this.#order.node(b)];
    if (a !== b && (one < 0 || other < 0)) return Number.POSITIVE_INFINITY;
    const ohms = a === b ? 0 : this.#meshes[bound].ohms(one, other);
    return ohms > OPEN_OHMS ? Number.POSITIVE_INFINITY : ohms;
  }

  #move(device: string | undefined): void {
    if (device === this.#moved) return;
    this.#moved = device;
    const contacts = device === undefined ? [] : (this.#contacts.get(device) ?? []);
    for (const bound of ['low', 'high'] as const) {
      const branches = (closed: boolean): Branch[] =>
        contacts.flatMap(({ way, closedAtRest }) =>
          closedAtRest === closed ? this.#branch(way, bound) : [],
        );
      this.#meshes[bound].change(branches(false), branches(true));
    }
  }
}

/** Which electronics, and which things of unsaid resistance, hang together with a net: names of devices. */
export interface Company {
  readonly electronics: readonly string[];
  readonly unsaid: readonly string[];
}

/** By net: what stands in the same piece of the network. `near` first: what touches the net itself. */
export function companyOf(wiring: ReadWiring, ways: readonly Way[]): ReadonlyMap<string, Company> {
  const touching = new Map<string, { electronics: Set<string>; unsaid: Set<string> }>();
  for (const way of ways)
    for (const end of [way.a, way.b]) {
      const set = touching.get(end) ?? { electronics: new Set<string>(), unsaid: new Set<string>() };
      touching.set(end, set);
      if (way.electronics !== undefined) set.electronics.add(way.electronics);
      if (way.unsaid !== undefined) set.unsaid.add(way.unsaid);
    }
  return new Map(
    wiring.nets.map(({ id }) => {
      const set = touching.get(id);
      return [id, { electronics: [...(set?.electronics ?? [])], unsaid: [...(set?.unsaid ?? [])] }] as const;
    }),
  );
}
