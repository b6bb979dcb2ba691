/** Bounds of every ohmmeter reading against one node. */
import { type Element, resistancesTo } from '../network/index.ts';
import type { ReadWiring } from '../wiring/types.ts';
import type { Band } from './types.ts';
import type { Way } from './ways.ts';

/** What a hand meter no longer tells from no path at all. */
export const OPEN_OHMS = 20e6;

const elementsOf = (ways: readonly Way[], bound: 'low' | 'high'): Element[] =>
  ways.flatMap((way): Element[] =>
    Number.isFinite(way[bound])
      ? [{ kind: 'resistor', id: way.id, a: way.a, b: way.b, ohms: way[bound] }]
      : [],
  );

/** By net; a net that no path reaches has low and high `Infinity`. */
export function bandsTo(
  ways: readonly Way[],
  common: string,
  nets: readonly string[],
): ReadonlyMap<string, Band> {
  const solve = (bound: 'low' | 'high'): ReadonlyMap<string, number> => {
    const answer = resistancesTo({ elements: elementsOf(ways, bound), references: [common] }, common, nets);
    return answer.ok ? answer.ohms : new Map();
  };
  const low = solve('low');
  const high = solve('high');
  const shown = (ohms: number | undefined): number =>
    ohms === undefined || ohms > OPEN_OHMS ? Number.POSITIVE_INFINITY : Math.max(0, ohms);
  return new Map(nets.map((net) => [net, { low: shown(low.get(net)), high: shown(high.get(net)) }] as const));
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
