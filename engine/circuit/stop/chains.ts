/**
 * The circuit as chains: for everything that moves what keeps it driven, from the supply through its contacts to the drive, and
 * for everything that those contacts follow what keeps it pulled in.
 */
import { andList } from '../../quantity/words.ts';
import type { Model } from './model.ts';
import { networkOf } from './network.ts';
import { pulls, type Simulation } from './simulate.ts';
import type { State } from './state.ts';
import { contactsOf, type Edge, gapsOf, isJoined, type Way, waysBetween } from './way.ts';

/** One way of current there and back. */
export interface Feed {
  /** 'power', 'enable', 'channel 1', 'start'; '' for a coil. */
  readonly name: string;
  /** The input or coil that it feeds; −1 for a channel or the start loop of a safety relay. */
  readonly mover: number;
  /** The supply, or the unit that sends its own signal. */
  readonly from: string;
  /** From the plus, or the sending end; undefined where no contact could ever join them. */
  readonly out: Way | undefined;
  /** From it back to minus; undefined likewise. */
  readonly back: Way | undefined;
  /** The ends whose meeting makes current flow. */
  readonly ends: readonly [a: number, b: number];
}

/** Something that contacts follow, with all that keeps it as it is while the machine runs. */
export interface Held {
  readonly mover: number;
  /** 'K1', 'U1 late' */
  readonly id: string;
  readonly element: string;
  readonly feeds: readonly Feed[];
}

export interface Chains {
  /** In the order of the model's motions. */
  readonly motions: readonly { readonly motion: number; readonly feeds: readonly Feed[] }[];
  /** Each once: first what stands in the way of power, then what that hangs on. */
  readonly held: readonly Held[];
}

export function chainsOf(model: Model): Chains {
  const finder = new Finder(model);
  const motions = model.motions.map(({ drive }, motion) => {
    const { powers, enable, sto } = model.drives[drive]!;
    const feeds = [
      ...powers.map((each, n) =>
        finder.feed(
          each,
          powers.length === 1 ? 'power' : `power, phases ${['1 and 2', '2 and 3', '3 and 1'][n]}`,
        ),
      ),
      ...(enable < 0 ? [] : [finder.feed(enable, 'enable')]),
      ...sto.map((each, n) =>
        finder.feed(each, sto.length === 1 ? 'safe torque off' : `safe torque off ${n + 1}`),
      ),
    ];
    return { motion, feeds };
  });
  const held = new Map<number, Held>();
  const queue = [
    ...motions.flatMap(({ feeds }) => feeds.flatMap((each) => followed(model, each))),
    ...model.motions.flatMap(({ brake }) => (brake < 0 ? [] : [brake])),
    ...model.locks.map(({ lock }) => lock),
  ];
  for (let mover = queue.shift(); mover !== undefined; mover = queue.shift()) {
    const { id, element, kind } = model.movers[mover]!;
    if (held.has(mover) || kind === 'hand') continue;
    const feeds = finder.feedsOf(mover);
    held.set(mover, { mover, id, element, feeds });
    queue.push(...feeds.flatMap((each) => followed(model, each)));
  }
  return { motions, held: [...held.values()].filter(({ feeds }) => feeds.length > 0) };
}

/** Movers that the contacts of a feed follow. */
const followed = ({ contacts }: Model, { out, back }: Feed): readonly number[] =>
  [out, back]
    .flatMap((way) => (way ? contactsOf(way) : []))
    .map((at) => contacts[at]!.mover)
    .filter((mover) => mover >= 0);

class Finder {
  readonly #model: Model;
  readonly #net: Int32Array;
  readonly #edges: readonly Edge[];
  /** Nets that no way passes: plus and minus of every supply. */
  readonly #poles: ReadonlySet<number>;

  constructor(model: Model) {
    this.#model = model;
    this.#net = networkOf(model).net;
    const net = (node: number): number => this.#net[node]!;
    this.#edges = model.contacts
      .map(({ a, b }, contact) => ({ contact, a: net(a), b: net(b) }))
      .filter(({ a, b }) => a !== b);
    this.#poles = new Set(model.sources.flatMap(({ plus, minus }) => [net(plus), net(minus)]));
  }

