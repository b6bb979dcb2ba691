/** What the server and the screen say to each other, as JSON. Types only; docs/server.md has the routes. */
import type { Problem, ProblemCode } from '../quantity/types.ts';
import type { Change, Edit, Refit } from './types.ts';

/** Refusals that come from the way a request was made, or from the disk, rather than from what a person typed. */
export type WireCode =
  | ProblemCode
  | 'conflict'
  | 'not-found'
  | 'method-not-allowed'
  | 'unsupported-type'
  | 'not-json'
  | 'foreign-host'
  | 'cross-site'
  | 'disk'
  | 'closing'
  | 'own-mistake';

/** `message` is a whole sentence for a person; `where` the path within what was sent. */
export type WireProblem = Omit<Problem, 'code'> & { readonly code: WireCode };

/** Every answer from 400 on, but for a conflict, which says more. */
export interface Refused {
  readonly problem: WireProblem;
}

/** 409 to an edit or an undoing: something it changes was edited since. */
export interface Conflicted extends Refused {
  /** What stands there now, in words: '1.32 ± 0.06 ohm (measured)'. Absent for a photo. */
  readonly now?: string;
  /** Number of the newest edit. Absent for a photo. */
  readonly head?: number;
}

/** GET /api/hello */
export interface Hello {
  readonly version: string;
  /** The last step of the folder's path, never the whole. */
  readonly dataFolderName: string;
  /** Ids of the sample refits that are there. */
  readonly samples: readonly string[];
}

export interface RefitListed {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly machine: Refit['machine'];
  /** How many edits it has had. */
  readonly edits: number;
  /** ISO 8601. */
  readonly changed: string;
  /** Why it cannot be opened, where it cannot; `about` is empty then. */
  readonly problem?: WireProblem;
}

/** GET /api/refits */
export interface RefitList {
  readonly refits: readonly RefitListed[];
}

/** POST /api/refits */
export interface NewRefitAsked {
  readonly name: string;
  readonly about?: string;
  readonly machine: Refit['machine'];
  /** 'X', 'Z'. */
  readonly axes: readonly string[];
  /** Whether it has a spindle S as well. */
  readonly spindle?: boolean;
  /** Who makes it; 'somebody' when absent. */
  readonly who?: string;
}

/** 201 to POST /api/refits */
export interface RefitMade {
  readonly id: string;
}

/** 201 to POST /api/import */
export interface RefitImported extends RefitMade {
  /** Whether it got another id than the one in the file, because that one was taken. */
  readonly renamed: boolean;
}

/** GET /api/refits/:id */
export interface RefitOpened {
  readonly refit: Refit;
  /** Number of the newest edit in it; 0 before the first. */
  readonly head: number;
}

/** POST /api/refits/:id/edits */
export interface EditAsked {
  readonly who: string;
  /** Number of the newest edit its author had seen. */
  readonly basedOn: number;
  readonly changes: readonly Change[];
}

/** POST /api/refits/:id/undo */
export interface UndoAsked {
  readonly who: string;
  /** The edit to take back; taking back that one does it again. */
  readonly number: number;
}

/** 201 to an edit or an undoing, once it is on the disk; also the data of the event 'edit'. */
export interface EditKept {
  readonly edit: Edit;
  readonly head: number;
}

/** GET /api/refits/:id/edits?from=&to= : at most a page, newest last. */
export interface EditPage {
  readonly edits: readonly Edit[];
  readonly head: number;
}

/** The data of the event 'head', the first on every live stream. */
export interface LiveHead {
  readonly head: number;
}

/** GET /api/refits/:id/seen?who= and what POST to it answers */
export interface Seen {
  readonly who: string;
  readonly number: number;
}

/** POST /api/refits/:id/seen; without a number, up to the newest edit. */
export interface SeenAsked {
  readonly who: string;
  readonly number?: number;
}

/** GET /api/refits/:id/photos */
export interface PhotoList {
  readonly photos: readonly string[];
}

/** 201 to PUT /api/refits/:id/photos/:name */
export interface PhotoKept {
  readonly name: string;
  /** What was taken out of it before it was kept, in words: 'location', 'serial numbers'. */
  readonly stripped: readonly string[];
}
