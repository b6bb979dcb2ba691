/** The refit: the document of one machine, everything known and decided about it. */
import type { Basis, Problem } from '../quantity/types.ts';

/** A fact's value as a person gave it. Text is kept as typed and parsed when it is used. */
export type FactValue =
  | { readonly kind: 'quantity'; readonly text: string }
  | { readonly kind: 'choice'; readonly option: string }
  | { readonly kind: 'choices'; readonly options: readonly string[] }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'curve'; readonly text: string };

export interface Fact {
  readonly value: FactValue;
  readonly basis: Basis;
  /** Where it was read, who told it, how it was measured. */
  readonly note?: string;
}

export interface Part {
  /** Permanent; never used again, even after the part is removed. */
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  readonly facts: Readonly<Record<string, Fact>>;
}

/** A place in the machine that one part fills. */
export interface Place {
  /** Ids of the parts that could fill it, the old one included. */
  readonly options: readonly string[];
  /** The part that fills it now; 'none' when the machine has nothing there; null while that is not known. */
  readonly chosen: string | 'none' | null;
}

/** A group of places that work together. Later kinds (spindle) come in here. */
export interface Chain {
  /** 'X', 'Z'. */
  readonly id: string;
  readonly kind: 'axis';
  readonly places: Readonly<Record<string, Place>>;
}

export interface Refit {
  readonly format: 'fettle-refit';
  readonly version: 1;
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly machine: 'lathe' | 'mill' | 'other';
  /** Places of the whole machine: 'site', 'control', 'supply'. */
  readonly places: Readonly<Record<string, Place>>;
  readonly chains: readonly Chain[];
  readonly parts: Readonly<Record<string, Part>>;
  /** Policies changed from their usual value, as typed. */
  readonly policies: Readonly<Record<string, string>>;
}

/** One recorded change. `old` is what it replaced, so that it can be undone; null where nothing stood or stands. */
export type Change =
  | {
      readonly do: 'fact';
      readonly part: string;
      readonly fact: string;
      readonly old: Fact | null;
      readonly new: Fact | null;
    }
  | { readonly do: 'part'; readonly id: string; readonly old: Part | null; readonly new: Part | null }
  | {
      readonly do: 'place';
      readonly chain: string | null;
      readonly place: string;
      readonly old: Place | null;
      readonly new: Place | null;
    }
  | { readonly do: 'chain'; readonly id: string; readonly old: Chain | null; readonly new: Chain | null }
  | {
      readonly do: 'policy';
      readonly policy: string;
      readonly old: string | null;
      readonly new: string | null;
    }
  | { readonly do: 'machine'; readonly old: Refit['machine']; readonly new: Refit['machine'] }
  | {
      readonly do: 'title';
      readonly old: { readonly name: string; readonly about: string };
      readonly new: { readonly name: string; readonly about: string };
    };

/** A refusal of an edit because something else stands there now than its author saw. */
export interface ConflictProblem extends Problem {
  readonly conflict: {
    /** What is there now, in words: '1.32 ± 0.06 ohm (measured)'. */
    readonly now: string;
    /** The change that found something else. */
    readonly change: Change;
  };
}

export interface Edit {
  /** 1, 2, 3 … in the order of the log. */
  readonly number: number;
  readonly who: string;
  /** ISO 8601, given by the caller: the engine has no clock. */
  readonly when: string;
  /** Number of the newest edit its author had seen. */
  readonly basedOn: number;
  /** Changes that stand or fall together. */
  readonly changes: readonly Change[];
  /** In words: 'X motor: winding resistance 1.32 ± 0.06 ohm (measured)'. */
  readonly says: string;
}
