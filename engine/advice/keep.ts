/** Keep, repair or replace: each part of the machine with what speaks for each answer. */

import { type Assessment, type Finding, sayPath } from '../assess/index.ts';
import type { PlaceId } from '../parts/index.ts';
import { byVerdict } from '../quantity/verdict.ts';
import { andList } from '../quantity/words.ts';
import { everyPlace } from '../refit/place.ts';
import { isToBuy } from '../refit/to-buy.ts';
import type { Part } from '../refit/types.ts';
import { billOf } from './bill.ts';
import { cure } from './cure.ts';
import { decide } from './decide.ts';
import { factsAround, type PartFacts } from './part-facts.ts';
import { feedbackReasons } from './rules/feedback.ts';
import { motorReasons, motorTests } from './rules/motor.ts';
import { driveReasons, supplyReasons } from './rules/others.ts';
import { screwReasons, screwTests } from './rules/screw.ts';
import { swapsFor, TOGETHER } from './swap.ts';
import { testedPart } from './tested.ts';
import type { PartAdvice, Reason, TestResult } from './types.ts';

/** Add what tells about a kind of part: its file in rules/ and one line here. */
const REASONS: Readonly<Partial<Record<PlaceId, (facts: PartFacts) => Reason[]>>> = {
  motor: motorReasons,
  feedback: feedbackReasons,
  screw: screwReasons,
  drive: driveReasons,
  supply: supplyReasons,
};
const TESTS: Readonly<Partial<Record<PlaceId, (facts: PartFacts) => TestResult[]>>> = {
  motor: motorTests,
  screw: screwTests,
};

/** Wishes and surroundings: nothing to keep or to throw away. */
const NO_PARTS = new Set(['duty', 'spindle-duty', 'site', 'job']);

export interface Subject {
  readonly at: string;
  readonly chain: string | null;
  readonly place: string;
  readonly part: Part;
}

/** Every part there is something to decide about, in the order of the machine. */
export function subjects({ refit }: Assessment): Subject[] {
  const found: Subject[] = [];
  for (const { chain, name, place } of everyPlace(refit)) {
    const part = place.chosen && place.chosen !== 'none' ? refit.parts[place.chosen] : undefined;
    if (part && !NO_PARTS.has(name))
      found.push({ at: chain === null ? name : `${chain}.${name}`, chain, place: name, part });
  }
  return found;
}

/** Works in pieces, so that it can be shown and given up: each step tries one value. */
export function* seekAdvice(assessment: Assessment, subject: Subject): Generator<number, PartAdvice> {
  const { refit } = assessment;
  const { at, chain, place, part } = subject;
  const facts = factsAround(refit, chain);
  const tested = testedPart(refit, part.id);
  const tests = [...(TESTS[place as PlaceId]?.(facts) ?? []), ...tested.tests];
  const told = [...(REASONS[place as PlaceId]?.(facts) ?? []), ...tested.reasons];
  const asks = assessment.findings
    .filter((finding) => finding.chain === chain && finding.place === place)
    .sort((a, b) => byVerdict(a, b) || (a.margin ?? 99) - (b.margin ?? 99));
  const cures = yield* cure(
    assessment,
    place,
    asks.filter(({ verdict }) => verdict === 'fails'),
  );
  const swaps = swapsFor(assessment, chain, place);
  const group = chain !== null && TOGETHER.includes(place) ? TOGETHER : [place];
  const repairs =
    part.condition === 'worn' ||
    part.condition === 'dead' ||
    told.some(({ towards }) => towards === 'repair');
  const keeping = billOf(
    refit,
    subjects(assessment)
      .filter((each) => each.chain === chain && group.includes(each.place))
      .map((each) => ({
        chain,
        place: each.place,
        part: each.part.id,
        asks: each.place === place && repairs ? ['repairCost'] : [],
      })),
  );
  const decision = decide({
    name: part.name,
    condition: part.condition,
    toBuy: isToBuy(part),
    reasons: told,
    asks,
    cures,
    keeping,
    swaps,
  });
  const { recommendation } = decision;
  const reasons = [...decision.reasons, ...told];
  return {
    at,
    chain,
    place,
    part: part.id,
    name: part.name,
    condition: part.condition,
    notes: part.notes ?? '',
    recommendation,
    sentence: decision.sentence,
    reasons: [
      ...reasons.filter(({ towards }) => towards === recommendation),
      ...reasons.filter(({ towards }) => towards !== recommendation),
    ],
    tests,
    asks,
    cures,
    keeping,
    swaps,
    doubt: doubtOf(asks),
  };
}

function doubtOf(asks: readonly Finding[]): string[] {
  const doubt: string[] = [];
  const unknown = asks.filter(({ verdict }) => verdict === 'unknown');
  for (const { title, missing } of unknown) {
    const names = missing.slice(0, 4).map(sayPath);
    const more = missing.length - names.length;
    doubt.push(
      `“${title}” is not known: it waits for ${andList(more > 0 ? [...names, `${more} more`] : names) || 'facts that cannot be read'}.`,
    );
  }
  const guessed = asks.filter(({ guesses }) => guesses.length > 0);
  if (guessed.length > 0) {
    const paths = [...new Set(guessed.flatMap(({ guesses }) => guesses))];
    const names = paths.slice(0, 4).map(sayPath);
    const more = paths.length - names.length;
    doubt.push(
      `${andList(guessed.map(({ title }) => `“${title}”`))} ${guessed.length === 1 ? 'rests' : 'rest'} on guesses: ${andList(more > 0 ? [...names, `${more} more`] : names)}.`,
    );
  }
  return doubt;
}

/** The advice on one part in one go. */
export function adviseOn(assessment: Assessment, subject: Subject): PartAdvice {
  const search = seekAdvice(assessment, subject);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

/** The advice on every part; yields the share done. */
export function* seekAllAdvice(assessment: Assessment): Generator<number, PartAdvice[]> {
  const all = subjects(assessment);
  const found: PartAdvice[] = [];
  for (const [index, subject] of all.entries()) {
    const search = seekAdvice(assessment, subject);
    let step = search.next();
    for (; !step.done; step = search.next()) yield (index + step.value) / all.length;
    found.push(step.value);
    yield (index + 1) / all.length;
  }
  return found;
}
