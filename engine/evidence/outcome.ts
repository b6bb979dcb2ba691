/** Results as they are shown and recorded. */
import { formatQuantity } from '../quantity/index.ts';
import { budgetOf } from './estimate.ts';
import type { ChoiceResult, Estimate, FactPath, QuantityResult, Verdict } from './types.ts';

interface Named {
  readonly key: string;
  readonly name: string;
  readonly fact?: FactPath;
}

/** A measured number with its budget. Digits end where the doubt begins. */
export function resultOf(named: Named & { readonly unit: string }, of: Estimate): QuantityResult {
  const { standard, freedom, factor, expanded, parts } = budgetOf(of);
  const text = formatQuantity(of.value, named.unit, { half: expanded });
  return { kind: 'quantity', ...named, value: of.value, standard, freedom, factor, expanded, parts, text };
}

/** Something counted: a whole number without doubt. */
export const countOf = (named: Named & { readonly unit: string }, value: number): QuantityResult => ({
  kind: 'quantity',
  ...named,
  value,
  standard: 0,
  freedom: Number.POSITIVE_INFINITY,
  factor: 1,
  expanded: 0,
  parts: [],
  text: formatQuantity(value, named.unit, { digits: 9 }),
});

export const choiceOf = (named: Named, option: string, text: string): ChoiceResult => ({
  kind: 'choice',
  ...named,
  option,
  text,
});

export const good = (sentence: string): Verdict => ({ level: 'good', sentence });
export const doubtful = (sentence: string): Verdict => ({ level: 'doubtful', sentence });
export const bad = (sentence: string): Verdict => ({ level: 'bad', sentence });
export const note = (sentence: string): Verdict => ({ level: 'note', sentence });

/** For sentences: '4.2 %'. */
export const percent = (share: number): string => formatQuantity(share, '%', { digits: 2 });

/** Three steps of a policy: below `fine` good, below `most` doubtful, else bad. */
export function graded(
  value: number,
  [fine, most]: readonly [fine: number, most: number],
  sentences: { readonly good: string; readonly doubtful: string; readonly bad: string },
): Verdict {
  if (value <= fine) return good(sentences.good);
  return value <= most ? doubtful(sentences.doubtful) : bad(sentences.bad);
}
