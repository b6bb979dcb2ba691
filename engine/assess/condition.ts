/** Whether a check is asked at all. */

import type { Condition } from '../checks/check.ts';
import { factSpec, PLACES } from '../parts/index.ts';
import { capital } from '../quantity/words.ts';
import { partIn, pathOf, readPath } from './context.ts';
import { resolve, type Scope } from './resolve.ts';

/** 'holds', a reason why not, or the facts that would tell. */
export function condition(
  scope: Scope,
  c: Condition,
): 'holds' | { reason: string } | { missing: readonly string[] } {
  if ('above' in c) {
    const value = resolve(scope, c.above);
    if (value.state === 'missing') return { missing: [...value.facts] };
    if (value.state === 'known') return value.value > 0 ? 'holds' : { reason: c.else };
    return value.state === 'curve' ? 'holds' : { reason: value.reason };
  }
  if ('fitted' in c) {
    const part = partIn(scope.context, c.place);
    if (part === null) return { missing: [pathOf(scope.context.chain, c.place)] };
    if ((part !== 'none') === c.fitted) return 'holds';
    const { name } = PLACES[c.place];
    return { reason: c.fitted ? `There is no ${name} here.` : `There is a ${name} here.` };
  }
  const reading = readPath(scope.context, c.place, c.fact);
  if ('known' in c) return reading.state === 'missing' ? { reason: c.else } : 'holds';
  if (reading.state === 'missing') return { missing: [...reading.facts] };
  if (reading.state === 'inapplicable') return { reason: reading.reason };
  if (reading.state === 'bad') return { missing: [reading.path] };
  const option = reading.read.kind === 'choice' ? reading.read.option : '';
  if (c.is.includes(option)) return 'holds';
  const spec = factSpec(c.place, c.fact);
  const words = spec?.kind === 'choice' ? spec.options[option] : option;
  const asked = spec ? capital(spec.name) : c.fact;
  return { reason: `${asked}: ${words ?? option}.` };
}
