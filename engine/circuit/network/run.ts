/**
 * A circuit in time, by one-step TR-BDF2 with steps as long as its own estimate of the error allows: it does not
 * ring behind diodes and contacts as the trapezoidal rule alone does.
 */
import { checkCircuit } from './check.ts';
import { solveAt } from './newton.ts';
import { ampsOf } from './operate.ts';
import { piecesOf } from './pieces.ts';
import { System } from './system.ts';
import type { Answer, Circuit, Element, Trouble } from './types.ts';
import { jumpsOf } from './value.ts';

export interface RunOptions {
  /** Seconds, from 0. */
  readonly until: number;
  /** Error allowed in a step, as a share; 1e-4 unless given. */
  readonly tolerance?: number;
  /** Longest step in seconds; a hundredth of the run unless given. */
  readonly longest?: number;
  /** Start with empty capacitors and still inductors where they say nothing else, not with the steady state before. */
  readonly fromNothing?: boolean;
}

export interface Run {
  readonly times: Float64Array;
  /** Volts of a node against its reference at those times; undefined for a node that is nowhere. */
  volts(node: string): Float64Array | undefined;
  /** Amperes through a source, inductor, resistor, contact, diode or capacitor at those times. */
  amps(id: string): Float64Array | undefined;
  /** Between the times, by a straight line. */
  at(values: Float64Array, time: number): number;
}

const GAMMA = 2 - Math.SQRT2;
const A = 1 / (GAMMA * (2 - GAMMA));
const B = (1 - GAMMA) ** 2 / (GAMMA * (2 - GAMMA));
const C = (1 - GAMMA) / (2 - GAMMA);
const ERROR = (-3 * GAMMA * GAMMA + 4 * GAMMA - 2) / (12 * (2 - GAMMA));

/** The most steps of one run. */
const MOST_STEPS = 400_000;

const tooLong = (time: number): Trouble => ({
  kind: 'too-long',
  nodes: [],
  elements: [],
  sentence: `The run did not come further than ${time} s in ${MOST_STEPS} steps; ask for a shorter time or a coarser tolerance.`,
});

/** What is stored in an element, and how fast it changes, from the unknowns. */
function storedIn(e: Element, system: System, x: Float64Array): number {
  if (e.kind === 'inductor') return x[system.branch(e.id)]!;
  if (e.kind !== 'capacitor') return 0;
  const at = (unknown: number): number => (unknown < 0 ? 0 : x[unknown]!);
  return at(system.node(e.a)) - at(system.node(e.b));
}

/** The stored values a run begins with. */
function start(system: System, circuit: Circuit, fromNothing: boolean): Float64Array | Trouble {
  const stored = new Float64Array(system.stores.length);
  if (!fromNothing) {
    const cut = piecesOf(circuit);
    if (!cut.ok) return cut.trouble;
    const steady = new System(cut.pieces);
    const x = new Float64Array(steady.size);
    const trouble = solveAt(steady, { time: 0, share: 1, leak: 0 }, x);
    if (trouble) return trouble;
    const home = new Map(cut.pieces.flatMap((piece) => piece.nodes.map((node) => [node, piece] as const)));
    system.stores.forEach((e, k) => {
      // A capacitor between pieces that nothing joins is taken as empty.
      if (e.kind === 'inductor' || (e.kind === 'capacitor' && home.get(e.a) === home.get(e.b)))
        stored[k] = storedIn(e, steady, x);
    });
  }
  system.stores.forEach((e, k) => {
    if (e.kind === 'capacitor' && e.startVolts !== undefined) stored[k] = e.startVolts;
    if (e.kind === 'inductor' && e.startAmps !== undefined) stored[k] = e.startAmps;
  });
  return stored;
}

export function runCircuit(circuit: Circuit, options: RunOptions): Answer<{ run: Run }> {
  const { until } = options;
  const refuse = (trouble: Trouble): Answer<never> => ({ ok: false, trouble });
  if (!(Number.isFinite(until) && until > 0))
    return refuse({
      kind: 'value',
      nodes: [],
      elements: [],
      sentence: 'The time to run must be above zero.',
    });
  const wrong = checkCircuit(circuit);
  if (wrong) return refuse(wrong);
  const cut = piecesOf(circuit, 0, true);
  if (!cut.ok) return cut;
  const system = new System(cut.pieces);
  const stored = start(system, circuit, options.fromNothing ?? false);
  if (!(stored instanceof Float64Array)) return refuse(stored);
  const stops = [
    ...new Set([...circuit.elements.flatMap((e) => jumpsOf(e as Parameters<typeof jumpsOf>[0])), until]),
  ]
    .filter((time) => time > 0 && time <= until)
    .sort((a, b) => a - b);
  const walk = new Walk(system, stored, options.tolerance ?? 1e-4, options.longest ?? until / 100);
  let time = 0;
  for (const stop of stops) {
    const trouble = walk.to(time, stop);
    if (trouble) return refuse(trouble);
    time = stop;
  }
  return { ok: true, run: runOf(system, walk.times, walk.states) };
}

/** The run between jumps; keeps every state it passes. */
class Walk {
  readonly times: number[] = [];
  readonly states: { readonly x: Float64Array; readonly rate: Float64Array }[] = [];
  readonly #system: System;
  readonly #x: Float64Array;
  readonly #stored: Float64Array;
  readonly #tolerance: number;
  readonly #longest: number;
  #steps = 0;

