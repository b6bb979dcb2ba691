/** A wiring under power, as the solver reads it. Nodes are nets. */
import {
  type Element,
  nearPoint,
  nodesOf,
  operatingPoint,
  type Point,
  type Trouble,
  type Volts,
} from '../network/index.ts';
import { pairsOf } from '../power/conductors.ts';
import { NEUTRAL, phaseSign, type Source, sourcesOf } from '../power/sources.ts';
import type { Contact, Load, Output, ReadWiring, Terminal } from '../wiring/types.ts';
import { fixedElements, METAL, nodeIn, ohm } from './live-fixed.ts';

/** What is on. */
export interface Switched {
  /** The mains at the inlet. */
  readonly mains: boolean;
  /** Ids of outputs that are on. */
  readonly outputs: ReadonlySet<string>;
  /** Ids of devices whose own logic has closed its contacts: safety relays, drives that are ready. */
  readonly logic: ReadonlySet<string>;
}

export interface LiveState {
  readonly low: Volts;
  readonly high: Volts;
  /** Devices whose coil has pulled in. */
  readonly pulled: ReadonlySet<string>;
  /** Sources that give. */
  readonly giving: ReadonlySet<string>;
  /** What was solved on the way: round by round with all sources at their highest, then at their lowest. */
  readonly rounds: readonly Round[];
  readonly lowest: Round;
}

interface Round {
  readonly volts: Volts;
  /** Absent where only what changes was worked out. */
  readonly whole?: Point;
  /** Elements that depend on what is on. */
  readonly switched: ReadonlySet<Element>;
}

/** How far the mains may stray, and a supply that does not say: IEC 60038 (recalled); common practice. */
const MAINS_STRAY = 0.1;
const SUPPLY_STRAY = 0.05;
/** Share of its rated voltage at which a coil surely pulls in: IEC 60947-4-1 (recalled: 85 %). */
const PULLS = 0.85;
const ON_OHMS = 1;
/** Rounds until coils and contacts rest; more means that they chatter. */
const ROUNDS = 12;
/** More changes than this are solved as a whole. */
const MOST_CHANGED = 40;

interface Build {
  readonly wiring: ReadWiring;
  readonly sources: readonly Source[];
  readonly fixed: readonly Element[];
  readonly references: readonly string[];
  /** Gives the very same object for equal elements, so that a piece nothing touched is known again. */
  readonly same: (element: Element) => Element;
  readonly contacts: Pairs;
  readonly coils: Pairs;
  readonly outputs: readonly Terminal[];
}

type Pairs = ReturnType<typeof pairsOf>;

/** All that does not depend on what is on. */
export function liveWiring(wiring: ReadWiring): Build {
  const sources = sourcesOf(wiring);
  const node = nodeIn(wiring);
  const fixed = fixedElements(wiring);
  const seen = new Map<string, Element>();
  return {
    wiring,
    sources,
    same: (element) => {
      const [a, b] = nodesOf(element);
      const value =
        element.kind === 'voltage' ? element.volts : element.kind === 'resistor' ? element.ohms : '';
      const key = `${element.id}\n${a}\n${b}\n${value}`;
      const found = seen.get(key) ?? element;
      seen.set(key, found);
      return found;
    },
    fixed,
    contacts: contactsThatMatter(wiring, fixed),
    coils: pairsOf(wiring, ({ nature }) => nature.kind === 'load' && nature.what === 'coil'),
    outputs: [...wiring.terminals.values()].filter(
      ({ nature }) => nature.kind === 'output' || nature.kind === 'analogue-output',
    ),
    references: [
      ...new Set([
        NEUTRAL,
        ...[...wiring.terminals.values()]
          .filter(({ nature }) => nature.kind === 'earth' && nature.role === 'source')
          .map(({ id }) => node(id)),
        ...sources.flatMap(({ back }) => back.slice(0, 1).map(node)),
      ]),
    ],
  };
}

/** Contacts but those that end on a spare terminal: nothing flows there, and no lead goes there. */
function contactsThatMatter(wiring: ReadWiring, fixed: readonly Element[]): Pairs {
  const node = nodeIn(wiring);
  const pairs = pairsOf(wiring, ({ nature }) => nature.kind === 'contact');
  const times = new Map<string, number>();
  for (const at of [...fixed.flatMap(nodesOf), ...pairs.flatMap((pair) => pair.map(({ id }) => node(id)))])
    times.set(at, (times.get(at) ?? 0) + 1);
  const spare = ({ id }: Terminal): boolean => {
    const net = wiring.netOf.get(id);
    return (
      times.get(node(id)) === 1 &&
      (net === undefined ||
        (net.wires.length === 0 &&
          net.terminals.every((each) => wiring.terminals.get(each)?.nature.kind === 'contact')))
    );
  };
  return pairs.filter((pair) => !pair.some(spare));
}

