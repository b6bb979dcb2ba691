/** The currents of every wire, fuse and source when the machine runs and everything is on. */
import { type Element, operatingPoint, type Trouble } from '../network/index.ts';
import type { Output, ReadWiring, Terminal } from '../wiring/types.ts';
import { CONTACT_OHMS, closedRunning, conductorElements, pairElement, wireElement } from './conductors.ts';
import { type Load, loadsOf } from './loads.ts';
import { NEUTRAL, type Source, sourceElement, sourceElements, sourcesOf } from './sources.ts';

export interface Current {
  /** Effective amperes; a lower bound where `needs` is not empty. */
  readonly amps: number;
  /** Loads beyond it whose current nobody has said: the settings to fill in. */
  readonly needs: readonly string[];
}

export interface Flow {
  readonly sources: readonly Source[];
  readonly loads: readonly Load[];
  /** By wire. */
  readonly wires: ReadonlyMap<string, Current>;
  /** Through a fuse, breaker or contact, by either of its terminals. */
  readonly pairs: ReadonlyMap<string, Current>;
  /** What each source gives, by its id. */
  readonly gives: ReadonlyMap<string, Current>;
  /** What each load takes, and the volts at it, by its id. */
  readonly takes: ReadonlyMap<string, Current & { readonly volts: number; readonly fed: boolean }>;
  /** Why nothing could be worked out. */
  readonly trouble?: Trouble;
}

/** A load that takes nothing yet, to see which volts it is under. */
const PROBE_OHMS = 1e7;
/** Rounds in which what follows from other loads comes to rest: mains, transformer, rectifier, supply. */
const ROUNDS = 8;
/** At most so many unknown loads are traced one by one; beyond, all stand for all. */
const MOST_TRACED = 60;

/** Outputs that switch on: to the plus or the minus of their device. */
function outputElements(wiring: ReadWiring): Element[] {
  const elements: Element[] = [];
  const feedOf = (terminal: Terminal, pole: 'plus' | 'minus'): string | undefined => {
    const own = [...wiring.terminals.values()].filter(
      ({ device, nature }) =>
        device === terminal.device &&
        (nature.kind === 'feed' || nature.kind === 'supply') &&
        nature.pole === pole,
    );
    return (own.find(({ group }) => group === terminal.group) ?? own[0])?.id;
  };
  for (const terminal of wiring.terminals.values()) {
    if (terminal.nature.kind !== 'output') continue;
    const output: Output = terminal.nature;
    const end =
      output.stage === 'sourcing'
        ? feedOf(terminal, 'plus')
        : output.stage === 'sinking'
          ? (terminal.common ?? feedOf(terminal, 'minus'))
          : undefined;
    if (end === undefined || end === terminal.id) continue;
    elements.push({
      kind: 'resistor',
      id: `output ${terminal.id}`,
      a: terminal.id,
      b: end,
      ohms: CONTACT_OHMS,
    });
  }
  return elements;
}

const diodeElements = (wiring: ReadWiring): Element[] =>
  [...wiring.terminals.values()].flatMap((terminal): Element[] =>
    terminal.nature.kind === 'diode' && terminal.nature.leg === 'anode' && terminal.with !== null
      ? [
          {
            kind: 'diode',
            id: `diode ${terminal.id}`,
            anode: terminal.id,
            cathode: terminal.with,
            saturation: 1e-9,
            emission: 1.3,
            ohms: 0.01,
          },
        ]
      : [],
  );

