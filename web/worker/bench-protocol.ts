/** What the page asks about bench tests. */
import type { Measurement, Method, Outcome, Taken } from '../../engine/evidence/index.ts';
import type { Result } from '../../engine/quantity/index.ts';
import type { Change } from '../../engine/refit/types.ts';

/** A method without what works it out. */
export type BenchSheet = Omit<Method, 'run'>;

export interface Measured extends Omit<Measurement, 'method'> {
  /** Id of the measurement to record anew; absent for a new one. */
  readonly again?: string;
}

export interface BenchRecording {
  /** Of the measurement. */
  readonly id: string;
  /** One edit. */
  readonly changes: readonly Change[];
  /** Facts that it sets. */
  readonly paths: readonly string[];
  readonly questions: readonly string[];
  /** What looks like a slip, to be asked before it is recorded. */
  readonly askBack: readonly string[];
}

export type BenchAsk =
  | { readonly do: 'list' }
  | { readonly do: 'run'; readonly method: string; readonly taken: Taken }
  | { readonly do: 'record'; readonly method: string; readonly measured: Measured };

export interface BenchAnswer {
  readonly sheets?: readonly BenchSheet[];
  readonly outcome?: Result<Outcome>;
  readonly recording?: Result<BenchRecording>;
}
