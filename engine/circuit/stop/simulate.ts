/**
 * Switch by switch: contacts that are closed join nets, coils with plus on one side and minus on the other pull in after
 * their time, contacts follow, until nothing changes. A circuit that never rests is named, never waited for.
 */
import type { Network } from './network.ts';
import { MEMORY, type State } from './state.ts';

/** How often one mover may change while the circuit settles before it counts as never resting. */
const RESTLESS = 10;
/** Changes closer together than this happen at once, in seconds. */
const SAME_MOMENT = 1e-7;

export interface Settled {
  /** Movers that never came to rest. */
  readonly restless: readonly number[];
  /** Fuses that melted while settling, as contacts. */
  readonly melted: readonly number[];
  /** Supplies shorted without a fuse that clears it. */
  readonly shorted: readonly number[];
}

/** Told after each change; `potentials` are of the moment. */
export type Watch = (state: State, potentials: Int32Array) => void;

/** Runs one network; its buffers are used again from call to call. */
export class Simulation {
  readonly network: Network;
  readonly #parent: Int32Array;
  readonly #mask: Int32Array;
  readonly #changes: Uint16Array;
  /** What logic wants each of its movers to be. */
  readonly #wanted: Uint8Array;
  /** The plus of every supply. */
  readonly #pluses: number;
  #melted: number[] = [];
  #shorted: number[] = [];

  constructor(network: Network) {
    this.network = network;
    this.#parent = new Int32Array(network.nets);
    this.#mask = new Int32Array(network.nets);
    this.#changes = new Uint16Array(network.model.movers.length);
    this.#wanted = new Uint8Array(network.model.movers.length);
    this.#pluses = network.model.sources.reduce((bits, _, at) => bits | (1 << (2 * at)), 0);
  }

  /** Whether a contact is closed. */
  closed(state: State, contact: number): boolean {
    const { forced, model } = this.network;
    if (state.melted[contact] === 1) return false;
    const force = forced[contact]!;
    if (force !== 0) return force > 0;
    const { mover, closedAt } = model.contacts[contact]!;
    return mover < 0 || state.at[mover] === closedAt;
  }

  /** Which potentials each net is joined to: two bits a supply, plus first. */
  potentials(state: State): Int32Array {
    for (let round = 0; ; round++) {
      this.#join(state, -1);
      const short = this.#short(state);
      if (short < 0) return this.#mask;
      if (!this.#melt(state, short) || round > 40) {
        // All poles of a supply give up together.
        const { sources } = this.network.model;
        for (const [at, { element }] of sources.entries())
          if (element === sources[short]!.element) state.tripped[at] = 1;
        this.#shorted.push(short);
      }
    }
  }