export function flowOf(wiring: ReadWiring): Flow {
  const sources = sourcesOf(wiring);
  const loads = loadsOf(wiring, sources);
  const fixed = [
    ...conductorElements(wiring, { closed: (_, contact) => closedRunning(contact), warm: 70 }),
    ...sourceElements(sources),
    ...outputElements(wiring),
    ...diodeElements(wiring),
  ];
  const references = [NEUTRAL, ...sources.flatMap(({ back }) => back)];
  const solve = (ohms: ReadonlyMap<string, number>) =>
    operatingPoint({
      elements: [
        ...fixed,
        ...loads.map(
          (load): Element => ({
            kind: 'resistor',
            id: `load ${load.id}`,
            a: load.from,
            b: load.to,
            ohms: ohms.get(load.id) ?? PROBE_OHMS,
          }),
        ),
      ],
      references,
    });
  let solved = solve(new Map());
  const nothing = (trouble: Trouble): Flow => ({
    sources,
    loads,
    wires: new Map(),
    pairs: new Map(),
    gives: new Map(),
    takes: new Map(),
    trouble,
  });
  if (!solved.ok) return nothing(solved.trouble);
  const empty = solved.point;
  const across = new Map(
    loads.map((load) => [load.id, Math.abs(empty.volts(load.from, load.to) ?? 0)] as const),
  );
  const alive = new Set(loads.filter(({ id }) => across.get(id)! > 1e-3));
  const fed = (load: Load): boolean => alive.has(load);
  // Which unknown loads, and loads that follow from others, hang where: each at one ampere, alone.
  const unknown = loads.filter((load) => fed(load) && load.amps === undefined && load.follows === undefined);
  const ohmsAt = (load: Load, amps: number): number =>
    Math.min(PROBE_OHMS, Math.max(1e-3, across.get(load.id)! / amps));
  const amps = new Map<string, number>();
  for (const load of loads)
    if (fed(load) && load.amps !== undefined && load.amps > 0) amps.set(load.id, load.amps);
  for (let round = 0; round < ROUNDS; round++) {
    solved = solve(
      new Map(
        loads.filter(({ id }) => amps.has(id)).map((load) => [load.id, ohmsAt(load, amps.get(load.id)!)]),
      ),
    );
    if (!solved.ok) return nothing(solved.trouble);
    let moved = false;
    const now = solved.point;
    for (const load of loads) {
      if (!fed(load)) continue;
      if (load.follows) {
        const { source, factor } = load.follows;
        const given = source.live.reduce((sum, live) => sum + Math.abs(now.amps(sourceElement(live))), 0);
        const next = given * factor(across.get(load.id)!);
        if (Math.abs(next - (amps.get(load.id) ?? 0)) > 1e-4 * Math.max(1e-3, next)) moved = true;
        if (next > 1e-6) amps.set(load.id, next);
      }
      // A load takes its current whatever the wires leave it, so its stand-in follows the volts that reach it.
      const there = Math.abs(now.volts(load.from, load.to) ?? 0);
      if (Math.abs(there - across.get(load.id)!) > 1e-4 * there) moved = true;
      if (there > 1e-3) across.set(load.id, there);
    }
    if (!moved) break;
  }
  const { point } = solved;
  const needs = traceUnknown(unknown, loads, solve, ohmsAt, fed);
  const wires = new Map<string, Current>();
  for (const { id } of wiring.wires.values()) {
    const element = wireElement(id);
    wires.set(id, { amps: quiet(Math.abs(point.amps(element))), needs: needs.get(element) ?? [] });
  }
  const pairs = new Map<string, Current>();
  for (const terminal of wiring.terminals.values())
    if (
      terminal.with !== null &&
      (terminal.nature.kind === 'protection' || terminal.nature.kind === 'contact')
    ) {
      const element = pairElement(terminal.id, terminal.with);
      pairs.set(terminal.id, { amps: quiet(Math.abs(point.amps(element))), needs: needs.get(element) ?? [] });
    }
  const gives = new Map(
    sources.map((source) => {
      const each = source.live.map((live) => Math.abs(point.amps(sourceElement(live))));
      // Of the mains the heaviest line counts; other sources give through all their terminals together.
      const total = source.kind === 'mains' ? Math.max(0, ...each) : each.reduce((a, b) => a + b, 0);
      const waits = [...new Set(source.live.flatMap((live) => needs.get(sourceElement(live)) ?? []))];
      return [source.id, { amps: quiet(total), needs: waits }] as const;
    }),
  );
  const takes = new Map(
    loads.map((load) => [
      load.id,
      {
        amps: quiet(Math.abs(point.amps(`load ${load.id}`))),
        needs: unknown.includes(load) ? [load.needs] : [],
        volts: Math.abs(point.volts(load.from, load.to) ?? 0),
        fed: fed(load),
      },
    ]),
  );
  return { sources, loads, wires, pairs, gives, takes };
}

/** What the probes of loads that take nothing draw is no current. */
const quiet = (amps: number): number => (amps < 2e-4 ? 0 : amps);

/** Elements that carry the current of a load nobody has said, by element. */
function traceUnknown(
  unknown: readonly Load[],
  loads: readonly Load[],
  solve: (ohms: ReadonlyMap<string, number>) => ReturnType<typeof operatingPoint>,
  ohmsAt: (load: Load, amps: number) => number,
  fed: (load: Load) => boolean,
): ReadonlyMap<string, readonly string[]> {
  const needs = new Map<string, string[]>();
  const batches: readonly (readonly Load[])[] =
    unknown.length <= MOST_TRACED ? unknown.map((load) => [load]) : [unknown];
  for (const batch of batches) {
    // What follows from this load's source carries it on: each round wakes the next loads up the tree.
    const on = new Set(batch.map(({ id }) => id));
    for (let round = 0; round < ROUNDS; round++) {
      const solved = solve(
        new Map(loads.filter(({ id }) => on.has(id)).map((load) => [load.id, ohmsAt(load, 1)])),
      );
      if (!solved.ok) break;
      const before = on.size;
      for (const load of loads)
        if (
          load.follows &&
          fed(load) &&
          load.follows.source.live.some((live) => Math.abs(solved.point.amps(sourceElement(live))) > 1e-2)
        )
          on.add(load.id);
      if (on.size > before && round < ROUNDS - 1) continue;
      for (const piece of solved.point.pieces)
        for (const { id } of piece.elements)
          if (Math.abs(solved.point.amps(id)) > 1e-2)
            needs.set(id, [...new Set([...(needs.get(id) ?? []), ...batch.map((load) => load.needs)])]);
      break;
    }
  }
  return needs;
}
