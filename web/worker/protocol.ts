/** What the page asks the engine in its worker, and what it answers. Plain data only. */

import type { MoveSetting } from '../../engine/advice/axis-model.ts';
import type { PartAdvice, Worth } from '../../engine/advice/index.ts';
import type { Finding, NotAsked, Question, Remedy, Step, Why } from '../../engine/assess/index.ts';
import type { Basis, Problem, UnitSystem } from '../../engine/quantity/index.ts';
import type { Counts } from '../../engine/quantity/verdict.ts';
import type { Change, Edit, Refit } from '../../engine/refit/types.ts';
import type { BenchAnswer, BenchAsk } from './bench-protocol.ts';

/** Everything a screen shows of one state of a refit. */
export interface Snapshot {
  readonly findings: readonly Finding[];
  readonly notAsked: readonly NotAsked[];
  readonly problems: readonly Problem[];
  readonly questions: readonly Question[];
  readonly next: readonly Step[];
  /** By axis id, and 'machine'. */
  readonly answers: Readonly<Record<string, string>>;
  readonly counts: Counts;
}

/**
 * A snapshot as it travels. A number stands for a finding at that place of the snapshot before it; a list that is left out is
 * the one before. So a keystroke sends only what it changed, and the page knows what stayed the same.
 */
export interface SnapshotChange extends Pick<Snapshot, 'answers' | 'counts'> {
  readonly findings: readonly (Finding | number)[];
  readonly notAsked?: readonly NotAsked[];
  readonly problems?: readonly Problem[];
  readonly questions?: readonly Question[];
  readonly next?: readonly Step[];
}

/** How a typed text was understood. */
export interface Reading {
  readonly path: string;
  readonly text: string;
  readonly problem?: Problem;
  readonly notes: readonly string[];
  readonly questions: readonly string[];
  readonly changes: readonly Change[];
}

/** What can be asked. An answer's snapshot travels beside it, as a change. */
export interface Asked {
  open: { ask: { refit: Refit; system: UnitSystem }; answer: Snapshot };
  /** Takes over edits that are on the disk. */
  apply: { ask: { edits: readonly Edit[] }; answer: { refit: Refit; snapshot: Snapshot } };
  /** Tries a text without recording it; null goes back to what is recorded. */
  draft: {
    ask: { path: string; text: string; basis?: Basis; note?: string } | null;
    answer: { reading: Reading | null; snapshot: Snapshot };
  };
  /** Tries several changes, as a remedy asks. */
  attempt: { ask: { changes: readonly Change[] }; answer: Snapshot };
  system: { ask: { system: UnitSystem }; answer: Snapshot };
  /** Draws what is in doubt in what is shown; undefined where something else is shown by then. */
  settle: { ask: null; answer: { isRecorded: boolean; snapshot: Snapshot } | undefined };
  why: { ask: { id: string }; answer: Why | null };
  /** Slow: comes in pieces with progress, and can be cancelled. */
  remedies: { ask: { id: string }; answer: readonly Remedy[] };
  remedyChanges: { ask: { remedy: Remedy }; answer: readonly Change[] };
  /** Slow, as remedies. */
  keep: { ask: null; answer: readonly PartAdvice[] };
  worth: { ask: null; answer: Worth };
  pictures: { ask: { chain: string }; answer: readonly unknown[] };
  /** The axis as the simulation wants it, with other parts in some of its places. */
  axisModel: {
    ask: { chain: string; parts: Readonly<Record<string, string>> };
    answer: MoveSetting;
  };
  /** Bench tests: what there are, what readings come to, what recording them would change. */
  bench: { ask: BenchAsk; answer: BenchAnswer };
}

export type Ask = {
  [K in keyof Asked]: { readonly n: number; readonly do: K; readonly ask: Asked[K]['ask'] };
}[keyof Asked];

export type Reply =
  | { readonly n: number; readonly answer: unknown; readonly change?: SnapshotChange }
  | { readonly n: number; readonly progress: number }
  | { readonly n: number; readonly fault: string };

export interface Cancel {
  readonly cancel: number;
}
