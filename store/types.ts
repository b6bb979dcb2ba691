/** What a store can be asked. */
import type { Result } from '../engine/quantity/types.ts';
import type { Edit, Refit, StrippedPhoto } from '../engine/refit/index.ts';
import type { Kept, NewEdit, OpenRefit } from './log.ts';

export interface RefitLine {
  readonly id: string;
  readonly name: string;
  readonly machine: Refit['machine'];
  /** Number of the newest edit. */
  readonly head: number;
  /** When it was last edited, or made. */
  readonly changedAt: string;
}

export interface Author {
  readonly who: string;
  /** ISO 8601. */
  readonly when: string;
}

/**
 * Every call answers with a Result, and an ok for anything written means that it is on the disk. A refusal leaves
 * everything as it was; `reasonOf` tells those that come from the disk or folder, `conflictOf` edits that met.
 */
export interface Store {
  readonly listRefits: () => Result<readonly RefitLine[]>;
  readonly createRefit: (refit: Refit, who: string, when: string) => Result<OpenRefit>;
  readonly openRefit: (id: string) => Result<OpenRefit>;
  /** Refused with a conflict where what it changes was edited after `basedOn`, or is not what `old` says. */
  readonly appendEdit: (id: string, edit: NewEdit) => Result<Kept>;
  /** Takes an edit back by a new one; undoing that one does it again. */
  readonly undo: (id: string, number: number, by: Author) => Result<Kept>;
  /** Edits in order, both ends included; all of them without a range. */
  readonly history: (
    id: string,
    range?: { readonly from?: number; readonly to?: number },
  ) => Result<readonly Edit[]>;
  /** Number of the newest edit that this person has seen; 0 for one who has seen none. */
  readonly lastSeen: (id: string, who: string) => Result<number>;
  /** Seen up to `number`, or up to the newest edit. What was seen stays seen. */
  readonly markSeen: (id: string, who: string, number?: number) => Result<number>;
  /**
   * Keeps the picture without what else the file tells; the answer says what was taken out.
   * A photo is evidence: another one under the same name is refused.
   */
  readonly savePhoto: (id: string, name: string, bytes: Uint8Array) => Result<StrippedPhoto>;
  readonly readPhoto: (id: string, name: string) => Result<Uint8Array>;
  readonly listPhotos: (id: string) => Result<readonly string[]>;
  /** Takes in a `.refit` file with its history, under another id where `as` is given. */
  readonly importArchive: (bytes: Uint8Array, by: Author & { readonly as?: string }) => Result<OpenRefit>;
  /** `from` is the first edit in it: the oldest ones stay out of a history too long for a file. */
  readonly exportArchive: (id: string) => Result<{ readonly bytes: Uint8Array; readonly from: number }>;
  /** Folds the whole log and holds it against the state; the number of edits folded. */
  readonly verify: (id: string) => Result<number>;
  readonly close: () => void;
}
