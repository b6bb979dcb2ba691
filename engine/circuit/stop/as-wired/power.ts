/** The power of each drive: where it comes from, and which contactors cut how many poles of it. */
import { andList } from '../../../quantity/words.ts';
import type { Terminal } from '../../wiring/index.ts';
import { FRAME, type Sides } from './sides.ts';
import type { Difference } from './types.ts';

/** From one terminal of a drive back to what feeds it. */
interface Pole {
  readonly terminal: string;
  /** Element or device; undefined where it leads nowhere, '' where it comes back over earth, which belongs to all. */
  readonly source: string | undefined;
  /** What it gives there: 'direct current', 'mains'. */
  readonly gives: string;
  /** Contactors whose main contacts lie in its way. */
  readonly through: readonly string[];
}

export interface PowerLook {
  readonly differences: readonly Difference[];
  /** Terminals of the stop circuit that are compared here, and not as conductors. */
  readonly left: ReadonlySet<string>;
}

export function powerDifferences(sides: Sides): PowerLook {
  const differences: Difference[] = [];
  const left = new Set<string>();
  for (const { element } of sides.model.drives) {
    if (!sides.read.devices.has(element)) continue;
    const drawn = drawnPoles(sides, element);
    const laid = laidPoles(sides, element);
    const found = [...compare(sides, element, drawn, laid)];
    differences.push(...found);
    if (found.length > 0) for (const { terminal } of drawn) left.add(terminal);
  }
  return { differences, left };
}

function* compare(
  sides: Sides,
  drive: string,
  drawn: readonly Pole[],
  laid: readonly Pole[],
): Generator<Difference> {
  const loose = laid.filter(({ terminal }) => !sides.wired.has(terminal)).map(({ terminal }) => terminal);
  if (laid.length === 0 || loose.length === laid.length) {
    yield {
      kind: 'unlaid',
      verdict: 'unknown',
      about: [drive, ...loose],
      says: `The power of ${drive} is not wired yet.`,
      change: `Wire ${loose.length > 0 ? andList(loose) : `the power of ${drive}`} as the stop circuit has it.`,
    };
    return;
  }
  const lost = laid.filter(({ source, terminal }) => source === undefined && !loose.includes(terminal));
  if (loose.length > 0 || lost.length > 0) {
    const ends = [...loose, ...lost.map(({ terminal }) => terminal)];
    yield {
      kind: 'unlaid',
      verdict: 'unknown',
      about: [drive, ...ends],
      says: `In the wiring ${andList(ends)} ${ends.length === 1 ? 'is' : 'are'} not joined to anything that feeds ${drive}.`,
      change: 'Finish the wiring of its power, then look again.',
    };
  }
  const [from, to] = [drawn, laid].map((poles) => [...new Set(poles.flatMap(({ source }) => source || []))]);
  const isOther = from!.length > 0 && to!.length > 0 && from!.some((each) => !to!.includes(each));
  const cuts = (poles: readonly Pole[], contactor: string) =>
    poles.filter(({ through }) => through.includes(contactor)).length;
  const named = [...new Set([...drawn, ...laid].flatMap(({ through }) => through))].sort();
  for (const contactor of named) {
    const [before, now] = [cuts(drawn, contactor), cuts(laid, contactor)];
    if (before > 0 && now === 0)
      yield {
        kind: 'contactor',
        verdict: 'fails',
        about: [contactor, drive],
        says: `The stop circuit counts on ${contactor} to cut the power of ${drive}; in the wiring none of its main contacts lies in the way of that power.`,
        change: `Lead the power of ${drive} through main contacts of ${contactor}, or take ${contactor} out of its way in the stop circuit and see what is left.`,
      };
    // What goes on past a contactor by two poles still feeds the drive.
    else if (before > 0 && laid.length - now > 1)
      yield {
        kind: 'contactor',
        verdict: 'fails',
        about: [contactor, drive],
        says: `In the wiring ${contactor} cuts ${now} of ${laid.length} poles of the power of ${drive}; by the other ${laid.length - now} current still flows.`,
        change: `Lead at least ${laid.length - 1} of the poles through main contacts of ${contactor}, better all ${laid.length}.`,
      };
    else if (before === 0 && now > 0)
      yield {
        kind: 'in-the-way',
        verdict: 'tight',
        about: [contactor, drive],
        says: `In the wiring the power of ${drive} goes through ${contactor} as well; in the stop circuit it does not.`,
        change: `Draw ${contactor} into the power of ${drive} in the stop circuit.`,
      };
    else if (before !== now && before > 0)
      yield {
        kind: 'poles',
        verdict: 'tight',
        about: [contactor, drive],
        says: `${contactor} cuts ${before} of ${drawn.length} poles of the power of ${drive} in the stop circuit, and ${now} of ${laid.length} in the wiring.`,
        change: `Draw the power of ${drive} in the stop circuit with as many poles as it has, each through a main contact of ${contactor} as it is wired.`,
      };
  }
  if (isOther)
    yield {
      kind: 'source',
      verdict: 'tight',
      about: [drive, ...from!, ...to!],
      says: `The stop circuit feeds ${drive} from ${sayFrom(drawn)}; in the wiring it is fed from ${sayFrom(laid)}.`,
      change: `Feed ${drive} in the stop circuit from ${andList(to!)}: a fault of ${andList(from!)} does not reach it, and one of ${andList(to!)} does.`,
    };
  else if (drawn.length !== laid.length && !named.some((each) => cuts(drawn, each) > 0))
    yield {
      kind: 'poles',
      verdict: 'tight',
      about: [drive],
      says: `The power of ${drive} has ${drawn.length} poles in the stop circuit and ${laid.length} in the wiring.`,
      change: `Draw the power of ${drive} with ${laid.length} poles.`,
    };
}

