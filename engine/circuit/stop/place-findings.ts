/** Where switches and guards stand. */
import type { Looked, StopFinding } from './findings.ts';
import { length, seconds } from './say-stopping.ts';
import { afterWhat } from './words.ts';

export function* placeFindings({ axes }: Looked): Generator<StopFinding> {
  for (const { motion, runOn, drops, marks, needs, after } of axes) {
    const title = `Do the switches of ${motion} stand far enough from the ends?`;
    const id = `stop.${motion}.switches`;
    if (runOn === Number.POSITIVE_INFINITY) {
      yield {
        id,
        title,
        verdict: 'fails',
        sentence: `No place of a switch would do: ${afterWhat(after)} ${motion} ${drops ? 'drops, nothing holds it' : 'never stands, nothing brakes it'}, and it ends at its hard stop.`,
      };
      continue;
    }
    const short = marks.filter(({ reserve }) => reserve !== undefined && reserve < 0);
    const known = marks.filter(({ reserve }) => reserve !== undefined);
    yield {
      id,
      title,
      verdict: short.length > 0 ? 'fails' : runOn === undefined || known.length === 0 ? 'unknown' : 'fits',
      sentence:
        short.length > 0
          ? short.map(({ name, reserve }) => `The ${name} stands ${length(-reserve!)} too far out.`).join(' ')
          : runOn === undefined
            ? `How far ${motion} runs on is not known: ${needs.join(', ')}.`
            : known.length === 0
              ? `${motion} runs on ${length(runOn)} (${afterWhat(after)}); where its switches stand is not known.`
              : `${motion} runs on ${length(runOn)} (${afterWhat(after)}); least reserve ${length(Math.min(...known.map(({ reserve }) => reserve!)))}.`,
    };
  }
}

export function* guardFindings({ guards, base }: Looked): Generator<StopFinding> {
  const locked = base.model.locks.length > 0;
  for (const { motion, needed, time, reserve, says } of guards) {
    if (needed === undefined || time === undefined) {
      yield {
        id: `stop.${motion}.guard`,
        title: `Is the guard of ${motion} far enough away?`,
        verdict: 'unknown',
        sentence: says,
      };
      continue;
    }
    yield {
      id: `stop.${motion}.guard`,
      title: `Is the guard of ${motion} far enough away?`,
      verdict: locked ? 'fits' : reserve === undefined ? 'unknown' : reserve < 0 ? 'fails' : 'fits',
      sentence: `${motion} stands after ${seconds(time)}; without a lock the guard would have to be ${length(needed)} away (ISO 13855). ${locked ? 'It is locked.' : says}`,
    };
  }
}
