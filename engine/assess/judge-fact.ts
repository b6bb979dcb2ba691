/** A yes-or-no check against one chain. */

import type { FactCheck, Facts } from '../checks/check.ts';
import { factSpec, type PlaceId } from '../parts/index.ts';
import { preferred, readable } from '../quantity/index.ts';
import type { Verdict } from '../quantity/verdict.ts';
import { partIn, pathOf, readPath } from './context.ts';
import { base, type Frame, type Judged, unknown } from './frame.ts';
import { resolve, type Scope } from './resolve.ts';
import { NOTHING, type Rests, restsOf, uncertainty } from './value.ts';
import { missingSentence } from './words.ts';

export function judgeFact(scope: Scope, frame: Frame, check: FactCheck): Judged {
  const missing = new Set<string>();
  const rests: Rests[] = [];
  let refused: string | undefined;
  const option = (place: PlaceId, name: string) => {
    const reading = readPath(scope.context, place, name);
    if (reading.state === 'missing') for (const path of reading.facts) missing.add(path);
    else if (reading.state === 'bad') missing.add(reading.path);
    else if (reading.state === 'read') {
      rests.push({ facts: new Set([reading.path]), policies: NOTHING, basis: reading.fact.basis });
      return reading.read;
    }
    return undefined;
  };
  const reader: Facts = {
    choice: (place, name) => {
      const read = option(place, name);
      return read?.kind === 'choice' ? read.option : undefined;
    },
    choices: (place, name) => {
      const read = option(place, name);
      return read?.kind === 'choices' ? read.options : undefined;
    },
    number: (place, name) => {
      const read = option(place, name);
      return read?.kind === 'quantity' ? read.value : undefined;
    },
    say: (place, name, id) => {
      const spec = factSpec(place, name);
      return (spec && 'options' in spec ? spec.options[id] : undefined) ?? id;
    },
    fitted: (place) => {
      const part = partIn(scope.context, place);
      if (part === null) missing.add(pathOf(scope.context.chain, place));
      return part === null ? undefined : part !== 'none';
    },
    worked: (name) => {
      const ref = check.reads?.[name];
      if (!ref) throw new Error(`${check.id} reads no ${name}`);
      const value = resolve(scope, ref);
      if (value.state === 'missing') for (const path of value.facts) missing.add(path);
      if (value.state === 'no-answer') refused ??= value.reason;
      if (value.state !== 'known') return undefined;
      rests.push(value);
      return { value: value.value, doubt: uncertainty(value.doubt) };
    },
    amount: (value, unit, half = 0) => readable(value, preferred(unit, scope.system), { half }),
  };
  const judged = check.judge(reader);
  if (!judged)
    return unknown(
      frame,
      [...missing],
      refused === undefined || missing.size > 0 ? missingSentence([...missing]) : `No answer: ${refused}`,
    );
  const verdict: Verdict = judged.answer === 'yes' ? 'fits' : judged.answer === 'no' ? 'fails' : 'tight';
  const { basis, facts, policies } = restsOf(rests);
  return {
    finding: {
      ...base(frame),
      verdict,
      sentence: judged.sentence,
      ...(basis ? { basis } : {}),
      facts: [...facts].sort(),
      guesses: [],
      missing: [],
      policies: [...policies].sort(),
    },
  };
}