  #between(a: number, b: number): Way | undefined {
    return waysBetween(this.#edges, this.#net[a]!, this.#net[b]!, this.#poles);
  }

  /** What feeds a coil or an input, from whichever supply can. */
  feed(mover: number, name: string): Feed {
    const { a, b } = this.#model.movers[mover]!;
    const ways = this.#model.sources.flatMap(({ element, plus, minus }) =>
      [
        [a, b],
        [b, a],
      ].map(([near, far]) => ({
        from: element,
        out: this.#between(plus, near!),
        back: this.#between(far!, minus),
      })),
    );
    const best = ways.find(({ out, back }) => out && back) ?? ways.find(({ out, back }) => out || back);
    return { name, mover, from: best?.from ?? '', out: best?.out, back: best?.back, ends: [a, b] };
  }

  /** What keeps something as it is. */
  feedsOf(mover: number): readonly Feed[] {
    const { kind } = this.#model.movers[mover]!;
    if (kind === 'coil' || kind === 'input') return [this.feed(mover, '')];
    const unit = this.#model.safety.find(({ outputs }) => outputs.includes(mover));
    if (unit) {
      const channels = unit.fed.map((fed, n): Feed => {
        const back = unit.back[n]!;
        const out = this.#between(fed, back);
        return {
          name: `channel ${n + 1}`,
          mover: -1,
          from: unit.element,
          out,
          back: { kind: 'row', pieces: [] },
          ends: [fed, back],
        };
      });
      const start: Feed = {
        name: 'to start it',
        mover: -1,
        from: unit.element,
        out: this.#between(unit.plus, unit.loop),
        back: { kind: 'row', pieces: [] },
        ends: [unit.plus, unit.loop],
      };
      return [this.feed(unit.supply, 'supply'), ...channels, start];
    }
    const control = this.#model.controls.find(({ enable }) => enable === mover);
    if (!control) return [];
    return [
      this.feed(control.supply, 'supply'),
      ...(control.stop < 0 ? [] : [this.feed(control.stop, 'stop input')]),
    ];
  }
}

/**
 * 'flows': current flows; 'open': contacts stand open in the way; 'dead': closed from end to end and yet nothing flows, because the
 * power is off or a wire has come off; 'astray': current comes although the way is open, by a fault.
 */
export type FeedStanding = 'flows' | 'open' | 'dead' | 'astray';

export interface FeedNow {
  readonly standing: FeedStanding;
  /** Contacts that stand open in the way, as positions. */
  readonly gaps: readonly number[];
}

export function feedNow({ out, back, mover, ends }: Feed, simulation: Simulation, state: State): FeedNow {
  const closed = (at: number): boolean => simulation.closed(state, at);
  const joined = out !== undefined && back !== undefined && isJoined(out, closed) && isJoined(back, closed);
  const gaps = [out, back].flatMap((way) => (way ? gapsOf(way, closed) : []));
  const { model, net } = simulation.network;
  const mask = simulation.potentials(state);
  const pluses = model.sources.reduce((bits, _, at) => bits | (1 << (2 * at)), 0);
  const [a, b] = ends.map((end) => mask[net[end]!]!) as [number, number];
  // A signal has arrived where its far end is on the same potentials as the near one.
  const comes = mover >= 0 ? pulls(a, b, pluses) : a !== 0 && (a & b) === a;
  return { standing: comes ? (joined ? 'flows' : 'astray') : joined ? 'dead' : 'open', gaps };
}

/** 'current flows', 'open at S1 11-12 and K3 13-14' */
export function sayFeed({ contacts }: Model, { standing, gaps }: FeedNow): string {
  const at = gaps.map((each) => contacts[each]!.id);
  switch (standing) {
    case 'flows':
      return 'current flows';
    case 'open':
      return at.length === 0 ? 'no contact joins it' : `open at ${andList(at)}`;
    case 'dead':
      return 'closed all the way, but no current comes';
    case 'astray':
      return 'current comes by another way than drawn: that is the fault';
  }
}
