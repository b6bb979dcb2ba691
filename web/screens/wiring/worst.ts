/** What is worst of everything that is said of a device, a terminal or a wire. */

import type { Verdict, WiringFinding } from '../../../engine/circuit/wiring/index.ts';
import { WORST_FIRST } from '../../../engine/quantity/verdict.ts';

const rank = (verdict: Verdict): number => WORST_FIRST.indexOf(verdict);

/** Only what is not fine; a device counts for its terminals. */
export function worstOf(findings: readonly WiringFinding[]): ReadonlyMap<string, Verdict> {
  const worst = new Map<string, Verdict>();
  for (const { verdict, about } of findings) {
    if (verdict === 'fits') continue;
    for (const id of new Set(about.flatMap((each) => [each, each.split('.')[0]!]))) {
      const before = worst.get(id);
      if (before === undefined || rank(verdict) < rank(before)) worst.set(id, verdict);
    }
  }
  return worst;
}
