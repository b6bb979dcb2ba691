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
  /** Id of the evidence it came from. */
  readonly evidence?: string;
}

/** How good a part or a piece of the machine is, as found. */
export type Condition = 'works' | 'worn' | 'dead' | 'unknown';

export interface Part {
  /** Permanent; never used again, even after the part is removed. */
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  readonly facts: Readonly<Record<string, Fact>>;
  /** As found at the survey; absent while nobody has looked. */
  readonly condition?: Condition;
  readonly notes?: string;
  /** Names of photos. */
  readonly photos?: readonly string[];
}

/** A place in the machine that one part fills. */
export interface Place {
  /** Ids of the parts that could fill it, the old one included. */
  readonly options: readonly string[];
  /** The part that fills it now; 'none' when the machine has nothing there; null while that is not known. */
  readonly chosen: string | 'none' | null;
}

/** A group of places that work together: an axis, or a spindle from its drive to its chuck and its feedback. */
export interface Chain {
  /** 'X', 'Z', 'S'. */
  readonly id: string;
  readonly kind: 'axis' | 'spindle';
  readonly places: Readonly<Record<string, Place>>;
}

/** A measurement: its method, the raw readings, and under which conditions they were taken. */
export interface Evidence {
  readonly id: string;
  readonly method: string;
  /** The part it was taken on, which may have been taken out since; null for the machine itself. */
  readonly part: string | null;
  /** What the method had to be told, as typed. */
  readonly given: Readonly<Record<string, string>>;
  /** Raw readings by name, as typed. */
  readonly readings: Readonly<Record<string, readonly string[]>>;
  /** Positions of readings set aside, from 0, the same for every name. */
  readonly aside: readonly number[];
  readonly note: string;
  /** ISO 8601, a date or a moment. */
  readonly when: string;
  readonly photos: readonly string[];
}

/** One conductor end, tagged before anything is taken off. */
export interface Tag {
  readonly id: string;
  /** What is written on the sleeve. */
  readonly tag: string;
  readonly cable: string;
  /** Where this end was: part and terminal. */
  readonly here: string;
  /** Where the other end goes; empty while it is not traced. */
  readonly there: string;
  readonly otherTag: string;
  readonly colour: string;
  readonly signal: string;
  readonly note: string;
  readonly photos: readonly string[];
  readonly state: 'untagged' | 'one-end' | 'both-ends';
}

/** Something only the old control knows, to be saved before it goes. */
export interface Keep {
  readonly id: string;
  /** In words: 'Pitch error tables'. */
  readonly what: string;
  readonly state: 'to-do' | 'kept' | 'not-there';
  readonly note: string;
  readonly photos: readonly string[];
}

/** An auxiliary or a mark of wear that is no part with facts: coolant, tailstock, ways. */
export interface SurveyItem {
  readonly id: string;
  /** 'none' where the machine has no such thing. */
  readonly state: Condition | 'none';
  readonly note: string;
  readonly photos: readonly string[];
  /** Answers to the item's questions, as typed. */
  readonly answers: Readonly<Record<string, string>>;
}

/** One element of the stop circuit: a button, a contactor, a drive. Kinds and settings are those of engine/circuit. */
export interface StopElement {
  /** As on the drawing, 'K1'; its terminals are 'K1.A1', 'K1.A2'. */
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  /** As typed, by the names its kind gives them: { 'drop-out': '30 ms' }. */
  readonly settings: Readonly<Record<string, string>>;
}

/** A wire of the stop circuit between two terminals. */
export interface StopWire {
  readonly id: string;
  /** 'S1.12' */
  readonly from: string;
  readonly to: string;
  /** The cable it lies in, whose wires can be crushed together; empty where it lies alone. */
  readonly cable: string;
}

/** Something that moves and has to stop: an axis or a spindle. */
export interface StopMotion {
  readonly id: string;
  readonly kind: 'axis' | 'spindle';
  readonly name: string;
  /** The element that moves it. */
  readonly drive: string;
  /** The element that holds it, if any. */
  readonly brake: string | null;
  /** Speeds, masses, friction and switch positions, as typed. */
  readonly settings: Readonly<Record<string, string>>;
}

/** What stops the machine: elements, the wires between them, and what they stop. */
export interface StopCircuit {
  /** Id of the pattern it was laid out from; null where it was drawn by hand. */
  readonly pattern: string | null;
  readonly note: string;
  readonly elements: Readonly<Record<string, StopElement>>;
  readonly wires: Readonly<Record<string, StopWire>>;
  readonly motions: Readonly<Record<string, StopMotion>>;
  /** Answers about the whole, as typed: whether 0 V is earthed, uses a year, when it was last tested. */
  readonly settings: Readonly<Record<string, string>>;
}

/** A piece of work the machine must do: a cut, a thread or a tapped hole. Its settings are those of engine/work. */
export interface Work {
  readonly id: string;
  readonly kind: 'cut' | 'thread' | 'tap';
  readonly name: string;
  /** As typed: { thread: 'M20x1.5', material: 'steel', length: '30 mm' }. */
  readonly settings: Readonly<Record<string, string>>;
}

