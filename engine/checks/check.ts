/** A check: a question asked of a refit. Data only; wording stands here, judging in the assess room. */
import type { FactId, PlaceId } from '../parts/index.ts';
import type { Ref } from './refs.ts';

interface CheckBase {
  readonly id: string;
  readonly scope: 'axis' | 'spindle' | 'machine';
  /** The finding's name: 'Whirling of the screw'. */
  readonly title: string;
  /** The link of the chain it belongs to. */
  readonly place: PlaceId;
  /** Why it matters, for somebody unsure with electronics. */
  readonly why: string;
  /** What can hurt, where it can. */
  readonly caution?: string;
  /** What not knowing means, where it is more than a gap: 'No speed is permitted until …'. Stands before what is missing. */
  readonly untilKnown?: string;
  /** The check has no meaning unless these hold. */
  readonly onlyIf?: readonly Condition[];
}

/** Holds when a choice is one of these options, a place has a part, a value is above zero, or a fact is known at all. */
export type Condition =
  | { readonly place: PlaceId; readonly fact: string; readonly is: readonly string[] }
  | { readonly place: PlaceId; readonly fitted: boolean }
  | { readonly above: Ref; readonly else: string }
  | { readonly place: PlaceId; readonly fact: string; readonly known: true; readonly else: string };

export const ifChoice = <P extends PlaceId>(place: P, name: FactId<P>, ...is: string[]): Condition => ({
  place,
  fact: name,
  is,
});
export const ifFitted = (place: PlaceId, yes = true): Condition => ({ place, fitted: yes });

/** Asked only once the fact is known; `reason` says why not before. */
export const ifKnown = <P extends PlaceId>(place: P, name: FactId<P>, reason: string): Condition => ({
  place,
  fact: name,
  known: true,
  else: reason,
});

/** Asked only while the value is above zero; `reason` says why not otherwise. */
export const ifAbove = (above: Ref, reason: string): Condition => ({ above, else: reason });

/** Sentences by verdict. `{asked}`, `{there}`, `{margin}` stand for the numbers with their units, `{which}` for the least of several. */
export interface Sentences {
  readonly fits: string;
  readonly tight: string;
  readonly fails: string;
  /** When nothing at all is asked, where a plain word on that would not do. */
  readonly nothing?: string;
}

/** Demand against capacity, both positive totals. */
export interface RatioCheck extends CheckBase {
  readonly form: 'ratio';
  readonly demand: Ref;
  readonly capacity: Ref;
  /** Unit in which both are read. */
  readonly unit: string;
  /** Policy below which the margin is tight. */
  readonly tight: string;
  readonly says: Sentences;
  /** Several values of which `{which}` names the least: what sets the limit. */
  readonly least?: readonly (readonly [name: string, value: Ref])[];
}

/** Two ratios of one value: at least `low`, at most `high`. The worse counts. */
export interface BandCheck extends CheckBase {
  readonly form: 'band';
  readonly value: Ref;
  readonly low: Ref;
  readonly high: Ref;
  readonly unit: string;
  readonly tight: string;
  /** Sentences when the low side is the worse, and when the high side is. */
  readonly saysLow: Sentences;
  readonly saysHigh: Sentences;
}

export type Answer =
  | { readonly answer: 'yes' | 'no'; readonly sentence: string }
  | { readonly answer: 'tight'; readonly sentence: string };

/** What a fact check may read. Reading an unknown fact records it as missing. */
export interface Facts {
  /** The option of a choice, or undefined when unknown. */
  choice<P extends PlaceId>(place: P, name: FactId<P>): string | undefined;
  choices<P extends PlaceId>(place: P, name: FactId<P>): readonly string[] | undefined;
  /** A number in SI, or undefined when unknown. */
  number<P extends PlaceId>(place: P, name: FactId<P>): number | undefined;
  /** An option in words, for sentences. */
  say<P extends PlaceId>(place: P, name: FactId<P>, option: string): string;
  /** True with a part, false with none, undefined when not known. */
  fitted(place: PlaceId): boolean | undefined;
  /** A value the check `reads`, in SI with its standard uncertainty, or undefined when unknown. */
  worked(name: string): { readonly value: number; readonly doubt: number } | undefined;
  /** A value in SI for a sentence, in the unit the person reads such things in. */
  amount(value: number, unit: string, half?: number): string;
}

/** Yes or no, without margin. */
export interface FactCheck extends CheckBase {
  readonly form: 'fact';
  /** Worked values it reads, so that the working behind it can be shown. */
  readonly reads?: Readonly<Record<string, Ref>>;
  /** Undefined when something it read is unknown. */
  readonly judge: (facts: Facts) => Answer | undefined;
}

export type Check = RatioCheck | BandCheck | FactCheck;
