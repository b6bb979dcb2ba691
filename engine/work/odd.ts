/** Numbers typed for a piece of work that are hardly what was meant. */
import { oddWords } from '../threads/index.ts';
import { fieldsOf, type WorkKind } from './fields.ts';

export interface OddField {
  readonly key: string;
  /** A question, whole sentences. */
  readonly sentence: string;
  /** So far outside what is usual that a slip of the hand is likelier. */
  readonly isFar: boolean;
}

/** What is to be asked back of the fields that count for what is typed so far. */
export function oddFields(kind: WorkKind, settings: Readonly<Record<string, string>>): readonly OddField[] {
  const used = new Set(fieldsOf(kind, settings).map(({ key }) => key));
  return oddWords(settings)
    .filter(({ word }) => used.has(word))
    .map(({ word, sentence, isFar }) => ({ key: word, sentence, isFar }));
}
