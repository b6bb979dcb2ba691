/** A part kind: what can be known of a real thing, in which unit, within what is plausible, and how to find it out. */

interface FactBase {
  /** Plain name, lower case: 'root diameter'. */
  readonly name: string;
  /** How to find it out at home, in one to three sentences. */
  readonly findOut: string;
  /** Caution to show with `findOut` where the act can hurt: mains, stored energy, moving parts. */
  readonly caution?: string;
  /** Trouble of finding it out: 1 read a plate, 2 a look-up or a meter, 3 a bench test, 4 a strip-down, 5 buy or ask far. */
  readonly trouble: 1 | 2 | 3 | 4 | 5;
}

export interface QuantityFact extends FactBase {
  readonly kind: 'quantity';
  readonly unit: string;
  readonly domain: 'any' | 'positive' | 'not negative' | 'fraction';
  /** Outside this a person is asked whether it is right; it is not refused. */
  readonly plausible: readonly [low: string, high: string];
  /** A choice the person makes (ratio, rapid, gain), not a property found: remedies may change it freely. */
  readonly chosen?: boolean;
  /** Policy that says how far a real part strays from what is printed on it; for values without a ± that nobody measured. */
  readonly tolerance?: string;
  /** What kind of length it is, so that a radius typed for a diameter, or starts typed with a pitch, are read right. */
  readonly of?: 'diameter' | 'radius' | 'pitch' | 'lead';
}

export interface ChoiceFact extends FactBase {
  readonly kind: 'choice';
  /** Says how a thing is stated or what it is by nature: choosing another option would mend nothing. */
  readonly given?: boolean;
  readonly options: Readonly<Record<string, string>>;
}

/** Several of the options at once: which motors a drive can run. */
export interface ChoicesFact extends FactBase {
  readonly kind: 'choices';
  readonly options: Readonly<Record<string, string>>;
}

export interface TextFact extends FactBase {
  readonly kind: 'text';
  /** What the text must be readable as: '80–120 EUR'. */
  readonly of?: 'money';
}

/** Points typed as '1.1 N·m at 300 r/min; 0.8 N·m at 600 r/min'. */
export interface CurveFact extends FactBase {
  readonly kind: 'curve';
  readonly unit: string;
  readonly xUnit: string;
  readonly xName: string;
}

export type FactSpec = QuantityFact | ChoiceFact | ChoicesFact | TextFact | CurveFact;

export interface PartKind<F extends string = string> {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly facts: Readonly<Record<F, FactSpec>>;
}

/** Keeps the fact keys typed, so that a misspelt fact does not compile. */
export function partKind<F extends string>(kind: PartKind<F>): PartKind<F> {
  return kind;
}
