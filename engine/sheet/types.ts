/** A sheet: a page of formulas with symbols, units and sources. Written once, used for everything. */
import type { Dimension } from '../quantity/types.ts';

/** Where a value may lie at all. Outside it a formula has no meaning and says so. */
export type Domain = 'any' | 'positive' | 'not negative' | 'fraction';

interface SymbolBase {
  /** Plain name, lower case: 'root diameter'. */
  readonly name: string;
  /** The unit in which a person types and reads it; dimensions follow from it. '1' for a plain number. */
  readonly unit: string;
  /** Typeset form where the key is not enough, e.g. 'd_1', '\\eta_b'. */
  readonly tex?: string;
  readonly domain?: Domain;
  readonly note?: string;
}

export interface InputSymbol extends SymbolBase {
  readonly kind: 'input';
}

/** A published or conventional number, as a person would write it: '206 GPa'. */
export interface ConstantSymbol extends SymbolBase {
  readonly kind: 'constant';
  readonly value: string;
  readonly source: string;
}

/** One expression in SI and radians over the sheet's other symbols. */
export interface FormulaSymbol extends SymbolBase {
  readonly kind: 'formula';
  readonly expression: string;
  readonly source: string;
  /** What the formula says, in words for somebody unsure with it. */
  readonly says?: string;
}

/** Points of a curve, x ascending, both in SI. */
export interface Curve {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** A measured or catalogue curve, e.g. pull-out torque against speed. Only procedures read it. */
export interface CurveSymbol extends Omit<SymbolBase, 'domain'> {
  readonly kind: 'curve';
  readonly xName: string;
  readonly xUnit: string;
}

export type Argument = number | Curve;

/** What is not an expression: a look-up, an implicit equation, a sum. Stands in a sheet like a formula. */
export interface ProcedureSymbol extends SymbolBase {
  readonly kind: 'procedure';
  /** Symbols it reads, in the order `run` takes them. */
  readonly reads: readonly string[];
  /** Pure. Throws nothing; returns NaN only together with a reason from `refuses`. */
  readonly run: (...args: readonly Argument[]) => number;
  /** Why these arguments have no answer, or undefined when they have one. */
  readonly refuses?: (...args: readonly Argument[]) => string | undefined;
  /** Bounds that surely hold the result for arguments within theirs; undefined where there are none. */
  readonly bounds?: (...args: readonly (Interval | Curve)[]) => Interval | undefined;
  readonly says: string;
  readonly source: string;
}

export type SymbolSpec = InputSymbol | ConstantSymbol | FormulaSymbol | CurveSymbol | ProcedureSymbol;

/** A computed value, or why there is none. Never NaN. */
export type Outcome =
  | { readonly state: 'known'; readonly value: number }
  /** Inputs that would have to be known. */
  | { readonly state: 'missing'; readonly needs: readonly string[] }
  /** No answer exists for these inputs: 'the square root of a negative number in L10'. */
  | { readonly state: 'undefined'; readonly reason: string };

export type Interval = readonly [low: number, high: number];

export interface Sheet<K extends string = string> {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly symbols: Readonly<Record<K, SymbolSpec>>;
  /** Inputs first, then constants, then derived symbols, each after what it needs. */
  readonly order: readonly K[];
  /** Symbols that must be given (inputs and curves). */
  readonly inputs: readonly K[];
  /** Formulas and procedures in working order. */
  readonly derived: readonly K[];
  /** SI values of the constants. */
  readonly constants: Readonly<Partial<Record<K, number>>>;
  readonly dimensions: Readonly<Record<K, Dimension>>;
  /** For each derived symbol, the inputs it depends on, directly or not. */
  readonly dependsOn: Readonly<Record<K, readonly K[]>>;
}

export type Given<K extends string> = { readonly [P in K]?: Argument | undefined };