/** Ends of contacts as they stand. */
function contactElements(
  { wiring, contacts }: Build,
  state: Switched,
  pulled: ReadonlySet<string>,
): readonly Element[] {
  const node = nodeIn(wiring);
  return contacts.flatMap(([one, other]): readonly Element[] => {
    const contact = one.nature as Contact;
    const moved =
      contact.moved === 'coil'
        ? pulled.has(one.device)
        : contact.moved === 'logic'
          ? state.logic.has(one.device)
          : false;
    const closed = moved === (contact.closes === 'when-on');
    const [a, b] = [node(one.id), node(other.id)];
    return closed && a !== b ? [ohm(`contact ${one.id}`, a, b, METAL)] : [];
  });
}

function sourceElements(
  { wiring, sources }: Build,
  giving: ReadonlySet<string>,
  share: -1 | 1,
): readonly Element[] {
  const node = nodeIn(wiring);
  const made: Element[] = [];
  for (const source of sources) {
    if (source.kind === 'mains')
      for (const back of source.back)
        if (node(back) !== NEUTRAL) made.push(ohm(`neutral ${back}`, node(back), NEUTRAL, METAL));
    if (!giving.has(source.id) || source.volts === undefined) continue;
    const nature = wiring.terminals.get(source.live[0]!)?.nature;
    const tolerance = nature?.kind === 'supply' ? nature.tolerance : undefined;
    // What is made from the mains without regulation strays with them.
    const stray = tolerance ?? (source.ac || !source.limits ? MAINS_STRAY : SUPPLY_STRAY);
    const minus = source.kind === 'mains' ? NEUTRAL : node(source.back[0] ?? '');
    for (const live of source.live)
      if (node(live) !== minus && minus !== '')
        made.push({
          kind: 'voltage',
          id: `gives ${live}`,
          plus: node(live),
          minus,
          volts: source.volts * (1 + share * stray) * phaseSign(source, live),
          ohms: 0.02,
        });
  }
  return made;
}

function outputElements(
  { wiring, outputs }: Build,
  state: Switched,
  point: Volts | undefined,
  share: -1 | 1,
): readonly Element[] {
  const node = nodeIn(wiring);
  const made: Element[] = [];
  for (const terminal of outputs) {
    const { nature } = terminal;
    if (
      nature.kind === 'analogue-output' &&
      terminal.common !== null &&
      node(terminal.common) !== node(terminal.id)
    )
      made.push({
        kind: 'voltage',
        id: `analogue ${terminal.id}`,
        plus: node(terminal.id),
        minus: node(terminal.common),
        volts: 0,
        ohms: 50,
      });
    if (nature.kind !== 'output') continue;
    const end = endOf(wiring, terminal, nature);
    if (!end || node(end) === node(terminal.id)) continue;
    const on = state.outputs.has(terminal.id);
    const [a, b] = [node(terminal.id), node(end)];
    if (nature.stage === 'push-pull') {
      // Driven either way from inside, as long as its device has power.
      if (point && !isFed(wiring, terminal.device, point)) continue;
      // Between what is promised and what it can reach.
      const volts = on ? (share < 0 ? (nature.high ?? nature.top) : (nature.top ?? nature.high)) : 0;
      if (volts !== undefined)
        made.push({ kind: 'voltage', id: `drives ${terminal.id}`, plus: a, minus: b, volts, ohms: 50 });
    } else if (on) made.push(ohm(`on ${terminal.id}`, a, b, ON_OHMS));
    else if (nature.leaks !== undefined && nature.leaks > 0)
      made.push(ohm(`leaks ${terminal.id}`, a, b, 24 / nature.leaks));
  }
  return made;
}

/** Where an output switches to: plus, minus, or the common it is driven against. */
function endOf(wiring: ReadWiring, terminal: Terminal, output: Output): string | undefined {
  const pole = (which: 'plus' | 'minus'): string | undefined => {
    const own = (wiring.devices.get(terminal.device)?.terminals ?? []).filter((id) => {
      const { nature } = wiring.terminals.get(id)!;
      return (nature.kind === 'feed' || nature.kind === 'supply') && nature.pole === which;
    });
    return own.find((id) => wiring.terminals.get(id)!.group === terminal.group) ?? own[0];
  };
  return output.stage === 'sourcing' ? pole('plus') : (terminal.common ?? pole('minus'));
}

/** Whether a device has at least half of some voltage at its feed, or is fed in no way that is drawn. */
function isFed(wiring: ReadWiring, id: string, point: Volts): boolean {
  const node = nodeIn(wiring);
  const terminals = (wiring.devices.get(id)?.terminals ?? []).map((each) => wiring.terminals.get(each)!);
  const feeds = terminals.filter(({ nature }) => nature.kind === 'feed' && nature.pole === 'plus');
  if (feeds.length > 0)
    return feeds.some((plus) => {
      const minus = plus.with ?? plus.common;
      return minus !== null && Math.abs(point.volts(node(plus.id), node(minus)) ?? 0) > 3;
    });
  const mains = terminals.filter(({ nature }) => nature.kind === 'mains' && nature.side === 'takes');
  if (mains.length < 2) return mains.length === 0;
  return (
    Math.abs(point.volts(node(mains[0]!.id), node(mains[1]!.id)) ?? 0) > 30 ||
    Math.abs(point.volts(node(mains[0]!.id)) ?? 0) > 30
  );
}

