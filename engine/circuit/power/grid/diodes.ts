/** How loose diodes stand: by their own law, in the part of the supply that hangs together with them. */
import { type Diode, type Element, operatingPoint } from '../../network/index.ts';
import type { Load } from '../loads.ts';
import { NEUTRAL } from '../sources.ts';
import type { Link } from './forest.ts';

/** What a load that takes nothing draws, to see how diodes stand. */
const PROBE_OHMS = 1e7;
/** V; a diode that carries even what a probe draws has hundreds of millivolts on it, and noise of the solver has none. */
const CONDUCTS = 1e-3;

/** What meets at a terminal. */
export interface Meeting {
  /** Metal, contacts, fuses and sources; no diode. */
  readonly links: Iterable<Link>;
  readonly loads: Iterable<Load>;
  readonly diodes: Iterable<Link>;
}

/** What hangs together, however little current passes. The neutral of the mains parts it: its volts are the same for all. */
export interface Part {
  readonly links: ReadonlySet<Link>;
  readonly loads: ReadonlySet<Load>;
  readonly diodes: ReadonlySet<Link>;
}

/**
 * The parts around some terminals that hold a diode, each once.
 *
 * @param meeting undefined where there is no such terminal
 */
export function partsAround(
  terminals: Iterable<string>,
  meeting: (terminal: string) => Meeting | undefined,
): readonly Part[] {
  const seen = new Set<string>([NEUTRAL]);
  const parts: Part[] = [];
  for (const start of terminals) {
    if (seen.has(start)) continue;
    seen.add(start);
    const part = { links: new Set<Link>(), loads: new Set<Load>(), diodes: new Set<Link>() };
    const queue = [start];
    const reach = (terminal: string): void => {
      if (seen.has(terminal)) return;
      seen.add(terminal);
      queue.push(terminal);
    };
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      const met = meeting(at);
      if (!met) continue;
      for (const kind of ['links', 'diodes'] as const)
        for (const link of met[kind]) {
          part[kind].add(link);
          reach(link.a);
          reach(link.b);
        }
      for (const load of met.loads) {
        part.loads.add(load);
        reach(load.from);
        reach(load.to);
      }
    }
    if (part.diodes.size > 0) parts.push(part);
  }
  return parts;
}

const byId = <T extends { readonly id: string }>(a: T, b: T): number => (a.id < b.id ? -1 : 1);

/**
 * The diodes of a part that conduct, with every load on its volts and none taking anything. Depends on what the part holds
 * and on nothing else, in whatever order it came.
 *
 * @param backs where sources take their current back, in the order of the sources
 */
export function conducting({ links, loads, diodes }: Part, backs: readonly string[]): ReadonlySet<Link> {
  const elements = [...links]
    .sort(byId)
    .map(
      ({ id, a, b, ohms, lifts }): Element =>
        lifts
          ? { kind: 'voltage', id, plus: a, minus: b, volts: lifts.re / 1e6, ohms }
          : { kind: 'resistor', id, a, b, ohms },
    );
  const probes = [...loads].sort(byId).map(
    ({ id, from, to }): Element => ({
      kind: 'resistor',
      id: `load ${id}`,
      a: from,
      b: to,
      ohms: PROBE_OHMS,
    }),
  );
  const there = [...diodes].sort(byId);
  const laws = there.map(
    ({ id, a, b }): Diode => ({
      kind: 'diode',
      id,
      anode: a,
      cathode: b,
      saturation: 1e-9,
      emission: 1.3,
      ohms: 0.01,
    }),
  );
  const ends = new Set([...links, ...diodes].flatMap(({ a, b }) => [a, b]));
  const answer = operatingPoint({
    elements: [...elements, ...probes, ...laws],
    references: [NEUTRAL, ...backs].filter((each) => ends.has(each)),
  });
  return new Set(there.filter(({ a, b }) => answer.ok && (answer.point.volts(a, b) ?? -1) > CONDUCTS));
}
