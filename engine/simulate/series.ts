/**
 * One step of a mode by its Taylor series: every state as a polynomial in time, exact to rounding within a step that
 * is chosen so that the last term no longer counts. Guards become polynomials too, so events are roots, not guesses.
 */

import type { Mode } from './modes.ts';
import * as modes from './modes.ts';
import type { Reference } from './reference.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { INPUTS, PHI, REF, STATES, W2, WIDTH } = modes;

/** Terms kept beyond the value itself. */
const ORDER = 14;
const SMALL = 1e-16;
/** Terms that have fallen below this, and still fall, are the last that are worked out. */
const EARLY = 1e-18;
/** Below this a state's size does not count: far under a count, a microamp, a nanometre a second. */
const FLOOR = 1e-9;

export class Series {
  /** States and inputs of each order, WIDTH apart. */
  readonly terms = new Float64Array((ORDER + 1) * WIDTH);
  private readonly reference = new Float64Array(ORDER + 3);
  private readonly inner = new Float64Array(ORDER + 1);
  private readonly bend = new Float64Array(ORDER + 1);
  private readonly other = new Float64Array(ORDER + 1);
  private readonly guard = new Float64Array(ORDER + 1);

  /**
   * Takes the reference's own series about `t` as an input; without one the inputs stand still. With `pulse` (rad) its
   * position comes in steps and stands still between them, while its speed stays smooth.
   */
  setReference(reference: Reference, t: number, pulse: number): void {
    const r = this.reference;
    reference.series(t, r);
    for (let k = 0; k <= ORDER; k++) {
      const at = k * WIDTH + STATES + REF;
      this.terms[at] = pulse > 0 ? (k > 0 ? 0 : Math.floor(r[0]! / pulse + 0.5) * pulse) : r[k]!;
      this.terms[at + 1] = (k + 1) * r[k + 1]!;
      this.terms[at + 2] = (k + 1) * (k + 2) * r[k + 2]!;
    }
  }

  /** Inputs that stand still have no reference. */
  clearReference(): void {
    const { terms } = this;
    for (let at = STATES + REF; at < terms.length; at += WIDTH) {
      terms[at] = 0;
      terms[at + 1] = 0;
      terms[at + 2] = 0;
    }
  }

  /** Highest term that counts over the step last expanded. */
  order = ORDER;

  /**
   * Fills the terms from state `x` and inputs `u`; the reference stays as set when `moving`. With inputs that stand still
   * it ends early once the terms over a step of `h` have died down.
   */
  expand(
    mode: Mode,
    x: Float64Array,
    u: Float64Array,
    moving: boolean,
    bendScale: number,
    bendSize: number,
    h: number,
  ): void {
    const { terms } = this;
    this.order = ORDER;
    let scale = FLOOR;
    for (let j = 0; j < STATES; j++) scale += Math.abs(x[j]!);
    let power = 1;
    let before = Number.POSITIVE_INFINITY;
    const { start, column, weight, curved, curvedOn } = mode;
    for (let j = 0; j < STATES; j++) terms[j] = x[j]!;
    for (let j = 0; j < INPUTS; j++) {
      if (moving && j >= REF && j < REF + 3) continue;
      terms[STATES + j] = u[j]!;
    }
    for (let k = 0; k < ORDER; k++) {
      const from = k * WIDTH;
      const to = from + WIDTH;
      const y = curved === 0 ? 0 : this.bent(curved, k, bendScale) * bendSize;
      for (let j = 0; j < STATES; j++) {
        let total = curved === 0 ? 0 : curvedOn[j]! * y;
        const end = start[j + 1]!;
        for (let p = start[j]!; p < end; p++) total += weight[p]! * terms[from + column[p]!]!;
        terms[to + j] = total / (k + 1);
      }
      if (moving || curved !== 0) continue;
      power *= h;
      let here = 0;
      for (let j = 0; j < STATES; j++) here += Math.abs(terms[to + j]!);
      here *= power;
      if (here <= EARLY * scale && before <= 1e3 * EARLY * scale) {
        this.order = k + 1;
        return;
      }
      before = here;
    }
  }

