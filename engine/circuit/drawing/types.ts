/**
 * What a diagram is drawn from: devices with terminals in groups, and the wires between them. Nothing here knows what a
 * contactor is; kinds and natures of terminals are those of engine/circuit/wiring.
 */
import type { SymbolName } from './symbols/index.ts';

/** Terminals of one device that belong to one symbol. */
export type TerminalGroup =
  /** Each row is a way through, from its left terminal to its right one: the poles of a contactor, one coil. */
  | { readonly symbol: SymbolName; readonly poles: readonly (readonly [left: string, right: string])[] }
  /** A box with terminals on its sides; what does not fit side by side may be drawn as several boxes. */
  | {
      readonly symbol: SymbolName;
      readonly box: readonly string[];
      /** Symbols of single terminals: a box of which all terminals bear the same is drawn with that. */
      readonly signs?: Readonly<Record<string, SymbolName>>;
      /** Terminals that take a signal, on the left where nothing else decides. */
      readonly takes?: readonly string[];
      /** Terminals by which it is fed itself: of a supply, its mains. */
      readonly fed?: readonly string[];
    }
  /** Every terminal a point of its own: a strip, a connector. */
  | {
      readonly symbol: SymbolName;
      readonly points: readonly string[];
      /** Marks of the points that metal inside joins to each: '2, 3'. */
      readonly bridged?: Readonly<Record<string, string>>;
    };

export interface DrawnDevice {
  readonly id: string;
  readonly name: string;
  readonly groups: readonly TerminalGroup[];
}

/** What a terminal carries when it is common to many: the plus of a supply, its minus, the protective earth. */
export interface Rail {
  readonly name: string;
  /** Where it stands: what feeds is on the left, what takes back is on the right. */
  readonly role: 'feeds' | 'returns' | 'earth';
}

export interface DrawnWire {
  readonly id: string;
  /** 'K1.A1' */
  readonly from: string;
  readonly to: string;
  /** As written beside it: number, colour, section, cable. */
  readonly label: string;
  readonly rail: Rail | null;
  /** Id of the circuit whose diagram it is drawn in. */
  readonly circuit: string;
}

export interface CircuitTitle {
  readonly id: string;
  readonly title: string;
}

/** Everything to be drawn. */
export interface Plan {
  readonly circuits: readonly CircuitTitle[];
  readonly devices: readonly DrawnDevice[];
  readonly wires: readonly DrawnWire[];
}

/** One symbol in a diagram with the terminals it shows there. */
export interface Piece {
  readonly id: string;
  readonly device: string;
  readonly name: string;
  readonly group: TerminalGroup;
  /** Where else it or what belongs to it is drawn: 'also in Stopping'. */
  readonly refers: readonly string[];
}

/** What leads elsewhere from one terminal: a common rail, another diagram, or the next part of this one. */
export interface Flag {
  readonly id: string;
  /** The terminal it hangs on. */
  readonly at: string;
  readonly rail: Rail | null;
  readonly lines: readonly FlagLine[];
  /** What feeds it stands elsewhere. */
  readonly isFed: boolean;
}

export interface FlagLine {
  readonly wire: string;
  readonly text: string;
  /** Terminal of a strip on which the wire ends there: drawn at the line, as it has nothing else in this diagram. */
  readonly joint?: string;
}

/** Pieces that hang together by wires, laid out as one picture. */
export interface Cluster {
  readonly pieces: readonly Piece[];
  readonly flags: readonly Flag[];
  readonly wires: readonly DrawnWire[];
  /** By piece and flag: the farther from what feeds, the larger. */
  readonly rank: ReadonlyMap<string, number>;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A port: where a wire meets a piece, measured from the top left corner of the piece. */
export interface Port extends Point {
  readonly terminal: string;
  readonly side: 'left' | 'right';
}

export interface LaidPiece extends Box {
  readonly piece: Piece;
  readonly ports: readonly Port[];
}

export interface LaidFlag extends Box {
  readonly flag: Flag;
  readonly side: 'left' | 'right';
}

export interface LaidWire {
  readonly wire: DrawnWire;
  readonly points: readonly Point[];
  readonly label: Box;
}

/** A cluster with places, measured from its own top left corner. */
export interface LaidCluster {
  readonly width: number;
  readonly height: number;
  readonly pieces: readonly LaidPiece[];
  readonly flags: readonly LaidFlag[];
  readonly wires: readonly LaidWire[];
  /** Lines from a terminal to its flag. */
  readonly stubs: readonly (readonly Point[])[];
  /** Where wires that meet at a terminal part on the way. */
  readonly joints: readonly Point[];
}

export interface Sheet {
  readonly circuit: string;
  readonly title: string;
  /** 1, 2, 3 … of `of`. */
  readonly number: number;
  readonly of: number;
  readonly width: number;
  readonly height: number;
  readonly clusters: readonly { readonly at: Point; readonly laid: LaidCluster }[];
}