/** Which sources give, by what feeds them. */
function givingNow(
  { wiring, sources }: Build,
  state: Switched,
  point: Volts | undefined,
): ReadonlySet<string> {
  const node = nodeIn(wiring);
  const giving = new Set<string>();
  for (const source of sources) {
    if (source.kind === 'mains') {
      if (state.mains) giving.add(source.id);
      continue;
    }
    if (!point) continue;
    const terminals = (wiring.devices.get(source.device)?.terminals ?? []).map(
      (id) => wiring.terminals.get(id)!,
    );
    const fedBy = terminals.filter(
      ({ nature }) =>
        (nature.kind === 'winding' && nature.side === 'primary') ||
        (nature.kind === 'rectifier' && nature.leg === 'ac'),
    );
    const fed =
      fedBy.length >= 2
        ? Math.abs(point.volts(node(fedBy[0]!.id), node(fedBy[1]!.id)) ?? 0) > 5
        : isFed(wiring, source.device, point);
    if (fed) giving.add(source.id);
  }
  return giving;
}

function pulledNow({ wiring, coils }: Build, point: Volts): ReadonlySet<string> {
  const node = nodeIn(wiring);
  const pulled = new Set<string>();
  for (const [one, other] of coils) {
    const rated = (one.nature as Load).volts ?? 24;
    if (Math.abs(point.volts(node(one.id), node(other.id)) ?? 0) >= PULLS * rated) pulled.add(one.device);
  }
  return pulled;
}

const alike = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
  a.size === b.size && [...a].every((each) => b.has(each));

/** One solving: near a round of a state before where little has changed, else the whole. */
function solveRound(
  build: Build,
  switched: ReadonlySet<Element>,
  near: Round | undefined,
  previous: Point | undefined,
): Round | Trouble {
  if (near?.whole) {
    const added = [...switched].filter((each) => !near.switched.has(each));
    const removed = [...near.switched].filter((each) => !switched.has(each));
    const volts =
      added.length + removed.length > MOST_CHANGED ? undefined : nearPoint(near.whole, added, removed);
    if (volts) return { volts, switched };
  }
  const solved = operatingPoint(
    { elements: [...build.fixed, ...switched], references: build.references },
    previous ? { previous } : {},
  );
  return solved.ok ? { volts: solved.point, whole: solved.point, switched } : solved.trouble;
}

/**
 * Volts everywhere in a state, once coils, contacts and supplies rest, with all sources at their lowest and highest.
 *
 * @param before a state of the same wiring: only what differs from it is worked out
 */
export function liveState(build: Build, state: Switched, before?: LiveState): LiveState | Trouble {
  let pulled: ReadonlySet<string> = new Set();
  let giving: ReadonlySet<string> = givingNow(build, state, undefined);
  let point: Volts | undefined = before?.high;
  let whole: Point | undefined = before?.rounds.at(-1)?.whole;
  const rounds: Round[] = [];
  const switched = (share: -1 | 1): ReadonlySet<Element> =>
    new Set(
      [
        ...contactElements(build, state, pulled),
        ...sourceElements(build, giving, share),
        ...outputElements(build, state, giving.size > 0 ? point : undefined, share),
      ].map(build.same),
    );
  for (let round = 0; ; round++) {
    const near = before?.rounds[Math.min(round, before.rounds.length - 1)];
    const solved = solveRound(build, switched(1), near, whole);
    if ('sentence' in solved) return solved;
    rounds.push(solved);
    point = solved.volts;
    whole = solved.whole ?? whole;
    const [nextPulled, nextGiving] = [pulledNow(build, point), givingNow(build, state, point)];
    const rests = round > 0 && alike(nextPulled, pulled) && alike(nextGiving, giving);
    if (rests) break;
    if (round >= ROUNDS)
      return {
        kind: 'too-long',
        nodes: [],
        elements: [...nextPulled],
        sentence: `Coils and contacts do not come to rest: ${[...new Set([...nextPulled, ...pulled])].filter((id) => nextPulled.has(id) !== pulled.has(id)).join(', ') || 'a supply'} goes on and off by itself.`,
      };
    pulled = nextPulled;
    giving = nextGiving;
  }
  const lowest = solveRound(build, switched(-1), before?.lowest, before?.lowest.whole);
  if ('sentence' in lowest) return lowest;
  return { low: lowest.volts, high: point, pulled, giving, rounds, lowest };
}
