/** What the rooms above say of whole parts, put together for a decision. */

import type { Finding } from '../assess/index.ts';
import type { Money } from '../quantity/index.ts';
import type { Verdict } from '../quantity/verdict.ts';
import type { Condition } from '../refit/types.ts';

/** `buy`: not there yet, and on paper it does what is asked. */
export type Recommendation = 'keep' | 'buy' | 'repair' | 'replace' | 'find-out';

/** A sentence that speaks for one answer; `note` speaks for none. */
export interface Reason {
  readonly towards: Recommendation | 'note';
  readonly sentence: string;
  readonly source: string;
}

/** How a part came out of a test: recorded as evidence, or told by a fact against its limit. */
export interface TestResult {
  readonly title: string;
  readonly level: 'good' | 'doubtful' | 'bad' | 'note';
  readonly sentence: string;
  readonly source: string;
}

/** One thing to pay for, and the fact that holds its price. */
export interface Cost {
  /** Path to set it by: 'X.motor@x-motor-2.price'. */
  readonly path: string;
  readonly name: string;
  /** Absent while nobody has entered it. */
  readonly money?: Money;
}

export interface Bill {
  readonly items: readonly Cost[];
  /** What is known of it, added; absent where currencies differ or nothing is known. */
  readonly total?: Money;
  /** Whether every item has its price. */
  readonly complete: boolean;
}

export interface Change {
  readonly id: string;
  readonly title: string;
  /** Absent where the question does not arise. */
  readonly before?: Verdict;
  readonly after?: Verdict;
  readonly marginBefore?: number | null;
  readonly marginAfter?: number | null;
}

/** Another way to fill the place, with whatever has to change along with it. */
export interface Swap {
  /** 'Stepper, 86 mm flange, with stepper drive'. */
  readonly says: string;
  readonly parts: readonly { readonly at: string; readonly part: string; readonly name: string }[];
  /** Findings whose verdict changes, arises or goes, those that get worse first. */
  readonly changes: readonly Change[];
  /** Fails now, and is asked and goes with it. */
  readonly mends: number;
  /** Fails with it, not now. */
  readonly breaks: number;
  /** Cannot be judged with it, could be before. */
  readonly loses: number;
  readonly bill: Bill;
}

/** A wish or a setting of the part that, changed, makes a failing finding fit and upsets nothing. */
export interface Cure {
  readonly finding: string;
  /** Something asked for, rather than a setting. */
  readonly wish: boolean;
  readonly says: string;
}

export interface PartAdvice {
  /** 'X.motor'. */
  readonly at: string;
  readonly chain: string | null;
  readonly place: string;
  readonly part: string;
  readonly name: string;
  readonly condition: Condition | undefined;
  readonly notes: string;
  readonly recommendation: Recommendation;
  /** One sentence: what to do and the chief reason. */
  readonly sentence: string;
  /** Those that speak for the recommendation first. */
  readonly reasons: readonly Reason[];
  readonly tests: readonly TestResult[];
  /** What the machine asks of it, worst first. */
  readonly asks: readonly Finding[];
  readonly cures: readonly Cure[];
  readonly keeping: Bill;
  readonly swaps: readonly Swap[];
  /** What the answer rests on and nobody has measured, in sentences. */
  readonly doubt: readonly string[];
}
