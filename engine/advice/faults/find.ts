/** Symptoms by what a person says of the machine in words of their own. Pure. */
import type { Symptom } from './types.ts';

const LONGEST = 200;
/** Words that say nothing about what is wrong. */
const EMPTY = new Set(
  'a all an and at axis be by comes do does from get gets go goes has i in is it its machine my of off on or something starts that the there this to when will with'.split(
    ' ',
  ),
);

const wordsOf = (text: string): string[] =>
  text
    .slice(0, LONGEST)
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word.length > 1);

/** 'drop', 'drops' and 'dropping' are the same word. */
const alike = (a: string, b: string): boolean => a === b || (stem(a) === stem(b) && stem(a).length > 2);
const stem = (word: string): string =>
  word
    .replace(/(ing|ed|es|s|y)$/, '')
    .replace(/([^aeiou])\1$/, '$1')
    .replace(/e$/, '');

/** The symptoms whose words fit best, the best first; none where nothing fits. */
export function findSymptoms(symptoms: readonly Symptom[], typed: string): Symptom[] {
  const wanted = wordsOf(typed).filter((word) => !EMPTY.has(word));
  const scored = symptoms.map((symptom) => {
    const { id, title, about, words } = symptom;
    const near = wordsOf(`${id} ${title}`);
    const own = wordsOf(words);
    const far = wordsOf(about);
    const score = wanted.reduce((sum, word) => {
      const has = (list: readonly string[]): boolean => list.some((each) => alike(each, word));
      return sum + (has(near) || has(own) ? 2 : has(far) ? 1 : 0);
    }, 0);
    return { symptom, score };
  });
  const best = Math.max(0, ...scored.map(({ score }) => score));
  if (best === 0) return [];
  return scored
    .filter(({ score }) => score > best / 2)
    .sort((a, b) => b.score - a.score)
    .map(({ symptom }) => symptom);
}

const BURNING = [
  'smoke',
  'smoking',
  'burn',
  'burnt',
  'burns',
  'burning',
  'fire',
  'flame',
  'flames',
  'sparks',
];

/** What comes before any test, where the words tell of danger. */
export const dangerIn = (typed: string): string | undefined =>
  wordsOf(typed).some((word) => BURNING.includes(word))
    ? 'Main switch off now, and leave it off until the cause is found; capacitors stay charged for ten minutes. Where it still smokes or burns, keep away and call for help.'
    : undefined;
