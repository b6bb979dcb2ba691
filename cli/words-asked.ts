/** Asking back what was typed for threads and cuts: a slip is not worked with until the person adds --anyway. */
import { oddWords } from '../engine/threads/index.ts';
import { Refusal } from './refusal.ts';

/**
 * Refuses a number far outside what is usual unless the person said `anyway`, and hands back a question for each that is a
 * little outside. `as` says how its word is written on the line.
 */
export function askBack(
  typed: Readonly<Record<string, string>>,
  anyway: boolean,
  as: (word: string) => string = (word) => word,
): readonly string[] {
  return oddWords(typed).flatMap(({ word, sentence, isFar }) => {
    if (!isFar) return [`Is this right? ${sentence}`];
    if (anyway) return [];
    throw new Refusal(`${as(word)}: ${sentence} If it is right as it stands, add --anyway.`);
  });
}
