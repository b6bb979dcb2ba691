/**
 * The circuit as water: from plus at the top, through contacts, to minus at the bottom. Every net is a pool at a height of
 * its own, every contact or coil a stream that falls from one pool to another, so that nothing lies on anything else.
 */
import { domains } from './domains.ts';
import type { Model } from './model.ts';
import { networkOf } from './network.ts';
import { pulls, type Simulation } from './simulate.ts';
import type { State } from './state.ts';

export interface Stream {
  readonly id: string;
  readonly element: string;
  readonly kind: 'contact' | 'fuse' | 'coil' | 'unit';
  /** Position in the model: a contact, or a mover; −1 for the inside of a unit. */
  readonly at: number;
  /** Nets. */
  readonly from: number;
  readonly to: number;
  /** Column, and rows of its two ends; the top one is smaller. */
  readonly column: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Pool {
  readonly net: number;
  readonly row: number;
  readonly left: number;
  readonly right: number;
  readonly kind: 'plus' | 'minus' | 'between';
}

/** One supply's part of the picture. */
export interface Flow {
  readonly supply: string;
  readonly columns: number;
  readonly rows: number;
  readonly pools: readonly Pool[];
  readonly streams: readonly Stream[];
}

type Loose = Omit<Stream, 'column' | 'top' | 'bottom'>;

export function pictureOf(model: Model): readonly Flow[] {
  const { net } = networkOf(model);
  const domain = new Map([...domains(model)].map((supply, node) => [net[node]!, supply]));
  return model.sources.map((source, at) => {
    const minus = net[source.minus]!;
    const minuses = new Set(model.sources.map((each) => net[each.minus]!));
    const own = (each: number): boolean => domain.get(each) === at && !minuses.has(each);
    const ends = (each: number): boolean => own(each) || each === minus;
    const loose = streamsOf(model, net).filter(
      ({ from, to }) => from !== to && ends(from) && ends(to) && (own(from) || own(to)),
    );
    return layOut(source.element, loose, net[source.plus]!, minus);
  });
}

function streamsOf(model: Model, net: Int32Array): readonly Loose[] {
  const wired = new Set(model.wires.flatMap(({ a, b }) => [a, b]));
  const loose: Loose[] = [];
  for (const [at, { id, element, a, b, fuse }] of model.contacts.entries())
    if (wired.has(a) && wired.has(b))
      loose.push({ id, element, kind: fuse ? 'fuse' : 'contact', at, from: net[a]!, to: net[b]! });
  for (const [at, { id, element, a, b }] of model.movers.entries())
    if (a >= 0 && wired.has(a)) loose.push({ id, element, kind: 'coil', at, from: net[a]!, to: net[b]! });
  for (const { element, supply, fed, back, loop, crossFault } of model.safety) {
    const { a, b } = model.movers[supply]!;
    const inside = (id: string, from: number, to: number) =>
      loose.push({ id: `${element} ${id}`, element, kind: 'unit', at: -1, from: net[from]!, to: net[to]! });
    if (crossFault) for (const [n, node] of fed.entries()) inside(`sends ${n + 1}`, a, node);
    for (const [n, node] of back.entries()) inside(`reads ${n + 1}`, node, b);
    inside('start', loop, b);
  }
  return loose;
}

function layOut(supply: string, loose: readonly Loose[], plus: number, minus: number): Flow {
  const rank = new Map<number, number>([[plus, 0]]);
  for (let queue = [plus]; queue.length > 0; ) {
    const now = queue.shift()!;
    if (now === minus) continue;
    for (const { from, to } of loose)
      for (const [a, b] of [
        [from, to],
        [to, from],
      ] as const)
        if (a === now && !rank.has(b)) {
          rank.set(b, rank.get(now)! + 1);
          queue = [...queue, b];
        }
  }
  for (const { from, to } of loose)
    for (const each of [from, to]) if (!rank.has(each)) rank.set(each, rank.size);
  rank.set(minus, Number.POSITIVE_INFINITY);
  const nets = [...rank].sort((a, b) => a[1] - b[1]).map(([each]) => each);
  const row = new Map(nets.map((each, at) => [each, at]));
  const placed: Stream[] = [];
  // Lowest row that is taken, for each column.
  const taken: number[] = [];
  const sorted = loose
    .map((each) => {
      const [a, b] = [row.get(each.from)!, row.get(each.to)!];
      return { ...each, top: Math.min(a, b), bottom: Math.max(a, b) };
    })
    .sort((a, b) => a.top - b.top || a.bottom - b.bottom);
  for (const stream of sorted) {
    const above = placed.find(({ bottom, column }) => bottom === stream.top && taken[column] === bottom);
    let column = above?.column ?? taken.findIndex((lowest) => lowest <= stream.top);
    if (column < 0) column = taken.length;
    taken[column] = stream.bottom;
    placed.push({ ...stream, column });
  }
  const pools = nets.map((each): Pool => {
    const columns = placed.filter(({ from, to }) => from === each || to === each).map(({ column }) => column);
    const whole = each === plus || each === minus;
    return {
      net: each,
      row: row.get(each)!,
      left: whole ? 0 : Math.min(...columns),
      right: whole ? Math.max(0, taken.length - 1) : Math.max(...columns),
      kind: each === plus ? 'plus' : each === minus ? 'minus' : 'between',
    };
  });
  return { supply, columns: taken.length, rows: nets.length, pools, streams: placed };
}

/** How each stream stands: 'open', 'closed' without anything in it, 'fed' from plus, or 'flows' through to minus. */
export type Standing = 'open' | 'closed' | 'fed' | 'flows';

export function standingsOf(flow: Flow, simulation: Simulation, state: State): ReadonlyMap<Stream, Standing> {
  const { network } = simulation;
  const { model, net } = network;
  const mask = simulation.potentials(state);
  const pluses = model.sources.reduce((bits, _, at) => bits | (1 << (2 * at)), 0);
  // Faults may join nets that the picture draws apart: the picture's nets are looked up through one of their terminals.
  const healthy = networkOf(model).net;
  const nodeOf = new Map<number, number>();
  for (const [node, each] of healthy.entries()) if (!nodeOf.has(each)) nodeOf.set(each, node);
  const potential = (each: number): number => mask[net[nodeOf.get(each)!]!]!;
  const closed = (stream: Stream): boolean => {
    if (stream.kind === 'contact' || stream.kind === 'fuse') return simulation.closed(state, stream.at);
    if (stream.kind === 'coil') {
      const { a, b } = model.movers[stream.at]!;
      return pulls(mask[net[a]!]!, mask[net[b]!]!, pluses);
    }
    return potential(stream.from) !== 0 && state.power === 1;
  };
  const standings = new Map<Stream, Standing>();
  for (const stream of flow.streams) {
    const isClosed = closed(stream);
    // Contacts on the minus side carry current as well.
    standings.set(stream, !isClosed ? 'open' : potential(stream.from) !== 0 ? 'flows' : 'closed');
  }
  prune(flow, standings, ({ from }) => (potential(from) & pluses) !== 0);
  return standings;
}

/** What ends blind carries no current: taken back to 'fed', from its end on. */
function prune(flow: Flow, standings: Map<Stream, Standing>, isFed: (stream: Stream) => boolean): void {
  const ends = new Set(flow.pools.filter(({ kind }) => kind !== 'between').map(({ net }) => net));
  for (let changed = true; changed; ) {
    changed = false;
    for (const [stream, standing] of standings) {
      if (standing !== 'flows') continue;
      for (const end of [stream.from, stream.to]) {
        if (ends.has(end)) continue;
        const others = flow.streams.some(
          (other) =>
            other !== stream && standings.get(other) === 'flows' && (other.from === end || other.to === end),
        );
        if (!others) {
          standings.set(stream, isFed(stream) ? 'fed' : 'closed');
          changed = true;
          break;
        }
      }
    }
  }
}
