/** What the page asks of the workers that simulate, and what they answer. */

import type { Problem } from '../../engine/quantity/types.ts';
import type {
  AxisModel,
  Band,
  Hunting,
  Margins,
  Move,
  Run,
  Spread,
  StartingGains,
} from '../../engine/simulate/index.ts';

export interface LoopAnswer {
  readonly margins: Margins | null;
  readonly gains: StartingGains | null;
}

export interface MoveAsked {
  run: {
    ask: { model: AxisModel; second?: AxisModel; move: Move; points: number; settleBand: number };
    answer: Run;
  };
  band: {
    ask: {
      model: AxisModel;
      second?: AxisModel;
      spread: readonly Spread[];
      move: Move;
      runs: number;
      first: number;
    };
    answer: Band;
  };
  loop: { ask: { model: AxisModel }; answer: LoopAnswer };
  hunting: { ask: { model: AxisModel }; answer: Hunting | null };
}

export type MoveAsk = {
  [K in keyof MoveAsked]: { readonly n: number; readonly do: K; readonly ask: MoveAsked[K]['ask'] };
}[keyof MoveAsked];

export type MoveReply =
  | { readonly n: number; readonly answer: MoveAsked[keyof MoveAsked]['answer'] }
  | { readonly n: number; readonly progress: number }
  /** The model or the move cannot be. */
  | { readonly n: number; readonly problems: readonly Problem[] };
