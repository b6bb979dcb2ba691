/** What a person can put right: thrown by commands, said in one sentence, exit 2. */
import type { Result } from '../engine/quantity/index.ts';

export class Refusal extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'Refusal';
  }
}

/** The value, or its problem as a refusal; `before` says what it was about. */
export function need<T>(result: Result<T>, before = ''): T {
  if (result.ok) return result.value;
  throw new Refusal(`${before}${result.problem.message}`);
}
