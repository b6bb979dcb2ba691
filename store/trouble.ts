/** What can go wrong with a disk, in sentences that say what to do. */
import { type Problem, type Result, refuse } from '../engine/quantity/types.ts';

export type TroubleReason =
  | 'in-use'
  | 'full'
  | 'not-allowed'
  | 'unwritable'
  | 'damaged'
  | 'newer'
  | 'closed'
  | 'missing';

/** A refusal that comes from the folder rather than from what was asked. Nothing was changed. */
export interface TroubleProblem extends Problem {
  readonly reason: TroubleReason;
}

const WORDS: Readonly<Record<TroubleReason, string>> = {
  'in-use': 'Another Fettle has this folder open. Close it there first.',
  full: 'The disk is full, so this was not kept; everything kept before is still there. Make room and do it again.',
  'not-allowed': 'Fettle may not write in this folder. Allow it, or choose another folder.',
  unwritable:
    'The disk could not be written or read, so this was not kept; what was kept before was not changed. Look after the disk before going on.',
  damaged: 'The file of refits in this folder is damaged or is not one of Fettle. Put back a copy of it.',
  newer: 'This folder was written by a newer Fettle. Bring Fettle up to date and open it again.',
  closed: 'The folder is closed already.',
  missing: 'There is no such folder, and it could not be made.',
};

export const trouble = (reason: TroubleReason, message: string = WORDS[reason]): Result<never> => {
  const problem: TroubleProblem = { code: 'malformed', message, reason };
  return refuse(problem);
};

/** Why the folder refused, where that is what happened. */
export const reasonOf = (problem: Problem): TroubleReason | undefined =>
  'reason' in problem ? (problem as TroubleProblem).reason : undefined;

/** SQLite's primary result codes and the system's error names that a disk can bring about. */
const BY_CODE: Readonly<Record<string, TroubleReason>> = {
  '5': 'in-use',
  '8': 'not-allowed',
  '10': 'unwritable',
  '11': 'damaged',
  '13': 'full',
  '14': 'not-allowed',
  '23': 'not-allowed',
  '26': 'damaged',
  ENOSPC: 'full',
  EDQUOT: 'full',
  EACCES: 'not-allowed',
  EPERM: 'not-allowed',
  EROFS: 'not-allowed',
  EIO: 'unwritable',
  ENOENT: 'missing',
  ENOTDIR: 'missing',
  EEXIST: 'missing',
};

/** The reason behind an error of SQLite or of the file system; undefined for faults of ours. */
export function reasonFor(fault: unknown): TroubleReason | undefined {
  if (!(fault instanceof Error)) return undefined;
  // Only what was stored is parsed without being looked at first.
  if (fault instanceof SyntaxError) return 'damaged';
  const { code, rawCode } = fault as Error & { code?: unknown; rawCode?: unknown };
  // Extended codes keep the primary one in their lowest byte.
  if (typeof rawCode === 'number') return BY_CODE[String(rawCode & 0xff)];
  if (typeof code === 'string' && Object.hasOwn(BY_CODE, code)) return BY_CODE[code];
  return /Unable to open connection.*: 14\b/.test(fault.message) ? 'not-allowed' : undefined;
}
