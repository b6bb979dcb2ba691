/** What the rules see of a supply, each look noted. */
import type { Cable, Device, Protection, Terminal, Wire, WiringProblem } from '../wiring/types.ts';
import type { Cells } from './cells.ts';
import { pairElement, wireElement } from './conductors.ts';
import { capacityOf, type Guarded, type Lookup, type PowerContext, type Role, type Way } from './context.ts';
import type { Current, Flow } from './flow.ts';
import type { PowerFacts } from './given.ts';
import { fromNano } from './grid/channels.ts';
import type { Edge } from './grid/forest.ts';
import type { Grid } from './grid/grid.ts';
import { settingOf } from './setting-of.ts';
import type { PowerSettings } from './settings.ts';
import { byName } from './sorted.ts';
import { inSourceOrder, type Source } from './sources.ts';

/** The wiring as it stands, and what is said of it as a whole. */
export interface Standing {
  readonly devices: ReadonlyMap<string, Device>;
  readonly terminals: ReadonlyMap<string, Terminal>;
  readonly wires: ReadonlyMap<string, Wire>;
  readonly cables: ReadonlyMap<string, Cable>;
  readonly settings: PowerSettings;
  readonly problems: readonly WiringProblem[];
  readonly facts: PowerFacts;
  readonly roles: ReadonlyMap<Role, ReadonlySet<string>>;
  readonly capacitanceSaid: (cable: string) => boolean;
}