  constructor(system: System, stored: Float64Array, tolerance: number, longest: number) {
    this.#system = system;
    this.#x = new Float64Array(system.size);
    this.#stored = stored;
    this.#tolerance = tolerance;
    this.#longest = longest;
  }

  /** Solves the step that reaches `time`; what is stored there goes into `into`. */
  #solve(time: number, reach: number, from: Float64Array, into: Float64Array): Trouble | undefined {
    const trouble = solveAt(this.#system, { time, share: 1, leak: 0, rule: { reach, from } }, this.#x);
    if (trouble) return trouble;
    this.#system.stores.forEach((e, k) => {
      into[k] = storedIn(e, this.#system, this.#x);
    });
    return undefined;
  }

  to(begin: number, end: number): Trouble | undefined {
    const n = this.#stored.length;
    const [rate, mid, next, from] = [0, 0, 0, 0].map(() => new Float64Array(n)) as [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    const fresh = (): Float64Array => new Float64Array(n);
    // A very short implicit step finds currents and voltages just after a jump, with what is stored unchanged.
    const blink = Math.min(1e-9, (end - begin) * 1e-9);
    from.set(this.#stored);
    const after = fresh();
    const trouble = this.#solve(begin + blink, blink, from, after);
    if (trouble) return trouble;
    for (let k = 0; k < n; k++) rate[k] = (after[k]! - this.#stored[k]!) / blink;
    this.#stored.set(after);
    this.#keep(begin + blink, rate);
    let time = begin + blink;
    let h = Math.min(this.#longest, end - time, (end - begin) / 1000);
    const bias = new Float64Array(this.#system.bias.length);
    const x = new Float64Array(this.#x.length);
    while (end - time > 1e-12 * end) {
      if (++this.#steps > MOST_STEPS) return tooLong(time);
      h = Math.min(h, this.#longest, end - time);
      bias.set(this.#system.bias);
      x.set(this.#x);
      const half = (GAMMA * h) / 2;
      for (let k = 0; k < n; k++) from[k] = this.#stored[k]! + half * rate[k]!;
      let failed = this.#solve(time + GAMMA * h, half, from, mid);
      const newRate = fresh();
      let worst = 0;
      if (!failed) {
        for (let k = 0; k < n; k++) from[k] = A * mid[k]! - B * this.#stored[k]!;
        // Never past the end: what jumps there jumps for the next stretch.
        const arrive = end - time - h <= 1e-12 * end ? end - 1e-12 * (end - begin) : time + h;
        failed = this.#solve(arrive, C * h, from, next);
        for (let k = 0; k < n && !failed; k++) {
          newRate[k] = (next[k]! - from[k]!) / (C * h);
          const midRate = (mid[k]! - this.#stored[k]! - half * rate[k]!) / half;
          const error =
            2 * ERROR * h * (rate[k]! / GAMMA - midRate / (GAMMA * (1 - GAMMA)) + newRate[k]! / (1 - GAMMA));
          const scale = this.#tolerance * (1e-3 + Math.max(Math.abs(next[k]!), Math.abs(this.#stored[k]!)));
          worst = Math.max(worst, Math.abs(error) / scale);
        }
      }
      if (failed || worst > 1) {
        this.#system.bias.set(bias);
        this.#x.set(x);
        h *= failed ? 0.1 : Math.max(0.1, 0.85 * worst ** (-1 / 3));
        if (h < 1e-15 * Math.max(end, 1e-6)) return failed ?? tooLong(time);
        continue;
      }
      time = end - time - h <= 1e-12 * end ? end : time + h;
      this.#stored.set(next);
      rate.set(newRate);
      this.#keep(time, rate);
      h *= Math.min(4, Math.max(0.2, 0.85 * Math.max(worst, 1e-6) ** (-1 / 3)));
    }
    return undefined;
  }

  #keep(time: number, rate: Float64Array): void {
    this.times.push(time);
    this.states.push({ x: this.#x.slice(), rate: rate.slice() });
  }
}

function runOf(
  system: System,
  list: readonly number[],
  states: readonly { readonly x: Float64Array; readonly rate: Float64Array }[],
): Run {
  const times = Float64Array.from(list);
  const nodes = new Set(system.elements.flatMap((e) => ('a' in e ? [e.a, e.b] : [])));
  for (const e of system.elements) {
    if (e.kind === 'voltage') nodes.add(e.plus).add(e.minus);
    if (e.kind === 'diode') nodes.add(e.anode).add(e.cathode);
    if (e.kind === 'transistor') nodes.add(e.collector).add(e.base).add(e.emitter);
  }
  return {
    times,
    volts: (node) => {
      if (!nodes.has(node)) return undefined;
      const at = system.node(node);
      return Float64Array.from(states, ({ x }) => (at < 0 ? 0 : x[at]!));
    },
    amps: (id) => {
      const e = system.elements.find((each) => each.id === id);
      if (!e) return undefined;
      const stored = system.stores.indexOf(e);
      if (e.kind === 'capacitor') return Float64Array.from(states, ({ rate }) => e.farads * rate[stored]!);
      return Float64Array.from(states, ({ x }, k) => ampsOf(e, system, x, times[k]!));
    },
    at: (values, time) => {
      let [low, high] = [0, times.length - 1];
      if (time <= times[0]!) return values[0]!;
      while (high - low > 1) {
        const mid = (low + high) >> 1;
        if (times[mid]! <= time) low = mid;
        else high = mid;
      }
      const span = times[high]! - times[low]!;
      const share = span > 0 ? Math.min(1, (time - times[low]!) / span) : 1;
      return values[low]! + share * (values[high]! - values[low]!);
    },
  };
}