  /** Order `k` of tanh(w2/scale), or of sin(scale × (reference − motor angle)). */
  private bent(curved: 1 | 2, k: number, scale: number): number {
    const { inner: u, bend: y, other: c, terms } = this;
    if (curved === 1) {
      u[k] = terms[k * WIDTH + W2]! / scale;
      if (k === 0) {
        y[0] = Math.tanh(u[0]!);
        c[0] = 1 - y[0] * y[0];
        return y[0];
      }
      let total = 0;
      for (let j = 1; j <= k; j++) total += j * u[j]! * c[k - j]!;
      y[k] = total / k;
      let square = 0;
      for (let j = 0; j <= k; j++) square += y[j]! * y[k - j]!;
      c[k] = -square;
      return y[k]!;
    }
    u[k] = scale * (terms[k * WIDTH + STATES + REF]! - terms[k * WIDTH + PHI]!);
    if (k === 0) {
      y[0] = Math.sin(u[0]!);
      c[0] = Math.cos(u[0]!);
      return y[0];
    }
    let up = 0;
    let down = 0;
    for (let j = 1; j <= k; j++) {
      up += j * u[j]! * c[k - j]!;
      down -= j * u[j]! * y[k - j]!;
    }
    y[k] = up / k;
    c[k] = down / k;
    return y[k]!;
  }

  /** The longest step, up to `wanted`, over which the last two terms no longer count. */
  reach(wanted: number): number {
    if (this.order < ORDER) return wanted;
    const { terms } = this;
    let h = wanted;
    for (let turn = 0; turn < 60; turn++) {
      let fits = true;
      for (let j = 0; j < STATES && fits; j++) {
        let power = 1;
        let largest = FLOOR;
        for (let k = 0; k < ORDER - 1; k++) {
          largest = Math.max(largest, Math.abs(terms[k * WIDTH + j]!) * power);
          power *= h;
        }
        const last =
          Math.abs(terms[(ORDER - 1) * WIDTH + j]!) * power + Math.abs(terms[ORDER * WIDTH + j]!) * power * h;
        fits = !(last > SMALL * largest);
      }
      if (fits) return h;
      h *= 0.7;
    }
    return h;
  }

  /** A state or input at `s` into the step. */
  value(at: number, s: number): number {
    const { terms, order } = this;
    let total = terms[order * WIDTH + at]!;
    for (let k = order - 1; k >= 0; k--) total = total * s + terms[k * WIDTH + at]!;
    return total;
  }

  /**
   * The first moment in (0, s] at which guard `at` of the mode ends, or −1. A guard that starts at its own edge, as after
   * an event it took part in, is over when it goes below its tolerance.
   */
  firstEnd(mode: Mode, at: number, s: number, bendSize: number): number {
    const { guard: p, terms, order } = this;
    const curved = mode.guards[at]!.curved * bendSize;
    const from = mode.guardStart[at]!;
    const to = mode.guardStart[at + 1]!;
    let power = 1;
    let swing = 0;
    for (let k = 0; k <= order; k++) {
      let total = 0;
      for (let n = from; n < to; n++)
        total += mode.guardWeight[n]! * terms[k * WIDTH + mode.guardColumn[n]!]!;
      if (curved !== 0 && k < ORDER) total += curved * this.bend[k]!;
      p[k] = total;
      if (k > 0) swing += Math.abs(total) * power;
      power *= s;
    }
    if (p[0]! > swing) return -1;
    const least = -mode.guards[at]!.tolerance;
    if (p[0]! < least) return 0;
    const cells = 16;
    let before = 0;
    for (let cell = 1; cell <= cells; cell++) {
      const here = (s * cell) / cells;
      if (this.poly(here) < least) return this.edge(before, here, least);
      before = here;
    }
    return -1;
  }

  private poly(s: number): number {
    const p = this.guard;
    let total = p[this.order]!;
    for (let k = this.order - 1; k >= 0; k--) total = total * s + p[k]!;
    return total;
  }

  /** Halving with secants inside: the guard is fine at `low` and over at `high`. */
  private edge(low: number, high: number, least: number): number {
    // Between zero and the tolerance lies rounding only: the crossing of zero itself is sought when there is one.
    const level = this.poly(low) > 0 ? 0 : least;
    let a = low;
    let b = high;
    let fa = this.poly(a) - level;
    let fb = this.poly(b) - level;
    for (let turn = 0; turn < 100 && b - a > 4e-16 * b; turn++) {
      let middle = turn % 3 === 2 ? (a + b) / 2 : a + ((b - a) * fa) / (fa - fb);
      if (!(middle > a && middle < b)) middle = (a + b) / 2;
      if (middle === a || middle === b) break;
      const f = this.poly(middle) - level;
      if (f < 0) {
        b = middle;
        fb = f;
      } else {
        a = middle;
        fa = f;
      }
    }
    return b;
  }
}
