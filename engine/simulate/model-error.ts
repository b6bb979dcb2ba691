/** A model or a move that cannot be simulated, with each problem by the name of its field. */
import type { Problem } from '../quantity/index.ts';

export class ModelError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(
      problems
        .map(({ where, message }) => (where === undefined ? message : `${where}: ${message}`))
        .join('\n'),
    );
    this.name = 'ModelError';
    this.problems = problems;
  }
}
