/** The currents of every wire, fuse and source when the machine runs and everything is on. */
import { andList } from '../../quantity/words.ts';
import {
  type Diode,
  type Drawn,
  type Element,
  type Flowing,
  LinearNetwork,
  operatingPoint,
  type Trouble,
} from '../network/index.ts';
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
const MOST_TRACED = 200;

/** Outputs that switch on: to the plus or the minus of their device. */
function outputElements(wiring: ReadWiring): Element[] {
  const elements: Element[] = [];
  const feedOf = (terminal: Terminal, pole: 'plus' | 'minus'): string | undefined => {
    const own = (wiring.devices.get(terminal.device)?.terminals ?? [])
      .map((id) => wiring.terminals.get(id)!)
      .filter(({ nature }) => (nature.kind === 'feed' || nature.kind === 'supply') && nature.pole === pole);
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

const diodeElements = (wiring: ReadWiring): Diode[] =>
  [...wiring.terminals.values()].flatMap((terminal): Diode[] =>
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

const KEPT = new WeakMap<ReadWiring, Flow>();

/** Worked out once for each reading of a wiring. */
export function flowOf(wiring: ReadWiring): Flow {
  const flow = KEPT.get(wiring) ?? workOut(wiring);
  KEPT.set(wiring, flow);
  return flow;
}

function workOut(wiring: ReadWiring): Flow {
  const sources = sourcesOf(wiring);
  const loads = loadsOf(wiring, sources);
  const fixed = [
    ...conductorElements(wiring, { closed: (_, contact) => closedRunning(contact), warm: 70 }),
    ...sourceElements(sources),
    ...outputElements(wiring),
    ...loads.map(
      (load): Element => ({
        kind: 'resistor',
        id: loadElement(load),
        a: load.from,
        b: load.to,
        ohms: PROBE_OHMS,
      }),
    ),
  ];
  const references = [NEUTRAL, ...sources.flatMap(({ back }) => back)];
  const nothing = (trouble: Trouble): Flow => ({
    sources,
    loads,
    wires: new Map(),
    pairs: new Map(),
    gives: new Map(),
    takes: new Map(),
    trouble,
  });
  // Diodes first, by their own law; then each is a piece of wire, or is not there.
  const diodes = diodeElements(wiring);
  const probed =
    diodes.length > 0 ? operatingPoint({ elements: [...fixed, ...diodes], references }) : undefined;
  if (probed && !probed.ok) return nothing(probed.trouble);
  const open = diodes.filter(({ anode, cathode }) => (probed?.point.volts(anode, cathode) ?? -1) > 0);
  const made = LinearNetwork.of({
    elements: [
      ...fixed,
      ...open.map(
        ({ id, anode, cathode }): Element => ({
          kind: 'resistor',
          id,
          a: anode,
          b: cathode,
          ohms: CONTACT_OHMS,
        }),
      ),
    ],
    references,
  });
  if (!made.ok) return nothing(made.trouble);
  const { network } = made;
  const empty = network.flowing([]);
  const short = shortOf(wiring, sources, empty);
  if (short) return nothing(short);
  const across = new Map(
    loads.map((load) => [load.id, Math.abs(empty.volts(load.from, load.to) ?? 0)] as const),
  );
  const alive = loads.filter(({ id }) => across.get(id)! > 1e-3);
  // The way round the volts stand at a load, the current flows.
  const draw = (amps: ReadonlyMap<string, number>): readonly Drawn[] =>
    alive
      .filter(({ id }) => amps.has(id))
      .map(({ id, from, to }) =>
        (empty.volts(from, to) ?? 0) >= 0
          ? { from, to, amps: amps.get(id)! }
          : { from: to, to: from, amps: amps.get(id)! },
      );
  const amps = new Map<string, number>();
  for (const load of alive) if (load.amps !== undefined && load.amps > 0) amps.set(load.id, load.amps);
  let now = network.flowing(draw(amps));
  for (let round = 0; round < ROUNDS; round++) {
    const moved = follow(alive, amps, now);
    now = network.flowing(draw(amps));
    if (!moved) break;
  }
  const unknown = alive.filter((load) => load.amps === undefined && load.follows === undefined);
  const elements = fixed.map(({ id }) => id);
  const needs = traceUnknown(unknown, alive, elements, (each) => network.flowing(draw(each), false));
  const current = (element: string): Current => ({
    amps: quiet(Math.abs(now.amps(element))),
    needs: needs.get(element) ?? [],
  });
  const wires = new Map([...wiring.wires.keys()].map((id) => [id, current(wireElement(id))] as const));
  const pairs = new Map<string, Current>();
  for (const terminal of wiring.terminals.values())
    if (
      terminal.with !== null &&
      (terminal.nature.kind === 'protection' || terminal.nature.kind === 'contact')
    )
      pairs.set(terminal.id, current(pairElement(terminal.id, terminal.with)));
  const gives = new Map(
    sources.map((source) => {
      const each = source.live.map((live) => current(sourceElement(live)));
      const all = each.map((one) => one.amps);
      // Of the mains the heaviest line counts; other sources give through all their terminals together.
      const total = source.kind === 'mains' ? Math.max(0, ...all) : all.reduce((a, b) => a + b, 0);
      return [source.id, { amps: total, needs: [...new Set(each.flatMap((one) => one.needs))] }] as const;
    }),
  );
  const [fed, unsaid] = [new Set(alive), new Set(unknown)];
  const takes = new Map(
    loads.map((load) => [
      load.id,
      {
        amps: fed.has(load) ? (amps.get(load.id) ?? 0) : 0,
        needs: unsaid.has(load) ? [load.needs] : [],
        volts: Math.abs(now.volts(load.from, load.to) ?? 0),
        fed: fed.has(load),
      },
    ]),
  );
  return { sources, loads, wires, pairs, gives, takes };
}

const loadElement = (load: Load): string => `load ${load.id}`;

/** More than this with no load on is a short circuit, or supplies of different volts joined. */
const SHORT_AMPS = 1;

function shortOf(wiring: ReadWiring, sources: readonly Source[], empty: Flowing): Trouble | undefined {
  const hot = sources
    .map((source) => ({
      source,
      amps: Math.max(0, ...source.live.map((live) => Math.abs(empty.amps(sourceElement(live))))),
    }))
    .filter(({ amps }) => amps > SHORT_AMPS);
  if (hot.length === 0) return undefined;
  const most = Math.max(...hot.map(({ amps }) => amps));
  const wires = [...wiring.wires.keys()].filter((id) => Math.abs(empty.amps(wireElement(id))) > most / 2);
  const devices = [...new Set(hot.map(({ source }) => source.device))];
  return {
    kind: 'source-loop',
    nodes: hot.flatMap(({ source }) => source.live),
    elements: devices,
    sentence: `With nothing on, ${andList(devices)} ${devices.length === 1 ? 'is short-circuited' : 'drive current through each other, or are short-circuited'}${wires.length > 0 ? ` by way of ${andList(wires.slice(0, 6).map((id) => `wire ${id}`))}${wires.length > 6 ? ' and others' : ''}` : ''}.`,
  };
}

/** Loads that take what a source gives; true while any of them still moves. */
function follow(loads: readonly Load[], amps: Map<string, number>, now: Flowing): boolean {
  let moved = false;
  for (const load of loads) {
    if (!load.follows) continue;
    const { source, factor } = load.follows;
    const given = source.live.reduce((sum, live) => sum + Math.abs(now.amps(sourceElement(live))), 0);
    const next = given * factor(Math.max(1e-3, Math.abs(now.volts(load.from, load.to) ?? 0)));
    if (Math.abs(next - (amps.get(load.id) ?? 0)) > 1e-5 * Math.max(1e-3, next)) moved = true;
    if (next > 1e-6) amps.set(load.id, next);
  }
  return moved;
}

/** What the probes of loads that take nothing draw is no current. */
const quiet = (amps: number): number => (amps < 2e-4 ? 0 : amps);

/** Elements that carry the current of a load nobody has said, by element. */
function traceUnknown(
  unknown: readonly Load[],
  loads: readonly Load[],
  elements: readonly string[],
  respond: (amps: ReadonlyMap<string, number>) => Flowing,
): ReadonlyMap<string, readonly string[]> {
  const needs = new Map<string, string[]>();
  const batches: readonly (readonly Load[])[] =
    unknown.length <= MOST_TRACED ? unknown.map((load) => [load]) : [unknown];
  for (const batch of batches) {
    const amps = new Map(batch.map(({ id }) => [id, 1] as const));
    let response = respond(amps);
    // What follows from this load's source carries it on: each round wakes the next loads up the tree.
    for (let round = 0; round < ROUNDS; round++) {
      const before = amps.size;
      for (const load of loads)
        if (load.follows?.source.live.some((live) => Math.abs(response.amps(sourceElement(live))) > 1e-2))
          amps.set(load.id, 1);
      if (amps.size === before) break;
      response = respond(amps);
    }
    for (const id of elements)
      if (Math.abs(response.amps(id)) > 1e-2)
        needs.set(id, [...new Set([...(needs.get(id) ?? []), ...batch.map((load) => load.needs)])]);
  }
  return needs;
}
