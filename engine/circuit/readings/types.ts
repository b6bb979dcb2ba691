/** The sheet for ringing a wiring out: what the meter should show, in the order of working. */

export interface Band {
  readonly low: number;
  /** `Infinity`: no path, the meter shows OL. */
  readonly high: number;
}

export type Measured = 'ohms' | 'volts';

export interface RingRow {
  /** The same as long as step and terminals are. */
  readonly id: string;
  readonly measured: Measured;
  /** Where the red lead goes: any of these, they are one piece of metal. The first is the one to take. */
  readonly at: readonly string[];
  /** Where the black lead goes. */
  readonly against: string;
  /** Wire it tells of, where it is about one. */
  readonly wire?: string;
  /** Undefined where a meter shows nothing that can be judged. */
  readonly expect?: Band;
  /** 'under 1 Ω', 'no path (OL)', '23.5 to 24.5 V', 'not meaningful: electronics of A1; disconnect'. */
  readonly says: string;
  /** What to do first: 'with S1 pressed'. */
  readonly when?: string;
  /** What another reading of this row means: less, more, none at all; empty where nothing can be said. */
  readonly otherwise: string;
}

/** Steps that are alike: on paper they stand in one table, each under what begins it. */
export interface Batch {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly cautions: readonly string[];
}

export interface RingStep {
  readonly id: string;
  readonly title: string;
  /** How to work. */
  readonly says: string;
  readonly cautions: readonly string[];
  readonly powered: boolean;
  readonly batch?: Batch;
  /** What begins the step, in short: 'A1.out1 on; Spindle forward pulls in'. Only of one in a batch. */
  readonly first?: string;
  readonly rows: readonly RingRow[];
}

export interface RingSheet {
  readonly cautions: readonly string[];
  /** 0 V of the control supply; undefined where none is drawn. */
  readonly common?: string;
  /** Protective earth; undefined where none is drawn. */
  readonly earth?: string;
  readonly steps: readonly RingStep[];
  /** What could not be worked out, in words. */
  readonly notes: readonly string[];
}
