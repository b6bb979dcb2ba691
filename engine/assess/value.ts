/** What an expression of a refit came to: a number with its doubt and where it rests, or why there is none. */
import { BASES, type Basis } from '../quantity/types.ts';
import type { Curve } from '../sheet/types.ts';

/** How the values of a doubtful source lie about their middle. */
export type Shape = 'normal' | 'rectangular';

/** What a value rests on. Sets are small and shared; treat them as read only. */
export interface Rests {
  /** Paths of the facts it came from: 'X.screw.root'. */
  readonly facts: ReadonlySet<string>;
  readonly policies: ReadonlySet<string>;
  /** The weakest basis among its facts; undefined when it rests on no fact (a stated number or a policy). */
  readonly basis: Basis | undefined;
}

export interface Known extends Rests {
  readonly state: 'known';
  /** SI. */
  readonly value: number;
  /**
   * Signed standard-uncertainty contribution of each uncertain fact or table row (SI of this value).
   * Keeping them apart keeps what two values share: the same fact cancels where it should.
   */
  readonly doubt: ReadonlyMap<string, number>;
}

export interface KnownCurve extends Rests {
  readonly state: 'curve';
  readonly curve: Curve;
}

export interface Missing {
  readonly state: 'missing';
  /** Paths of the facts that would have to be known. */
  readonly facts: ReadonlySet<string>;
}

/** The facts are known, but no answer exists for them. */
export interface NoAnswer {
  readonly state: 'no-answer';
  readonly reason: string;
}

/** The question has no meaning for this machine: there is no brake. */
export interface Inapplicable {
  readonly state: 'inapplicable';
  readonly reason: string;
}

export type Value = Known | KnownCurve | Missing | NoAnswer | Inapplicable;

export const NOTHING: ReadonlySet<string> = new Set();
export const NO_DOUBT: ReadonlyMap<string, number> = new Map();

/** The weaker of two bases; undefined (a stated number) weakens nothing. */
export function weaker(a: Basis | undefined, b: Basis | undefined): Basis | undefined {
  if (a === undefined) return b;
  if (b === undefined) return a;
  return BASES.indexOf(a) >= BASES.indexOf(b) ? a : b;
}

/** Union that allocates only when it must. */
export function union(a: ReadonlySet<string>, b: ReadonlySet<string>): ReadonlySet<string> {
  if (b.size === 0 || a === b) return a;
  if (a.size === 0) return b;
  for (const item of b) if (!a.has(item)) return new Set([...a, ...b]);
  return a;
}

/** Union of many, made once; one of them where it holds all the others. */
function unionOf(sets: readonly ReadonlySet<string>[]): ReadonlySet<string> {
  let widest = NOTHING;
  for (const set of sets) if (set.size > widest.size) widest = set;
  let all: Set<string> | undefined;
  for (const set of sets) {
    if (set === widest) continue;
    for (const item of set) {
      if ((all ?? widest).has(item)) continue;
      all ??= new Set(widest);
      all.add(item);
    }
  }
  return all ?? widest;
}

/** Joins what several values rest on. */
export function restsOf(values: readonly Rests[]): Rests {
  let basis: Basis | undefined;
  for (const value of values) basis = weaker(basis, value.basis);
  return {
    facts: unionOf(values.map((value) => value.facts)),
    policies: unionOf(values.map((value) => value.policies)),
    basis,
  };
}

/** Standard uncertainty: root of the sum of squared contributions (JCGM 100:2008, 5.1.2). */
export function uncertainty(doubt: ReadonlyMap<string, number>): number {
  let sum = 0;
  for (const part of doubt.values()) sum += part * part;
  return Math.sqrt(sum);
}

/** Contributions of `a·x + b·y`, shared sources combined before squaring. */
export function combine(
  a: number,
  x: ReadonlyMap<string, number>,
  b: number,
  y: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
  if (x.size === 0 && y.size === 0) return NO_DOUBT;
  const out = new Map<string, number>();
  for (const [source, part] of x) out.set(source, a * part);
  for (const [source, part] of y) out.set(source, (out.get(source) ?? 0) + b * part);
  return out;
}

/** Contributions of a weighted sum of many. */
export function combineAll(
  terms: readonly { readonly by: number; readonly of: ReadonlyMap<string, number> }[],
): ReadonlyMap<string, number> {
  let out: Map<string, number> | undefined;
  for (const { by, of } of terms) {
    if (by === 0 || of.size === 0) continue;
    out ??= new Map();
    for (const [source, part] of of) out.set(source, (out.get(source) ?? 0) + by * part);
  }
  return out ?? NO_DOUBT;
}
