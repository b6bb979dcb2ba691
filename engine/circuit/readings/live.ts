/** A wiring under power, as the solver reads it. Nodes are nets. */
import { type Element, nodesOf, operatingPoint, type Point, type Trouble } from '../network/index.ts';
import { MeshOrder } from '../network/mesh-order.ts';
import { SteadyMesh } from '../network/steady-mesh.ts';
import { NEUTRAL, type Source, sourcesOf } from '../power/sources.ts';
import type { ReadWiring } from '../wiring/types.ts';
import { fixedElements, nodeIn } from './live-fixed.ts';
import { SwitchedParts } from './live-switched.ts';
import type { LiveState, Reading, Round, Share, Situation, Switched } from './live-types.ts';
import { Watch } from './live-watch.ts';

/** Rounds until coils and contacts rest; more means that they chatter. */
const ROUNDS = 12;

export interface LiveWiring {
  readonly sources: readonly Source[];
  readonly fixed: readonly Element[];
  readonly parts: SwitchedParts;
  readonly watch: Watch;
  readonly order: MeshOrder;
  readonly references: readonly string[];
}

/** All that does not depend on what is on. */
export function liveWiring(wiring: ReadWiring): LiveWiring {
  const sources = sourcesOf(wiring);
  const node = nodeIn(wiring);
  const fixed = fixedElements(wiring);
  const parts = new SwitchedParts(wiring, sources, fixed);
  const order = new MeshOrder([...fixed, ...parts.all()].map((e) => nodesOf(e) as [string, string]));
  return {
    sources,
    fixed,
    parts,
    watch: new Watch(wiring, sources, parts.fed, order),
    order,
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

const alike = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
  a.size === b.size && [...a].every((each) => b.has(each));

/** One solving: near a round of a state before where that can be, else the whole. */
function solveRound(
  live: LiveWiring,
  situation: Situation,
  share: Share,
  near: Round | undefined,
  previous: Point | undefined,
): Round | Trouble {
  if (near?.mesh) {
    const { added, removed } = live.parts.difference(near.situation, situation, share);
    const reading = near.mesh.near(added, removed);
    if (reading) return { situation, share, reading };
  }
  const solved = operatingPoint(
    { elements: [...live.fixed, ...live.parts.elements(situation, share)], references: live.references },
    previous ? { previous } : {},
  );
  if (!solved.ok) return solved.trouble;
  return { situation, share, reading: readingOf(live, solved.point), whole: solved.point };
}

function readingOf({ order: { names } }: LiveWiring, point: Point): Reading {
  return {
    level: (a, against) =>
      a < 0 || (against ?? 0) < 0
        ? undefined
        : point.volts(names[a]!, against === undefined ? undefined : names[against]),
    together: (a, b) =>
      a >= 0 &&
      b >= 0 &&
      point.pieceOf(names[a]!) !== undefined &&
      point.pieceOf(names[a]!) === point.pieceOf(names[b]!),
  };
}

/**
 * Volts everywhere in a state, once coils, contacts and supplies rest, with all sources at their lowest and highest.
 *
 * @param before a state of the same wiring, made ready by `asBase`: only what differs from it is worked out. What is
 *   read of the answer is good until the next state is worked out from the same
 */
export function liveState(live: LiveWiring, state: Switched, before?: LiveState): LiveState | Trouble {
  const none: ReadonlySet<string> = new Set();
  let situation: Situation = {
    ...state,
    pulled: none,
    giving: live.watch.giving(state.mains, undefined),
    unfed: none,
  };
  let whole: Point | undefined = before?.rounds.at(-1)?.whole;
  const rounds: Round[] = [];
  for (let round = 0; ; round++) {
    const near = before?.rounds[Math.min(round, before.rounds.length - 1)];
    const solved = solveRound(live, situation, 1, near, whole);
    if ('sentence' in solved) return solved;
    rounds.push(solved);
    whole = solved.whole ?? whole;
    const { reading } = solved;
    const [pulled, giving] = [live.watch.pulled(reading), live.watch.giving(state.mains, reading)];
    if (round > 0 && alike(pulled, situation.pulled) && alike(giving, situation.giving)) break;
    if (round >= ROUNDS) {
      const flips = [...new Set([...pulled, ...situation.pulled])].filter(
        (id) => pulled.has(id) !== situation.pulled.has(id),
      );
      return {
        kind: 'too-long',
        nodes: [],
        elements: [...pulled],
        sentence: `Coils and contacts do not come to rest: ${flips.join(', ') || 'a supply'} goes on and off by itself.`,
      };
    }
    // Before any source gives, outputs are taken as driven.
    situation = { ...state, pulled, giving, unfed: giving.size > 0 ? live.watch.unfed(reading) : none };
  }
  const unfed = situation.giving.size > 0 ? live.watch.unfed(rounds.at(-1)!.reading) : none;
  const lowest = solveRound(live, { ...situation, unfed }, -1, before?.lowest, before?.lowest.whole);
  if ('sentence' in lowest) return lowest;
  const { pulled, giving } = situation;
  return { low: lowest.reading, high: rounds.at(-1)!.reading, pulled, giving, rounds, lowest };
}

/** The same state, ready for others to be worked out from it. */
export function asBase(live: LiveWiring, state: LiveState): LiveState {
  const ready = (round: Round): Round => {
    const { situation, share, whole } = round;
    if (!whole) return round;
    const elements = [...live.fixed, ...live.parts.elements(situation, share)];
    const mesh = SteadyMesh.at(live.order, elements, live.references, whole);
    return mesh ? { ...round, mesh, reading: mesh.levels } : round;
  };
  const rounds = state.rounds.map(ready);
  const lowest = ready(state.lowest);
  return { ...state, rounds, lowest, high: rounds.at(-1)!.reading, low: lowest.reading };
}
