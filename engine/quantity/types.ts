/** What every room shares about numbers: dimension, unit, quantity, basis, and answers that may be problems. */

/** Where a fact comes from, strongest first. */
export const BASES = ['measured', 'datasheet', 'plate', 'handbook', 'told', 'guess'] as const;
export type Basis = (typeof BASES)[number];

/**
 * What is counted, where it matters to a person: an encoder's lines are not its counts, a turn is not a hertz.
 * Formulas see all of these as plain numbers.
 */
export type Tally = 'none' | 'angle' | 'line' | 'count' | 'pulse' | 'step' | 'tooth' | 'start' | 'cycle';

/** Exponents of metre, kilogram, second, ampere and kelvin, and what is tallied, with its exponent. */
export interface Dimension {
  readonly m: number;
  readonly kg: number;
  readonly s: number;
  readonly A: number;
  readonly K: number;
  readonly tally: Tally;
  readonly tallyPower: number;
  /** Exponent of angle beside another tally: −1 in lines per turn. Absent when zero or when `tally` is itself angle. */
  readonly anglePower?: number;
}

export interface Unit {
  /** As it is printed, e.g. `N·m`, `r/min`, `oz-in-s²`. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** SI value = (number as typed + offset) × scale. The offset is only used by °C and °F. */
  readonly scale: number;
  readonly offset: number;
}

/** What a ± is, where the text says so. */
export type SpreadKind = 'readings' | 'instrument' | 'resolution' | 'tolerance' | 'guess' | 'expanded';

export interface Spread {
  readonly kind: SpreadKind;
  /** Standard uncertainty, SI. */
  readonly standard: number;
  /** How values lie within it: a bell, or evenly up to the limits. */
  readonly shape: 'normal' | 'rectangular';
}

export interface Quantity {
  /** Exactly what was typed. */
  readonly text: string;
  /** SI and radians. */
  readonly value: number;
  /** Half width of the ± as typed, in SI; 0 when none was given. Of a resolution, which is typed as a step, half that step. */
  readonly half: number;
  /** Where the text says what the ± is, and the ± is above zero. */
  readonly spread?: Spread;
  /** The unit as typed, for showing the value back. */
  readonly unit: Unit;
  /** How the text was read, where that is not plain: 'read as kilogram-force', '4000 counts are 1000 lines'. */
  readonly notes: readonly string[];
  /** Given with the text where a person stated them, e.g. '3-start pitch 2 mm'. */
  readonly starts?: number;
  /** Which length the value is, where the text or the field says: 'ø40 mm', 'lead 6 mm'. */
  readonly of?: 'diameter' | 'radius' | 'pitch' | 'lead';
}

export type ProblemCode =
  | 'empty'
  | 'too-long'
  | 'not-a-number'
  | 'unit-unknown'
  | 'unit-missing'
  | 'wrong-dimension'
  | 'ambiguous'
  | 'not-finite'
  | 'out-of-domain'
  | 'malformed'
  | 'unknown-name'
  | 'cycle'
  | 'undefined-result';

/** A refusal a person can act on. `message` is a whole sentence that says what was not understood and what would be right. */
export interface Problem {
  readonly code: ProblemCode;
  readonly message: string;
  /** The field or path it is about, where known. */
  readonly where?: string;
  /** The nearest thing that would have been understood. */
  readonly suggestion?: string;
  /** For `ambiguous`: the ways it can be read, each as text that would be read only one way. */
  readonly readings?: readonly string[];
}

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const refuse = <T = never>(problem: Problem): Result<T> => ({ ok: false, problem });
