/** Findings: the answers of a refit. */
import type { Basis, Problem } from '../quantity/types.ts';
import type { Verdict } from '../quantity/verdict.ts';

export interface Amount {
  /** SI. */
  readonly value: number;
  /** Standard uncertainty, SI. */
  readonly doubt: number;
  /** The unit it is read in. */
  readonly unit: string;
}

export interface Doubt {
  /** Path of a fact, or 'table …'. */
  readonly source: string;
  /** From 0 to 1. */
  readonly share: number;
}

export interface Finding {
  /** 'X.whirl', 'machine.discharge'. */
  readonly id: string;
  readonly check: string;
  readonly chain: string | null;
  /** The link of the chain it belongs to. */
  readonly place: string;
  readonly title: string;
  readonly form: 'ratio' | 'band' | 'fact';
  readonly verdict: Verdict;
  /** One plain sentence with the numbers in it. */
  readonly sentence: string;
  readonly asked?: Amount;
  readonly there?: Amount;
  /** Capacity ÷ demand; null when nothing is asked, absent without an answer or for a yes-or-no. */
  readonly margin?: number | null;
  /** Where the margin lies with 95 % confidence. */
  readonly marginRange?: readonly [low: number, high: number];
  /** Chance that it fits, when the inputs carry doubt. */
  readonly chance?: number;
  /** Where the doubt comes from, most first: shares of the variance of what is spare, by fact or table. */
  readonly doubts?: readonly Doubt[];
  /** The weakest basis among its facts. */
  readonly basis?: Basis;
  /** Facts it rests on. */
  readonly facts: readonly string[];
  /** Facts that carry the weakest basis, when that is a guess. */
  readonly guesses: readonly string[];
  /** Facts that would have to be known. */
  readonly missing: readonly string[];
  readonly policies: readonly string[];
  /** For a band: which side is the worse. */
  readonly side?: 'low' | 'high';
}

/** A check that does not apply, and why. */
export interface NotAsked {
  readonly id: string;
  readonly title: string;
  readonly reason: string;
}

export interface Question extends Problem {
  readonly where: string;
}
