/** What the page and the worker of the wiring say to each other. */
import type { Sheet, SymbolName } from '../../../engine/circuit/drawing/index.ts';
import type { List, ListId } from '../../../engine/circuit/lists/index.ts';
import type { Assumed, Looked, Resting, Settled } from '../../../engine/circuit/whole/index.ts';
import type { Fit, Proposal, ReadWiring, WiringFinding } from '../../../engine/circuit/wiring/index.ts';
import type { Refit, WiringWire } from '../../../engine/refit/types.ts';

export type WiringAsk =
  | { readonly n: number; readonly do: 'look'; readonly refit: Refit }
  | { readonly n: number; readonly do: 'draw' }
  | { readonly n: number; readonly do: 'stop-drawing' }
  /** What is looked through already stays; the rest is not gone on with. */
  | { readonly n: number; readonly do: 'stop-looking' }
  | { readonly n: number; readonly do: 'fitting'; readonly terminal: string }
  | { readonly n: number; readonly do: 'try'; readonly wire: WiringWire }
  | { readonly n: number; readonly do: 'propose' }
  | { readonly n: number; readonly do: 'list'; readonly list: ListId };

export interface Drawn {
  readonly sheets: readonly Sheet[];
  readonly symbols: readonly SymbolName[];
  readonly laidOut: number;
  /** Groups that stand on the sheets; fewer than there are where it was stopped. */
  readonly done: number;
  readonly of: number;
}

/** A proposal, and what of it can be recorded before its questions are answered. */
export interface Proposed {
  readonly proposal: Proposal;
  readonly settled: Settled;
  /** How things are connected where nobody has said it. */
  readonly assumed: readonly Assumed[];
  /** The usual values that what is found of it rests on. */
  readonly resting: Resting;
  /** The proposed wiring. */
  readonly read: ReadWiring;
}

/** What is being done, of how many pieces of work. */
export interface Step {
  readonly says: string;
  /** From 1. */
  readonly at: number;
  readonly of: number;
}

export type WiringReply =
  /** Not whole while the supply is not judged anew. */
  | { readonly n: number; readonly looked: Looked; readonly whole: boolean }
  | { readonly n: number; readonly step: Step }
  | { readonly n: number; readonly done: number; readonly all: number }
  | { readonly n: number; readonly drawn: Drawn | null }
  | { readonly n: number; readonly fitting: readonly Fit[] }
  /** What is said with the wire in that is not said without it. */
  | { readonly n: number; readonly tried: readonly WiringFinding[] }
  | { readonly n: number; readonly proposed: Proposed }
  | { readonly n: number; readonly list: List }
  | { readonly n: number; readonly problem: string };
