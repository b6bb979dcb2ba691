/** What a bench method is, what is typed for it, and what comes out. */
import type { Component } from '../metrology/index.ts';
import type { Sheet } from '../sheet/index.ts';
import type { Drawing } from './drawing.ts';

/** What a person took down: entries typed once, readings in rows, and rows set aside. */
export interface Taken {
  readonly given: Readonly<Record<string, string>>;
  /** By column; the same place in each column is one row. */
  readonly readings: Readonly<Record<string, readonly string[]>>;
  /** Rows that the person set aside, from 0; what is shown to people counts rows from 1. */
  readonly aside: readonly number[];
}

export type Domain = 'any' | 'positive' | 'not negative';

interface Asked {
  readonly key: string;
  readonly name: string;
  readonly help: string;
  readonly optional?: true;
}

export interface QuantityAsked extends Asked {
  readonly kind: 'quantity';
  readonly unit: string;
  readonly domain?: Domain;
  readonly whole?: true;
  /** Rated or chosen: it has no doubt of its own, and none is asked for. */
  readonly exact?: true;
  /** What a ± typed here means: a limit (a meter's or a maker's tolerance), or an expanded uncertainty from another measurement. */
  readonly doubt?: 'limit' | 'measured';
}

export interface ChoiceAsked extends Asked {
  readonly kind: 'choice';
  readonly options: Readonly<Record<string, string>>;
}

/** How far an instrument may be wrong: '0.5 % + 2 digits', '1 % + 0.03 V', '0.01 mm'. Holds for the columns it names. */
export interface AccuracyAsked extends Asked {
  readonly kind: 'accuracy';
  readonly unit: string;
  readonly of: readonly string[];
}

/** Typed once. `usual` stands in the field already and holds where nothing else is typed. */
export type Entry = (QuantityAsked | ChoiceAsked | AccuracyAsked) & { readonly usual?: string };

/** Typed in every row. */
export type Column = QuantityAsked | ChoiceAsked;

export interface FactPath {
  readonly place: string;
  readonly fact: string;
}

/** A value as read, with where its doubt comes from; see estimate.ts. */
export interface Source {
  /** The same thing in doubt has the same id everywhere, so that what it does twice is not added as if by chance. */
  readonly id: string;
  readonly name: string;
  readonly kind: Component['kind'];
  /** Degrees of freedom; infinite where it does not rest on repeated readings. */
  readonly freedom: number;
}

export interface Part extends Source {
  /** What one standard uncertainty of the source does to the value, signed, SI. */
  readonly amount: number;
}

export interface Estimate {
  /** SI and radians. */
  readonly value: number;
  readonly parts: readonly Part[];
}

export interface Reading extends Estimate {
  /** Counted from 1, as the person sees it. */
  readonly row: number;
  readonly text: string;
  /** Worth of the last digit typed, SI. */
  readonly digit: number;
}

/** A number with its doubt, fit to be recorded as a fact. */
export interface QuantityResult {
  readonly kind: 'quantity';
  readonly key: string;
  readonly name: string;
  readonly unit: string;
  /** SI and radians. */
  readonly value: number;
  /** Standard uncertainty, SI. */
  readonly standard: number;
  readonly freedom: number;
  /** `expanded` = `factor` × `standard` holds the truth 95 times in a hundred. */
  readonly factor: number;
  readonly expanded: number;
  /** The budget: what each doubt adds, with its share of the variance. */
  readonly parts: readonly (Component & { readonly share: number })[];
  /** '1.32 ± 0.06 Ω': never more digits than are known. */
  readonly text: string;
  readonly fact?: FactPath;
}

/** One of a fact's options: this is a brushed motor. */
export interface ChoiceResult {
  readonly kind: 'choice';
  readonly key: string;
  readonly name: string;
  readonly option: string;
  readonly text: string;
  readonly fact?: FactPath;
}

export type EvidenceResult = QuantityResult | ChoiceResult;

export interface Verdict {
  readonly level: 'good' | 'doubtful' | 'bad' | 'note';
  readonly sentence: string;
}

/** One of several things it could be, the likeliest first. */
export interface Candidate {
  readonly name: string;
  /** 0 to 1; those of a table add to 1. */
  readonly likely: number;
  /** What speaks for or against it: 'misses by 0.08 mm, 12 times the doubt'. */
  readonly why: string;
}

/** Something odd in what was typed, for the person to settle. */
export interface Question {
  /** Counted from 1; absent where it is about an entry or the whole. */
  readonly row?: number;
  readonly sentence: string;
}

/** A formula as it was used, with its numbers. */
export interface WorkingLine {
  readonly sheet: string;
  readonly name: string;
  readonly plain: string;
  readonly plainWithNumbers: string;
  readonly tex: string;
  readonly texWithNumbers: string;
  readonly source: string | undefined;
}

export interface Outcome {
  readonly results: readonly EvidenceResult[];
  readonly verdicts: readonly Verdict[];
  readonly candidates?: readonly Candidate[];
  readonly questions: readonly Question[];
  readonly working: readonly WorkingLine[];
}

/** What a method's run gives; `runMethod` adds the working and what every method asks. */
export type Found = Omit<Outcome, 'questions' | 'working'> & { readonly questions?: readonly Question[] };

/** What was typed, as numbers. Keys are the method's own, so that a misspelt one does not compile. */
export interface Read<G extends string = string, C extends string = string> {
  /** An entry that has to be there. */
  readonly entry: (key: G) => Estimate;
  /** An entry that may be left out. */
  readonly maybe: (key: G) => Estimate | undefined;
  readonly choice: (key: G) => string | undefined;
  /** The readings of a column in rows that were not set aside; empty cells are left out. */
  readonly column: (key: C) => readonly Reading[];
  /** The reading of a column in a row. */
  readonly cell: (key: C, row: number) => Reading | undefined;
  readonly picked: (key: C, row: number) => string | undefined;
  /** Numbers of the rows in use. */
  readonly rows: readonly number[];
  /** Whether somebody said how far the instrument of a column may be wrong. */
  readonly accuracyGiven: (column: C) => boolean;
  /** A sheet's answer with its doubt; the first use of a formula is kept for the working. */
  readonly through: <K extends string>(
    sheet: Sheet<K>,
    key: K,
    given: Readonly<Partial<Record<K, Estimate>>>,
  ) => Estimate;
}

export interface Method<G extends string = string, C extends string = string> {
  readonly id: string;
  readonly title: string;
  /** One sentence: what it tells and what it saves from. */
  readonly purpose: string;
  /** Shown first. */
  readonly hazards: readonly string[];
  readonly tools: readonly string[];
  /** What to do with the hands, in order. */
  readonly steps: readonly string[];
  readonly drawing: Drawing;
  readonly given: readonly (Entry & { readonly key: G })[];
  readonly columns: readonly (Column & { readonly key: C })[];
  /** Fewest rows. */
  readonly least: number;
  readonly settles: readonly FactPath[];
  /** Ids of the handbook sheets it works by. */
  readonly sheets: readonly string[];
  readonly run: (read: Read<G, C>) => Found;
}

/** Keeps the keys typed. */
export function method<const G extends string, const C extends string>(of: Method<G, C>): Method<G, C> {
  return of;
}

/** Thrown inside a run for what makes no sense; `runMethod` hands it back as a problem naming the entry. */
export class Senseless extends Error {
  readonly where: string;
  constructor(where: string, message: string) {
    super(message);
    this.name = 'Senseless';
    this.where = where;
  }
}