/** A turret, a gear shift, a chuck: what moves besides axes and spindle. Kinds, steps and settings are those of engine/control. */
export interface Auxiliary {
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  /** As typed: { positions: '8', 'time-out': '4 s' }. */
  readonly settings: Readonly<Record<string, string>>;
}

/** A terminal that a device has besides those of its kind, or one of them as it really is. */
export interface WiringTerminal {
  /** Its electrical nature: a kind of engine/circuit/wiring. */
  readonly kind: string;
  readonly name: string;
  /** As typed: { 'on-level': '15 V', current: '8 mA' }. */
  readonly settings: Readonly<Record<string, string>>;
}

/** Where a terminal is seen on a photo: fractions of its width and height from the top left corner. */
export interface WiringPin {
  readonly photo: string;
  readonly x: number;
  readonly y: number;
}

/** Something with terminals: a part of the refit, an element of the stop circuit, or a fuse, a strip, a sensor. */
export interface WiringDevice {
  /** As on the drawing, 'K1'; its terminals are 'K1.A1', 'K1.A2'. */
  readonly id: string;
  /** A kind of engine/circuit/wiring. */
  readonly kind: string;
  readonly name: string;
  /** The part of the refit it stands for. */
  readonly part: string | null;
  /** Where it sits: 'cabinet', 'slide', 'door'. */
  readonly where: string;
  readonly settings: Readonly<Record<string, string>>;
  /** Names of settings nobody stated: taken as usual, not looked at yet. Absent where all were stated. */
  readonly usual?: readonly string[];
  /** By mark. */
  readonly terminals: Readonly<Record<string, WiringTerminal>>;
  /** By mark. */
  readonly pins: Readonly<Record<string, WiringPin>>;
}

/** One conductor between two terminals. */
export interface WiringWire {
  readonly id: string;
  /** 'K1.A1' */
  readonly from: string;
  readonly to: string;
  /** Id of the cable it is a core of; null where it lies alone. */
  readonly cable: string | null;
  /** As typed: number, colour, section, length, ferrule. */
  readonly settings: Readonly<Record<string, string>>;
}

/** Several conductors in one jacket. */
export interface WiringCable {
  readonly id: string;
  readonly name: string;
  /** As typed: cores, section, length, shield, route, how it is laid. */
  readonly settings: Readonly<Record<string, string>>;
  /** As of a device. */
  readonly usual?: readonly string[];
}

/** What is connected to what. */
export interface Wiring {
  readonly devices: Readonly<Record<string, WiringDevice>>;
  readonly wires: Readonly<Record<string, WiringWire>>;
  readonly cables: Readonly<Record<string, WiringCable>>;
  /** Answers about the whole, as typed: country, temperature in the cabinet, how wires are laid. */
  readonly settings: Readonly<Record<string, string>>;
}

export interface Refit {
  readonly format: 'fettle-refit';
  readonly version: 5;
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
  readonly evidence: Readonly<Record<string, Evidence>>;
  readonly tags: Readonly<Record<string, Tag>>;
  readonly keeps: Readonly<Record<string, Keep>>;
  /** By the id of the survey's item. */
  readonly survey: Readonly<Record<string, SurveyItem>>;
  /** Null until one is chosen or drawn. */
  readonly stop: StopCircuit | null;
  /** What the machine must cut. */
  readonly work: Readonly<Record<string, Work>>;
  readonly auxiliaries: Readonly<Record<string, Auxiliary>>;
  readonly wiring: Wiring;
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
  | {
      readonly do: 'evidence';
      readonly id: string;
      readonly old: Evidence | null;
      readonly new: Evidence | null;
    }
  | { readonly do: 'tag'; readonly id: string; readonly old: Tag | null; readonly new: Tag | null }
  | { readonly do: 'keep'; readonly id: string; readonly old: Keep | null; readonly new: Keep | null }
  | {
      readonly do: 'survey';
      readonly id: string;
      readonly old: SurveyItem | null;
      readonly new: SurveyItem | null;
    }
  | { readonly do: 'stop'; readonly old: StopCircuit | null; readonly new: StopCircuit | null }
  | { readonly do: 'work'; readonly id: string; readonly old: Work | null; readonly new: Work | null }
  | {
      readonly do: 'auxiliary';
      readonly id: string;
      readonly old: Auxiliary | null;
      readonly new: Auxiliary | null;
    }
  | {
      readonly do: 'device';
      readonly id: string;
      readonly old: WiringDevice | null;
      readonly new: WiringDevice | null;
    }
  | {
      readonly do: 'wire';
      readonly id: string;
      readonly old: WiringWire | null;
      readonly new: WiringWire | null;
    }
  | {
      readonly do: 'cable';
      readonly id: string;
      readonly old: WiringCable | null;
      readonly new: WiringCable | null;
    }
  | {
      readonly do: 'wiring-setting';
      readonly setting: string;
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