/** 'G2 (direct current, 2 poles)' */
function sayFrom(poles: readonly Pole[]): string {
  const [first] = poles.filter(({ source }) => source);
  return first ? `${first.source} (${first.gives}, ${poles.length} poles)` : 'nothing';
}

/** By the marks of a drive's power in the stop circuit. */
const POWER = ['L', 'N', 'L1', 'L2', 'L3'];

function drawnPoles(sides: Sides, drive: string): readonly Pole[] {
  const { model } = sides;
  const at = new Map<string, { readonly source: string; readonly gives: string }>();
  for (const { element, plus, minus } of model.sources)
    for (const node of [plus, minus]) {
      const name = model.nodes[node]!;
      const gives = /\.(plus|minus)$/.test(name) ? 'direct current' : 'mains';
      const conductor = sides.drawn(name);
      at.set(
        conductor,
        at.get(conductor) ?? { source: conductor === sides.drawn(FRAME) ? '' : element, gives },
      );
    }
  const edges = model.contacts
    .filter(({ main, fuse }) => main || fuse)
    .map(({ a, b, element, main }) => ({
      ends: [sides.drawn(model.nodes[a]!), sides.drawn(model.nodes[b]!)] as const,
      contactor: main ? element : undefined,
    }));
  return POWER.map((mark) => `${drive}.${mark}`)
    .filter((name) => model.nodes.includes(name))
    .map((terminal) => ({ terminal, ...walk(sides.drawn(terminal), at, edges) }));
}

function laidPoles(sides: Sides, drive: string): readonly Pole[] {
  const { read } = sides;
  const at = new Map<string, { readonly source: string; readonly gives: string }>();
  for (const terminal of read.terminals.values()) {
    const gives = givesOf(terminal);
    const conductor = sides.laid(terminal.id);
    if (gives && !at.has(conductor))
      at.set(conductor, { source: conductor === sides.laid(FRAME) ? '' : terminal.device, gives });
  }
  const edges = [
    ...sides.contacts
      .filter(({ main }) => main)
      .map(({ a, b, device }) => ({ ends: [sides.laid(a), sides.laid(b)] as const, contactor: device })),
    ...[...read.terminals.values()].flatMap(({ id, nature, with: other }) =>
      nature.kind === 'protection' && other !== null && id < other
        ? [{ ends: [sides.laid(id), sides.laid(other)] as const, contactor: undefined }]
        : [],
    ),
  ];
  return (read.devices.get(drive)?.terminals ?? [])
    .filter((id) => {
      const { nature } = read.terminals.get(id)!;
      return (
        (nature.kind === 'feed' && nature.role === 'power') ||
        (nature.kind === 'mains' && nature.side === 'takes')
      );
    })
    .map((terminal) => ({ terminal, ...walk(sides.laid(terminal), at, edges) }));
}

function givesOf({ nature }: Terminal): string | undefined {
  if (nature.kind === 'mains' && nature.side === 'gives') return 'mains';
  if (nature.kind === 'supply' || (nature.kind === 'rectifier' && nature.leg !== 'ac'))
    return 'direct current';
  return undefined;
}

interface EdgeOf {
  readonly ends: readonly [string, string];
  readonly contactor: string | undefined;
}

/** The way with the fewest contacts back to a source. */
function walk(
  start: string,
  sources: ReadonlyMap<string, { readonly source: string; readonly gives: string }>,
  edges: readonly EdgeOf[],
): Omit<Pole, 'terminal'> {
  const seen = new Set([start]);
  const queue: { readonly at: string; readonly through: readonly string[] }[] = [{ at: start, through: [] }];
  for (const { at, through } of queue) {
    const source = sources.get(at);
    if (source) return { ...source, through };
    for (const { ends, contactor } of edges) {
      const to = ends[0] === at ? ends[1] : ends[1] === at ? ends[0] : undefined;
      if (to === undefined || seen.has(to)) continue;
      seen.add(to);
      queue.push({ at: to, through: contactor === undefined ? through : [contactor, ...through] });
    }
  }
  return { source: undefined, gives: '', through: [] };
}
