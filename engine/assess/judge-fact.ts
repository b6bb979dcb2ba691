/** A yes-or-no check against one chain. */

import type { FactCheck, Facts } from '../checks/check.ts';
import { factSpec, type PlaceId } from '../parts/index.ts';
import type { Verdict } from '../quantity/verdict.ts';
import { partIn, pathOf, readPath } from './context.ts';
import { base, type Frame, type Judged, unknown } from './frame.ts';
import type { Scope } from './resolve.ts';
import { type Known, restsOf } from './value.ts';
import { missingSentence } from './words.ts';

export function judgeFact(scope: Scope, frame: Frame, check: FactCheck): Judged {
  const missing = new Set<string>();
  const facts = new Set<string>();
  const bases: Known['basis'][] = [];
  const option = (place: PlaceId, name: string) => {
    const reading = readPath(scope.context, place, name);
    if (reading.state === 'missing') for (const path of reading.facts) missing.add(path);
    else if (reading.state === 'bad') missing.add(reading.path);
    else if (reading.state === 'read') {
      facts.add(reading.path);
      bases.push(reading.fact.basis);
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
  };
  const judged = check.judge(reader);
  if (!judged) return unknown(frame, [...missing], missingSentence([...missing]));
  const verdict: Verdict = judged.answer === 'yes' ? 'fits' : judged.answer === 'no' ? 'fails' : 'tight';
  const paths = [...facts].sort();
  const { basis } = restsOf(bases.map((b) => ({ facts, policies: new Set<string>(), basis: b })));
  return {
    finding: {
      ...base(frame),
      verdict,
      sentence: judged.sentence,
      ...(basis ? { basis } : {}),
      facts: paths,
      guesses: [],
      missing: [],
      policies: [],
    },
  };
}
