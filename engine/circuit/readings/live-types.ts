/** What is on in a wiring under power, and what is read of it. */
import type { Point } from '../network/index.ts';
import type { SteadyMesh } from '../network/steady-mesh.ts';

/** What a person or the machine has switched on. */
export interface Switched {
  /** The mains at the inlet. */
  readonly mains: boolean;
  /** Ids of outputs that are on. */
  readonly outputs: ReadonlySet<string>;
  /** Ids of devices whose own logic has closed its contacts: safety relays, drives that are ready. */
  readonly logic: ReadonlySet<string>;
}

/** The same with all that follows of itself. */
export interface Situation extends Switched {
  /** Devices whose coil has pulled in. */
  readonly pulled: ReadonlySet<string>;
  /** Sources that give. */
  readonly giving: ReadonlySet<string>;
  /** Devices that have no power to drive their outputs with. */
  readonly unfed: ReadonlySet<string>;
}

/** All sources at their lowest (−1) or highest. */
export type Share = -1 | 1;

/** Volts by the number of a node in the order of the wiring; −1 is nowhere. */
export interface Reading {
  /** Against another node, or against 0 V of its piece; undefined where no path joins them or there is no 0 V. */
  level(node: number, against?: number): number | undefined;
  /** Whether a path joins two nodes. */
  together(a: number, b: number): boolean;
}

/** One solving. */
export interface Round {
  readonly situation: Situation;
  readonly share: Share;
  readonly reading: Reading;
  /** Absent where only what changes was worked out. */
  readonly whole?: Point;
  /** From which states near it are worked out. */
  readonly mesh?: SteadyMesh;
}

export interface LiveState {
  readonly low: Reading;
  readonly high: Reading;
  readonly pulled: ReadonlySet<string>;
  readonly giving: ReadonlySet<string>;
  /** What was solved on the way: round by round with all sources at their highest, then at their lowest. */
  readonly rounds: readonly Round[];
  readonly lowest: Round;
}
