/** Runs a method in a test. */
import { METHOD } from './index.ts';
import { runMethod } from './run.ts';
import type { Outcome, QuantityResult, Taken } from './types.ts';

type Given = Taken['given'];
type Readings = Readonly<Record<string, readonly (string | number)[]>>;

const taken = (given: Given, readings: Readings, aside: readonly number[]): Taken => ({
  given,
  readings: Object.fromEntries(Object.entries(readings).map(([key, each]) => [key, each.map(String)])),
  aside,
});

/** The outcome; fails the test with the refusal where there is none. */
export function outcome(
  id: string,
  given: Given,
  readings: Readings = {},
  aside: readonly number[] = [],
): Outcome {
  const ran = runMethod(METHOD.get(id)!, taken(given, readings, aside));
  if (!ran.ok) throw new Error(`${ran.problem.where}: ${ran.problem.message}`);
  return ran.value;
}

/** The sentence of the refusal; fails the test where there is none. */
export function refusal(id: string, given: Given, readings: Readings = {}): string {
  const ran = runMethod(METHOD.get(id)!, taken(given, readings, []));
  if (ran.ok) throw new Error(`not refused: ${ran.value.results.map(({ text }) => text).join(', ')}`);
  return `${ran.problem.where}: ${ran.problem.message}`;
}

export function quantity({ results }: Outcome, key: string): QuantityResult {
  const found = results.find((each) => each.key === key);
  if (found?.kind !== 'quantity')
    throw new Error(`no number ${key} among ${results.map((each) => each.key).join(', ')}`);
  return found;
}

export const levels = ({ verdicts }: Outcome): string[] => verdicts.map(({ level }) => level);
