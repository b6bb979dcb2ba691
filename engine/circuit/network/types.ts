/**
 * A small electrical circuit as it is solved: elements between named nodes.
 *
 * SI throughout: volts, amperes, ohms, farads, henries, seconds. A current through a two-terminal element counts
 * positive from its first terminal to its second, inside the element; that of a voltage source counts positive
 * out of its plus terminal, as what it delivers.
 */

/** A value that may change in time: constant, a sine, or steps (time, value), holding the first value before. */
export type Waveform =
  | number
  | {
      readonly shape: 'sine';
      readonly amplitude: number;
      readonly hertz: number;
      /** In radians. */
      readonly phase: number;
      readonly offset: number;
    }
  | { readonly shape: 'steps'; readonly steps: readonly (readonly [at: number, value: number])[] };

export interface Resistor {
  readonly kind: 'resistor';
  readonly id: string;
  readonly a: string;
  readonly b: string;
  /** Above zero; a wire too. */
  readonly ohms: number;
}

/** A contact, a fuse, a transistor that only switches. */
export interface Switch {
  readonly kind: 'switch';
  readonly id: string;
  readonly a: string;
  readonly b: string;
  /** Or the moments at which it changes, the first state holding before. */
  readonly closed: boolean | readonly (readonly [at: number, closed: boolean])[];
  readonly onOhms: number;
  /** Absent: no path at all while open. */
  readonly offOhms?: number;
}

export interface VoltageSource {
  readonly kind: 'voltage';
  readonly id: string;
  readonly plus: string;
  readonly minus: string;
  readonly volts: Waveform;
  /** Inner resistance, zero or more. */
  readonly ohms: number;
}

/** Drives its current through itself from `from` to `to`: out of the node `from`, into the node `to`. */
export interface CurrentSource {
  readonly kind: 'current';
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly amps: Waveform;
}

/** Drives `gain` times the current that a voltage source delivers, from `from` to `to`. */
export interface Mirror {
  readonly kind: 'mirror';
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Id of the voltage source. */
  readonly of: string;
  readonly gain: number;
}

export interface Capacitor {
  readonly kind: 'capacitor';
  readonly id: string;
  readonly a: string;
  readonly b: string;
  readonly farads: number;
  /** Where given, a run starts with it; otherwise with the steady state before. */
  readonly startVolts?: number;
}

export interface Inductor {
  readonly kind: 'inductor';
  readonly id: string;
  readonly a: string;
  readonly b: string;
  readonly henries: number;
  /** Of its winding, zero or more. */
  readonly ohms: number;
  readonly startAmps?: number;
}

/** I = saturation·(exp(V/(emission·kT/q)) − 1), with a resistance in series; LEDs and Zener diodes too. */
export interface Diode {
  readonly kind: 'diode';
  readonly id: string;
  readonly anode: string;
  readonly cathode: string;
  readonly saturation: number;
  readonly emission: number;
  readonly ohms: number;
  /** Voltage backwards at which it gives way; absent: never. */
  readonly breakdown?: number;
}

/** Transport model (Ebers and Moll) without charge storage. */
export interface Transistor {
  readonly kind: 'transistor';
  readonly id: string;
  readonly polarity: 'npn' | 'pnp';
  readonly collector: string;
  readonly base: string;
  readonly emitter: string;
  readonly gain: number;
  readonly reverseGain: number;
  readonly saturation: number;
}

export type Element =
  | Resistor
  | Switch
  | VoltageSource
  | CurrentSource
  | Mirror
  | Capacitor
  | Inductor
  | Diode
  | Transistor;

export interface Circuit {
  readonly elements: readonly Element[];
  /** Nodes that count as 0 V where they are; the first of a piece wins. A piece without one has none. */
  readonly references: readonly string[];
}

/** Why there is no answer, in words that name nodes and elements. */
export interface Trouble {
  readonly kind: 'value' | 'source-loop' | 'no-return' | 'singular' | 'not-found' | 'too-long';
  readonly nodes: readonly string[];
  readonly elements: readonly string[];
  readonly sentence: string;
  /** Of a short circuit: ends of the contacts that much of its current passes. */
  readonly contacts?: readonly string[];
}

/** Parts of a circuit without any conducting path between them; volts compare only within one. */
export interface Piece {
  readonly nodes: readonly string[];
  readonly elements: readonly Element[];
  /** The node that counts as 0 V. */
  readonly reference: string;
  /** False where the reference is only the first node, since none of those asked for is here: the piece floats. */
  readonly anchored: boolean;
}

export type Answer<T> = ({ readonly ok: true } & T) | { readonly ok: false; readonly trouble: Trouble };