export function viewOf(cells: Cells, grid: Grid, now: () => Standing): PowerContext {
  const noted = <T>(prefix: string, of: (standing: Standing) => ReadonlyMap<string, T>): Lookup<T> => ({
    get: (id) => {
      cells.note(`${prefix}:${id}`);
      return of(now()).get(id);
    },
  });
  const answered = <T>(prefix: string, ask: (id: string) => T): Lookup<NonNullable<T>> => ({
    get: (id) => cells.answer(`${prefix}:${id}`, () => ask(id)) ?? undefined,
  });
  const wiring = {
    devices: noted('d', ({ devices }) => devices),
    terminals: noted('t', ({ terminals }) => terminals),
    wires: noted('w', ({ wires }) => wires),
    cables: noted('cable', ({ cables }) => cables),
  };
  const clusterOf = (terminal: string) => {
    cells.note(`c:${terminal}`);
    return grid.clusters.find(terminal);
  };
  const troubled = (): boolean => {
    cells.note('trouble');
    return grid.trouble !== undefined;
  };
  const linkCurrent = (link: string): Current => {
    if (troubled()) return NONE;
    cells.note(`i:${link}`);
    return { amps: fromNano(grid.nano(link)), needs: grid.needs(link) };
  };
  const piecesOf = (device: string) => {
    cells.note(`d:${device}`);
    return grid.pieces(device);
  };

  const flow: Flow = {
    get sources() {
      cells.note('sources');
      return [...grid.sources.values()].sort(inSourceOrder);
    },
    source: {
      get: (id) => {
        cells.note(`source:${id}`);
        return grid.sources.get(id);
      },
    },
    load: {
      get: (id) => {
        cells.note(`load:${id}`);
        return grid.held.get(id)?.load;
      },
    },
    sourcesOf: (device) => piecesOf(device)?.sources ?? [],
    loadsOf: (device) => piecesOf(device)?.loads ?? [],
    wires: {
      get: (id) => (wiring.wires.get(id) ? linkCurrent(wireElement(id)) : undefined),
    },
    pairs: {
      get: (id) => {
        const other = wiring.terminals.get(id)?.with;
        return other ? linkCurrent(pairElement(id, other)) : undefined;
      },
    },
    gives: answered('gives', (id): Current | undefined => {
      const source = flow.source.get(id);
      if (!source || troubled()) return undefined;
      const each = grid.lives(source).map(linkCurrent);
      const amps =
        source.kind === 'mains'
          ? Math.max(0, ...each.map((one) => one.amps))
          : each.reduce((sum, one) => sum + one.amps, 0);
      return { amps, needs: merged(each.map(({ needs }) => needs)) };
    }),
    takes: {
      get: (id) => {
        cells.note(`l:${id}`);
        const held = grid.held.get(id);
        if (!held || troubled()) return undefined;
        const { nano, needs, volts, fed } = held.taken;
        return { amps: fromNano(nano), needs, volts, fed };
      },
    },
    get trouble() {
      cells.note('trouble');
      return grid.trouble;
    },
  };

  /** Of a motor's leads what it takes or its drive gives, whichever is more; not of what a source feeds besides. */
  const leadOf = (terminal: string): Current | undefined => {
    const cluster = clusterOf(terminal);
    if (!cluster) return undefined;
    const { number } = cluster;
    return (
      cells.answer(`lead:${number}`, (): Current | null => {
        cells.note(`motor:${number}`);
        cells.note(`live:${number}`);
        if (cluster.byKind.has('live')) return null;
        const leads = [...(cluster.byKind.get('motor') ?? [])]
          .sort(byName)
          .map((id) => wiring.terminals.get(id)!);
        if (leads.length === 0) return null;
        const amps = Math.max(
          ...leads.map(({ nature }) => (nature.kind === 'motor-phase' ? (nature.amps ?? 0) : 0)),
        );
        if (amps > 0) return { amps, needs: [] };
        return { amps: 0, needs: [settingOf(wiring, leads[0]!.device, 'motor-current', 'current')] };
      }) ?? undefined
    );
  };

  const currents = answered('current', (id): Current | undefined => {
    const wire = wiring.wires.get(id);
    if (!wire) return undefined;
    return leadOf(wire.from) ?? leadOf(wire.to) ?? flow.wires.get(id);
  });

  const guarded = answered('guard', (id): Guarded | null => {
    const cluster = clusterOf(id);
    if (!cluster) return null;
    cells.note(`live:${cluster.number}`);
    cells.note(`shape:${cluster.number}`);
    const poles = [...(cluster.byKind.get('live') ?? [])];
    if (poles.length === 0) return null;
    const sources = [...new Set(poles.map((pole) => grid.sourceAt(pole)!))].sort(inSourceOrder);
    const [first] = sources;
    for (const { id: each } of sources) cells.note(`source:${each}`);
    const found = first!.live
      .filter((pole) => poles.includes(pole))
      .map((pole) => passedTo(id, pole))
      .sort((a, b) => a.passed.length - b.passed.length);
    return { source: first!.id, beside: sources.slice(1).map((each) => each.id), ...found[0]! };
  });

  /** Fuses and the like on the way from a terminal to one that gives. */
  function passedTo(id: string, pole: string): Omit<Guarded, 'source' | 'beside'> {
    const passed: string[] = [];
    const residual: string[] = [];
    let at = id;
    for (const edge of grid.forest.way(id, pole) ?? []) {
      const { a, b, rank, id: link } = edge.link;
      const next = a === at ? b : a;
      if (rank === 2) {
        const nature = wiring.terminals.get(next)?.nature;
        cells.note(`loop:${link}`);
        if (nature?.kind === 'protection' && nature.form === 'residual' && edge.covers.size === 0)
          residual.push(wiring.terminals.get(next)!.device);
        if (isFuse(nature)) passed.unshift(next);
      }
      at = next;
    }
    return { pole, passed, residual };
  }

  const isFuse = (nature: Terminal['nature'] | undefined): nature is Protection =>
    nature?.kind === 'protection' && (nature.form === 'fuse' || nature.form === 'breaker');

  /** Wires reached from a terminal over metal and contacts, and not through what `stops`. */
  function wiresFrom(terminal: string, stops: (edge: Edge) => boolean): readonly string[] {
    const wires = new Set<string>();
    const seen = new Set([terminal]);
    for (const at of seen) {
      cells.note(`e:${at}`);
      for (const edge of grid.forest.vertices.get(at)?.edges ?? []) {
        if (edge.link.rank === 3 || stops(edge)) continue;
        if (edge.link.wire !== undefined) wires.add(edge.link.wire);
        seen.add(edge.link.a).add(edge.link.b);
      }
    }
    return [...wires].sort(byName);
  }

  /** Wires between two terminals of one piece of metal, contacts and fuses. */
  const wiresBetween = (from: string, to: string): readonly string[] =>
    (grid.forest.way(from, to) ?? []).flatMap(({ link }) => link.wire ?? []);

  const ways = answered('way', (id): Way | null => {
    const load = flow.load.get(id);
    if (!load) return null;
    const at = guarded.get(load.from);
    const [end, other] = at ? [load.from, load.to] : [load.to, load.from];
    const there = at ?? guarded.get(load.to);
    const source = there && flow.source.get(there.source);
    if (!source) return null;
    const wires = new Set(wiresBetween(end, there.pole));
    for (const wire of back(other, source) ?? []) wires.add(wire);
    if (wires.size === 0) return null;
    const { device, volts } = source;
    return { device, ...(volts === undefined ? {} : { volts }), wires: [...wires] };
  });

  /** To where a source takes its current back, or to another of its phases. */
  function back(terminal: string, source: Source): readonly string[] | undefined {
    const cluster = clusterOf(terminal);
    if (!cluster) return undefined;
    cells.note(`shape:${cluster.number}`);
    const ends = source.back.filter((end) => clusterOf(end) === cluster);
    if (ends.length > 0)
      return ends.map((end) => wiresBetween(terminal, end)).sort((a, b) => a.length - b.length)[0];
    const guard = guarded.get(terminal);
    return guard?.source === source.id ? wiresBetween(terminal, guard.pole) : undefined;
  }

  const context: PowerContext = {
    wiring,
    get settings() {
      cells.note('settings');
      return now().settings;
    },
    get problems() {
      return now().problems;
    },
    get facts() {
      cells.note('facts');
      return now().facts;
    },
    flow,
    guards: {
      terminals: guarded,
      wires: {
        get: (id) => {
          const wire = wiring.wires.get(id);
          if (!wire || !wiring.terminals.get(wire.from) || !wiring.terminals.get(wire.to)) return undefined;
          return guarded.get(wire.from);
        },
      },
    },
    currents,
    ways,
    capacity: (wire) =>
      cells.answer(`capacity:${wire.id}`, () => capacityOf(context, wiring.wires.get(wire.id) ?? wire)),
    devices: () => {
      cells.note('devices');
      return [...now().devices.keys()].sort(byName);
    },
    terminalsOf: (role) => {
      cells.note(`role:${role}`);
      return [...(now().roles.get(role) ?? [])].sort(byName);
    },
    wiresAt: (terminal) => {
      cells.note(`w@${terminal}`);
      return [...(grid.wiresAt.get(terminal) ?? [])].sort(byName);
    },
    phases: (terminal) => {
      const cluster = clusterOf(terminal);
      if (!cluster) return [];
      cells.note(`live:${cluster.number}`);
      return [...(cluster.byKind.get('live') ?? [])]
        .filter((pole) => grid.sourceAt(pole)?.kind === 'mains')
        .sort(byName);
    },
    wiresBehind: (pole) =>
      cells.answer(`behind:${pole}`, () => {
        const other = wiring.terminals.get(pole)?.with;
        return other
          ? wiresFrom(other, ({ link }) => link.rank === 2 && isFuse(wiring.terminals.get(link.a)?.nature))
          : [];
      }),
    capacitanceSaid: (cable) => {
      cells.note(`cable:${cable}`);
      return now().capacitanceSaid(cable);
    },
    passed: (from, to) => {
      const [here, there] = [clusterOf(from), clusterOf(to)];
      if (!here || here !== there) return undefined;
      cells.note(`shape:${here.number}`);
      const way = grid.forest.way(from, to) ?? [];
      return {
        wires: way.flatMap(({ link }) => link.wire ?? []),
        ends: way.flatMap(({ link }) => (link.wire === undefined && link.rank > 0 ? [link.a] : [])),
        devices: [
          ...new Set(
            way.flatMap(({ link }) =>
              link.wire === undefined ? (wiring.terminals.get(link.a)?.device ?? []) : [],
            ),
          ),
        ],
      };
    },
    motorCables: (device) => {
      const wires = (wiring.devices.get(device)?.terminals ?? []).flatMap((id) => {
        const nature = wiring.terminals.get(id)?.nature;
        if (nature?.kind !== 'motor-phase' || nature.side !== 'gives' || !leadOf(id)) return [];
        return wiresFrom(id, () => false);
      });
      return [...new Set(wires.flatMap((id) => wiring.wires.get(id)?.cable ?? []))].sort(byName);
    },
  };
  return context;
}

const NONE: Current = { amps: 0, needs: [] };

const merged = (all: readonly (readonly string[])[]): readonly string[] =>
  [...new Set(all.flat())].sort(byName);
