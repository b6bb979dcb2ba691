/** A check against one chain: its finding, or why it is not asked. */
import type { Check } from '../checks/check.ts';
import { condition } from './condition.ts';
import { type Frame, type Judged, unknown } from './frame.ts';
import { judgeFact } from './judge-fact.ts';
import { judgeBand, judgeRatio } from './judge-numbers.ts';
import type { Scope } from './resolve.ts';
import { missingSentence } from './words.ts';

const idOf = (scope: Scope, check: Check): string => `${scope.context.chain?.id ?? 'machine'}.${check.id}`;

/** Asks one check of one chain (or of the machine). */
export function judge(scope: Scope, check: Check): Judged {
  const frame: Frame = { id: idOf(scope, check), check, chain: scope.context.chain?.id ?? null };
  let missing: readonly string[] = [];
  for (const each of check.onlyIf ?? []) {
    const state = condition(scope, each);
    if (state === 'holds') continue;
    if ('reason' in state) return { notAsked: { id: frame.id, title: check.title, reason: state.reason } };
    if (missing.length === 0) missing = state.missing;
  }
  if (missing.length > 0) return unknown(frame, missing, missingSentence(missing));
  switch (check.form) {
    case 'ratio':
      return judgeRatio(scope, frame, check);
    case 'band':
      return judgeBand(scope, frame, check);
    case 'fact':
      return judgeFact(scope, frame, check);
  }
}
