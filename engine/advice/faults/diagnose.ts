/** From a symptom and answers to the causes that remain and the test worth doing next. Pure. */

import { nearest } from '../../quantity/nearest.ts';
import { own } from '../../quantity/own.ts';
import { ok, type Result, refuse } from '../../quantity/types.ts';
import type { Cause, FaultTest, Symptom } from './types.ts';

/** The answer of somebody who cannot do a test: it tells nothing and is not proposed again. */
export const SKIP = 'skip';

export interface Remaining extends Cause {
  readonly id: string;
  /** Chance that it is this, of what remains; as good as the guesses of how often each is. */
  readonly share: number;
}

export interface Proposed {
  readonly id: string;
  readonly test: FaultTest;
  /** Why this one next, in a sentence. */
  readonly why: string;
  /** Bits it is expected to tell. */
  readonly bits: number;
  /** Answers that can still be given; the others contradict what was answered before. */
  readonly possible: readonly string[];
}

export interface Diagnosis {
  readonly symptom: string;
  readonly title: string;
  readonly asked: readonly { readonly id: string; readonly question: string; readonly answer: string }[];
  /** Likeliest first. */
  readonly remaining: readonly Remaining[];
  readonly next?: Proposed;
  /** What it comes to, when nothing more is to be tested. */
  readonly end?: { readonly is: 'cause' | 'ask'; readonly sentence: string };
}

export type Answers = Readonly<Record<string, string>>;

/** Chance of an answer where the cause is given: shared evenly among the answers the cause goes with. */
function chance(test: FaultTest, answer: string, cause: string): number {
  const all = Object.entries(test.answers);
  const with_ = all.filter(([, { fits }]) => fits.includes(cause)).map(([id]) => id);
  if (with_.length === 0) return 1 / all.length;
  return with_.includes(answer) ? 1 / with_.length : 0;
}

const entropy = (shares: readonly number[]): number =>
  shares.reduce((sum, p) => sum - (p > 0 ? p * Math.log2(p) : 0), 0);

interface Weighed {
  readonly id: string;
  readonly weight: number;
}

function narrowed(weighed: readonly Weighed[], test: FaultTest, answer: string): Weighed[] {
  return weighed.flatMap(({ id, weight }) => {
    const now = weight * chance(test, answer, id);
    return now > 0 ? [{ id, weight: now }] : [];
  });
}

const total = (weighed: readonly Weighed[]): number => weighed.reduce((sum, { weight }) => sum + weight, 0);
const shares = (weighed: readonly Weighed[]): number[] => {
  const sum = total(weighed);
  return weighed.map(({ weight }) => weight / sum);
};

/** Below this a test tells nothing worth doing it for. */
const NOTHING = 1e-6;

/**
 * Refuses a test or an answer the symptom does not have. Answers that contradict each other leave no cause; that is an
 * end like any other, with whom to ask.
 */
export function diagnose(symptom: Symptom, answers: Answers): Result<Diagnosis> {
  let weighed: Weighed[] = Object.entries(symptom.causes).map(([id, { often }]) => ({ id, weight: often }));
  const asked: { id: string; question: string; answer: string }[] = [];
  for (const [id, answer] of Object.entries(answers)) {
    const test = own(symptom.tests, id);
    if (!test) return unknown('test', id, Object.keys(symptom.tests));
    if (answer === SKIP) {
      asked.push({ id, question: test.question, answer: 'not done' });
      continue;
    }
    const given = own(test.answers, answer);
    if (!given) return unknown(`answer to “${test.question}”`, answer, [...Object.keys(test.answers), SKIP]);
    asked.push({ id, question: test.question, answer: given.says });
    weighed = narrowed(weighed, test, answer);
  }
  const parts = shares(weighed);
  const remaining = weighed
    .map(({ id }, i): Remaining => ({ id, ...symptom.causes[id]!, share: parts[i]! }))
    .sort((a, b) => b.share - a.share);
  const base = { symptom: symptom.id, title: symptom.title, asked, remaining };
  if (remaining.length === 0)
    return ok({
      ...base,
      end: {
        is: 'ask',
        sentence: `These answers do not go together, or it is something that is not on this list. Go back to the answer you are least sure of; else ask ${symptom.ask}.`,
      },
    });
  if (remaining.length === 1)
    return ok({
      ...base,
      end: { is: 'cause', sentence: `${remaining[0]!.says}. ${remaining[0]!.mend}` },
    });
  const next = propose(symptom, weighed, answers);
  if (next) return ok({ ...base, next });
  const names = remaining.map(({ says }) => says.charAt(0).toLowerCase() + says.slice(1));
  return ok({
    ...base,
    end: {
      is: 'ask',
      sentence: `No test is left that would tell these apart: ${names.join('; ')}. Begin with the first, or ask ${symptom.ask}.`,
    },
  });
}

/** The test that tells most for its trouble; of equals the lesser trouble. */
function propose(symptom: Symptom, weighed: readonly Weighed[], answers: Answers): Proposed | undefined {
  const before = entropy(shares(weighed));
  const sum = total(weighed);
  let best: (Proposed & { worth: number }) | undefined;
  for (const [id, test] of Object.entries(symptom.tests)) {
    if (Object.hasOwn(answers, id)) continue;
    const possible: string[] = [];
    let after = 0;
    for (const answer of Object.keys(test.answers)) {
      const left = narrowed(weighed, test, answer);
      if (left.length === 0) continue;
      possible.push(answer);
      after += (total(left) / sum) * entropy(shares(left));
    }
    const bits = before - after;
    if (bits < NOTHING) continue;
    const worth = bits / test.trouble;
    if (!best || worth > best.worth || (worth === best.worth && test.trouble < best.test.trouble))
      best = { id, test, bits, possible, worth, why: why(test, weighed, bits) };
  }
  if (!best) return undefined;
  const { worth: _, ...proposed } = best;
  return proposed;
}

const EFFORT = [
  '',
  'a look',
  'a few minutes',
  'half an hour',
  'a strip-down or a helper',
  'somebody else’s tool',
];

function why(test: FaultTest, weighed: readonly Weighed[], bits: number): string {
  const halves = bits >= 0.8 ? 'at least halves' : bits >= 0.3 ? 'narrows' : 'narrows a little';
  return `It costs ${EFFORT[test.trouble]} and ${halves} what it can be (${weighed.length} causes remain).`;
}

function unknown(what: string, name: string, names: readonly string[]): Result<never> {
  const shown = name.length > 40 ? `${name.slice(0, 40)}…` : name;
  const near = nearest(name.slice(0, 60), names);
  return refuse({
    code: 'unknown-name',
    message: `There is no ${what} called “${shown}”. ${near ? `Did you mean “${near}”?` : `There are: ${names.join(', ')}.`}`,
    ...(near ? { suggestion: near } : {}),
  });
}