  #join(state: State, without: number): void {
    const { model, net, lost } = this.network;
    const parent = this.#parent;
    const mask = this.#mask;
    for (let at = 0; at < parent.length; at++) parent[at] = at;
    mask.fill(0);
    const { contacts } = model;
    for (let at = 0; at < contacts.length; at++) {
      if (at === without || !this.closed(state, at)) continue;
      const a = this.#find(net[contacts[at]!.a]!);
      const b = this.#find(net[contacts[at]!.b]!);
      if (a !== b) parent[a] = b;
    }
    for (let at = 0; at < model.sources.length; at++) {
      if (state.power === 0 || lost[at] === 1 || state.tripped[at] === 1) continue;
      const { plus, minus } = model.sources[at]!;
      mask[this.#find(net[plus]!)]! |= 1 << (2 * at);
      mask[this.#find(net[minus]!)]! |= 2 << (2 * at);
    }
    for (const unit of model.safety) {
      if (!unit.crossFault) continue;
      const { a, b } = model.movers[unit.supply]!;
      if (!pulls(mask[this.#find(net[a]!)]!, mask[this.#find(net[b]!)]!, this.#pluses)) continue;
      for (let at = 0; at < unit.fed.length; at++) mask[this.#find(net[unit.fed[at]!]!)]! |= unit.bits[at]!;
    }
    for (let at = 0; at < mask.length; at++) mask[at] = mask[this.#find(at)]!;
  }

  #find(at: number): number {
    const parent = this.#parent;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  }

  #short(state: State): number {
    const { model, net } = this.network;
    for (let at = 0; at < model.sources.length; at++) {
      if (state.tripped[at] === 1) continue;
      const both = 3 << (2 * at);
      if ((this.#mask[net[model.sources[at]!.plus]!]! & both) === both) return at;
    }
    return -1;
  }

  /** Melts the fuse that clears the short. */
  #melt(state: State, source: number): boolean {
    const { model, net } = this.network;
    for (let at = 0; at < model.contacts.length; at++) {
      if (!model.contacts[at]!.fuse || state.melted[at] === 1) continue;
      this.#join(state, at);
      const both = 3 << (2 * source);
      if ((this.#mask[net[model.sources[source]!.plus]!]! & both) !== both) {
        state.melted[at] = 1;
        this.#melted.push(at);
        return true;
      }
    }
    return false;
  }

  /** Lets everything happen that follows from how things stand, at most `until` seconds from now. */
  settle(state: State, watch?: Watch, until = Number.POSITIVE_INFINITY): Settled {
    this.#changes.fill(0);
    this.#melted = [];
    this.#shorted = [];
    const restless = new Set<number>();
    const end = state.time + until;
    const { movers } = this.network.model;
    for (;;) {
      const next = this.#schedule(state);
      watch?.(state, this.#mask);
      if (next === Number.POSITIVE_INFINITY || next > end) break;
      state.time = next;
      for (let at = 0; at < movers.length; at++) {
        if (state.due[at]! > next + SAME_MOMENT) continue;
        state.due[at] = Number.POSITIVE_INFINITY;
        state.at[at] = state.at[at] === 1 ? 0 : 1;
        this.#changes[at]!++;
        if (this.#changes[at]! > RESTLESS) restless.add(at);
      }
      if (restless.size > 0) {
        // All that swing with it within one more round are named too.
        for (let at = 0; at < movers.length; at++) if (this.#changes[at]! > RESTLESS / 2) restless.add(at);
        break;
      }
    }
    if (until !== Number.POSITIVE_INFINITY) state.time = Math.max(state.time, end);
    return { restless: [...restless], melted: this.#melted, shorted: this.#shorted };
  }

  /** Brings every mover's next change up to date; the time of the first. */
  #schedule(state: State): number {
    const { model, net, stuck, pickUp, dropOut } = this.network;
    const mask = this.potentials(state);
    this.#think(state, mask);
    let next = Number.POSITIVE_INFINITY;
    for (let at = 0; at < model.movers.length; at++) {
      const { kind, a, b } = model.movers[at]!;
      if (kind === 'hand') continue;
      const held = stuck[at]!;
      const want =
        held >= 0
          ? held
          : kind === 'logic'
            ? this.#wanted[at]!
            : pulls(mask[net[a]!]!, mask[net[b]!]!, this.#pluses)
              ? 1
              : 0;
      if (want === state.at[at]) state.due[at] = Number.POSITIVE_INFINITY;
      else if (held >= 0) state.due[at] = state.time;
      else if (state.due[at] === Number.POSITIVE_INFINITY)
        state.due[at] = state.time + (want === 1 ? pickUp[at]! : dropOut[at]!);
      if (state.due[at]! < next) next = state.due[at]!;
    }
    return next;
  }

  #think(state: State, mask: Int32Array): void {
    const { model, net, stuck, unitWelded } = this.network;
    const on = (mover: number): boolean => (stuck[mover]! >= 0 ? stuck[mover] === 1 : state.at[mover] === 1);
    const reads = (mover: number): boolean => {
      if (stuck[mover]! >= 0) return stuck[mover] === 1;
      const { a, b } = model.movers[mover]!;
      return pulls(mask[net[a]!]!, mask[net[b]!]!, this.#pluses);
    };
    for (let at = 0; at < model.safety.length; at++) {
      const unit = model.safety[at]!;
      const memory = at * MEMORY.size;
      const powered = reads(unit.supply);
      const plus = mask[net[unit.plus]!]!;
      let all = powered;
      let none = true;
      for (let n = 0; n < unit.back.length; n++) {
        const seen = mask[net[unit.back[n]!]!]!;
        // A test signal must come back alone: beside another potential it has touched something.
        const good =
          powered && (unit.crossFault ? seen === unit.bits[n] : (seen & this.#pluses & plus) !== 0);
        if (good) none = false;
        else all = false;
      }
      const loop = powered && (mask[net[unit.loop]!]! & this.#pluses & plus) !== 0;
      const was = state.memory[memory + MEMORY.loop] === 1;
      let wants = state.memory[memory + MEMORY.wants] === 1;
      if (!all && wants) {
        wants = false;
        state.memory[memory + MEMORY.cleared] = 0;
        if (unitWelded[at] === 1) state.memory[memory + MEMORY.locked] = 1;
      }
      if (none) state.memory[memory + MEMORY.cleared] = 1;
      const cleared =
        state.memory[memory + MEMORY.cleared] === 1 && state.memory[memory + MEMORY.locked] === 0;
      if (all && cleared && !wants && (unit.edge ? was && !loop : loop)) wants = true;
      state.memory[memory + MEMORY.wants] = wants ? 1 : 0;
      state.memory[memory + MEMORY.loop] = loop ? 1 : 0;
      for (const output of unit.outputs) this.#wanted[output] = wants ? 1 : 0;
    }
    for (let at = 0; at < model.controls.length; at++) {
      const { supply, stop, start, enable, resumes } = model.controls[at]!;
      const may = reads(supply) && (stop < 0 || on(stop));
      if (!reads(supply) || (!may && !resumes)) state.program[at] = 0;
      if (may && on(start)) state.program[at] = 1;
      this.#wanted[enable] = may && state.program[at] === 1 ? 1 : 0;
    }
    for (let at = 0; at < model.drives.length; at++) {
      const drive = model.drives[at]!;
      // A drive closes its brake the moment its power goes, while it can still hold.
      if (drive.output >= 0)
        this.#wanted[drive.output] =
          drive.powers.some(reads) && torque(drive, on) && driven(drive, on) ? 1 : 0;
    }
  }
}

/** Whether current flows between nets on these potentials: plus on one side, minus of the same supply on the other. */
export const pulls = (a: number, b: number, pluses: number): boolean =>
  (a & (b >> 1) & pluses) !== 0 || (b & (a >> 1) & pluses) !== 0;

type On = (mover: number) => boolean;
type Inputs = {
  readonly powers: readonly number[];
  readonly sto: readonly number[];
  readonly enable: number;
};

/** Whether a drive can turn its motor at all. */
export const torque = ({ powers, sto }: Inputs, on: On): boolean => powers.some(on) && sto.every(on);
/** Whether a drive that can turn its motor is told to. */
export const driven = ({ enable }: Inputs, on: On): boolean => enable < 0 || on(enable);
