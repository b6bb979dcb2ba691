/** A stop circuit as the simulation wants it: nodes, what joins them, and what moves. */
import type { MotionNumbers } from './motion-numbers.ts';

/** A thing with two positions that contacts follow: a button under a hand, an armature, an input of a drive. */
export interface Mover {
  readonly id: string;
  readonly element: string;
  readonly kind:
    | 'hand'
    /** Pulled by current between `a` and `b`. */
    | 'coil'
    /** An input that reads current between `a` and `b`; it has no contacts. */
    | 'input'
    /** Set by a unit's own logic. */
    | 'logic';
  /** Nodes of its coil or input; −1 for none. */
  readonly a: number;
  readonly b: number;
  /** Seconds. */
  readonly pickUp: number;
  readonly dropOut: number;
  /** A hand's positions: what is done and undone. */
  readonly does?: Doing;
}

/** What a person does to it. */
export interface Doing {
  readonly role: 'start' | 'program' | 'stop' | 'emergency' | 'door' | 'limit' | 'key' | 'other';
  /** 'press S1', 'release S1' */
  readonly on: string;
  readonly off: string;
  readonly springsBack: boolean;
  /** Position while the machine runs. */
  readonly normal: 0 | 1;
  /** The mover that must be on before it can be switched on: the lock of a door; −1 for none. */
  readonly needs: number;
  /** Whether its contacts are opened directly by the push. */
  readonly direct: boolean;
}

/** A contact, or a fuse. */
export interface Contact {
  readonly id: string;
  readonly element: string;
  readonly a: number;
  readonly b: number;
  /** The mover it follows; −1 for a fuse. */
  readonly mover: number;
  /** The position of the mover in which it is closed. */
  readonly closedAt: 0 | 1;
  /** Mirror contact or force-guided: it cannot contradict the others that are linked. */
  readonly linked: boolean;
  readonly main: boolean;
  readonly fuse: boolean;
  /** An output of a bought unit that has two contacts in series inside. */
  readonly doubled: boolean;
}

export interface Wire {
  readonly id: string;
  readonly a: number;
  readonly b: number;
  readonly cable: string;
}

/** Of a supply with three phases one between each two of them, and one from each to neutral. */
export interface Source {
  readonly element: string;
  readonly plus: number;
  readonly minus: number;
  readonly earthed: boolean;
}

/** A safety relay's own reasoning. */
export interface SafetyUnit {
  readonly element: string;
  readonly supply: number;
  /** Ends at which it reads its channels. */
  readonly back: readonly number[];
  readonly crossFault: boolean;
  /** Bits of its own test signals, by channel. */
  readonly bits: readonly number[];
  readonly fed: readonly number[];
  readonly loop: number;
  readonly plus: number;
  readonly edge: boolean;
  readonly outputs: readonly number[];
}

export interface ControlUnit {
  readonly element: string;
  readonly supply: number;
  /** The mover that reads its stop input; −1 where it is not used. */
  readonly stop: number;
  readonly start: number;
  readonly enable: number;
  readonly resumes: boolean;
}

export interface DriveUnit {
  readonly element: string;
  /** Inputs that read its power: one, or between each two of three phases; any of them lets it turn its motor. */
  readonly powers: readonly number[];
  /** −1 where it is not used. */
  readonly enable: number;
  readonly sto: readonly number[];
  readonly brakes: boolean;
  /** Contact for the brake; −1 for none. */
  readonly output: number;
}

export interface MotionUnit {
  readonly id: string;
  readonly kind: 'axis' | 'spindle';
  readonly name: string;
  readonly numbers: MotionNumbers;
  readonly drive: number;
  /** The mover of its brake, on while it is open; −1 for none. */
  readonly brake: number;
  /** A load pulls along it that its screw does not hold, or may do so for all that is known. */
  readonly vertical: boolean;
}

export interface LimitSwitch {
  readonly element: string;
  readonly mover: number;
  /** The motion's id; empty where it is not said. */
  readonly axis: string;
  readonly end: 'either' | 'lower' | 'upper';
}

export interface Model {
  readonly nodes: readonly string[];
  /** The frame of the machine is the last node. */
  readonly frame: number;
  readonly movers: readonly Mover[];
  readonly contacts: readonly Contact[];
  readonly wires: readonly Wire[];
  readonly sources: readonly Source[];
  readonly safety: readonly SafetyUnit[];
  readonly controls: readonly ControlUnit[];
  readonly drives: readonly DriveUnit[];
  readonly motions: readonly MotionUnit[];
  /** Doors with a lock: the mover of the lock's coil and of the door. */
  /** Limit switches by the axis they stand on. */
  readonly limits: readonly LimitSwitch[];
  /** Home switches by their axis. */
  readonly homes: readonly { readonly element: string; readonly axis: string }[];
  readonly locks: readonly { readonly lock: number; readonly door: number }[];
}
