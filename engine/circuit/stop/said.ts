import type { StopFinding } from './findings.ts';

/** What a finding says: one sentence after the other, and apart where there are several. */
export const saidOf = (pieces: readonly string[]): Pick<StopFinding, 'sentence' | 'pieces'> => ({
  sentence: pieces.join(' '),
  ...(pieces.length > 1 ? { pieces } : {}),
});
