/** What every finding of a check has in common. */
import type { Check } from '../checks/check.ts';
import type { Finding, NotAsked } from './finding.ts';
import { union, type Value } from './value.ts';
import { missingSentence } from './words.ts';

export type Judged = { readonly finding: Finding } | { readonly notAsked: NotAsked };

export interface Frame {
  readonly id: string;
  readonly check: Check;
  readonly chain: string | null;
}

export const base = (frame: Frame) => ({
  id: frame.id,
  check: frame.check.id,
  chain: frame.chain,
  place: frame.check.place,
  title: frame.check.title,
  form: frame.check.form,
});

export const unknown = (
  frame: Frame,
  missing: readonly string[],
  sentence: string,
  policies: readonly string[] = [],
): Judged => ({
  finding: {
    ...base(frame),
    verdict: 'unknown',
    sentence: frame.check.untilKnown ? `${frame.check.untilKnown} ${sentence}` : sentence,
    facts: [],
    guesses: [],
    missing,
    policies,
  },
});

/** Values that stop a numeric verdict, dealt with in one place. */
export function stopped(frame: Frame, values: readonly Value[]): Judged | undefined {
  const inapplicable = values.find((value) => value.state === 'inapplicable');
  if (inapplicable?.state === 'inapplicable') {
    return { notAsked: { id: frame.id, title: frame.check.title, reason: inapplicable.reason } };
  }
  let missing: ReadonlySet<string> = new Set();
  for (const value of values) if (value.state === 'missing') missing = union(missing, value.facts);
  const refused = values.find((value) => value.state === 'no-answer');
  if (missing.size > 0) return unknown(frame, [...missing], missingSentence([...missing]));
  if (refused?.state === 'no-answer') return unknown(frame, [], `No answer: ${refused.reason}`);
  return undefined;
}
