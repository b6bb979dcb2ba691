/**
 * The wiring as the rules, the solver and the drawings read it. Everything is in SI; what nobody has said is
 * undefined, never a guess passed off as knowledge.
 */

import type { Problem } from '../../quantity/types.ts';
import type { Verdict } from '../../quantity/verdict.ts';

/** What an output does when it is on. */
export type OutputStage =
  /** Drives its wire up to `high` and down to `low`. */
  | 'push-pull'
  /** Pulls its wire down to its common, or lets it go: NPN, open collector, open drain. */
  | 'sinking'
  /** Lifts its wire to the supply, or lets it go: PNP. */
  | 'sourcing';

export interface Output {
  readonly kind: 'output';
  readonly stage: OutputStage;
  /** Lowest voltage against its common when high; of a sourcing output when on. */
  readonly high?: number;
  /** Highest voltage against its common when low; of a sinking output when on. */
  readonly low?: number;
  /** The most it can stand at when high, in V. */
  readonly top?: number;
  /** What it can give while high, and swallow while low, in A. */
  readonly gives?: number;
  readonly swallows?: number;
  /** Leakage while off, in A. */
  readonly leaks?: number;
  /** What its wire may be lifted to from outside while it is off, in V. */
  readonly withstands?: number;
  /** Highest frequency that passes here, in Hz. */
  readonly frequency?: number;
}

/** How an input is made. */
export type InputForm =
  /** An LED between two ends, free of everything else: it takes either way of wiring. */
  | 'opto'
  /** Takes current into its terminal; its common goes to 0 V. Wants a sourcing (PNP) output. */
  | 'sinking'
  /** Gives current out of its terminal; its common goes to plus. Wants a sinking (NPN) output. */
  | 'sourcing'
  /** Reads the voltage against its common and takes next to no current. */
  | 'logic';

export interface Input {
  readonly kind: 'input';
  readonly form: InputForm;
  /** 'plus' and 'minus' of an input with both ends brought out; 'only' where the other end is a common. */
  readonly leg: 'plus' | 'minus' | 'only';
  /** Volts across it from which it surely reads on, and up to which it surely reads off. */
  readonly on?: number;
  readonly off?: number;
  /** The most it survives across it, in V. */
  readonly most?: number;
  /** The voltage it is made for, and the current it takes then. */
  readonly rated?: number;
  /** Current at `rated`, in A. */
  readonly current?: number;
  /** Current from which it surely reads on, in A. */
  readonly onCurrent?: number;
  /** Current up to which it surely reads off, in A. */
  readonly offCurrent?: number;
  /** Current curve I = (V − forward) / series, where it is known: volts lost in the LED, ohms in series. */
  readonly forward?: number;
  readonly series?: number;
  /** Pull-up (or pull-down) inside the device: ohms, and the volts it pulls to against the common. */
  readonly pull?: { readonly ohms: number; readonly to: number };
  readonly frequency?: number;
}

/** One half of a differential pair; `with` of the terminal names the other. */
export interface DifferentialOutput {
  readonly kind: 'differential-output';
  readonly half: 'plus' | 'minus';
  /** Least difference into its termination, and each wire's levels against common, in V. */
  readonly least?: number;
  readonly high?: number;
  readonly low?: number;
  readonly top?: number;
  readonly gives?: number;
  readonly frequency?: number;
}

export interface DifferentialInput {
  readonly kind: 'differential-input';
  readonly half: 'plus' | 'minus';
  readonly threshold?: number;
  readonly commonMode?: number;
  /** Ohms across the pair inside; undefined where none is known. */
  readonly termination?: number;
  readonly most?: number;
  readonly frequency?: number;
}

export interface AnalogueOutput {
  readonly kind: 'analogue-output';
  readonly low?: number;
  readonly high?: number;
  /** A. */
  readonly gives?: number;
}

export interface AnalogueInput {
  readonly kind: 'analogue-input';
  /** 'plus' and 'minus' of a differential one. */
  readonly leg: 'plus' | 'minus' | 'only';
  readonly low?: number;
  readonly high?: number;
  readonly most?: number;
  readonly ohms?: number;
  /** Set to what it gets, by a potentiometer or a parameter: any range up to its own will do. */
  readonly scaled?: boolean;
}

/** One end of a DC source: it gives. */
export interface Supply {
  readonly kind: 'supply';
  readonly pole: 'plus' | 'minus';
  /** Between its plus and its minus. */
  readonly volts?: number;
  /** How far it may stray, as a fraction. */
  readonly tolerance?: number;
  /** What it can give for good. */
  readonly amps?: number;
  readonly regulated?: boolean;
  /** Whether its minus is joined to protective earth inside. */
  readonly earthed?: boolean;
}

/** One end by which a device is fed with DC: it takes. */
export interface Feed {
  readonly kind: 'feed';
  readonly pole: 'plus' | 'minus';
  readonly volts?: number;
  readonly least?: number;
  readonly most?: number;
  readonly amps?: number;
  /** Logic and sensors, or the power of a motor. */
  readonly role: 'logic' | 'power';
}

/** A terminal that others of its group are measured against: the common of inputs, of outputs, a signal ground. */
export interface Common {
  readonly kind: 'common';
  readonly of: 'inputs' | 'outputs' | 'signals';
}

export type Suppressor = 'none' | 'diode' | 'clamp' | 'resistor-capacitor' | 'varistor';

/** One end of a coil, a lamp, a valve, a fan; `with` names the other end. */
export interface Load {
  readonly kind: 'load';
  readonly what: 'coil' | 'valve' | 'brake' | 'lamp' | 'fan' | 'other';
  readonly supply: 'dc' | 'ac' | 'either';
  /** Positive end, where the way round matters (a diode or a lamp across it). */
  readonly leg: 'plus' | 'minus' | 'either';
  readonly volts?: number;
  readonly amps?: number;
  readonly watts?: number;
  readonly ohms?: number;
  readonly henries?: number;
  readonly inductive: boolean;
  readonly suppressor?: Suppressor;
  /** Voltage of a clamp. */
  readonly clamp?: number;
  /** Time it may take to let go, in s. */
  readonly release?: number;
}

export interface ContactRating {
  readonly volts: number;
  /** Into resistors, and into coils (utilisation AC-15, DC-13). */
  readonly amps?: number;
  readonly coilAmps?: number;
}

/** One end of a contact; `with` of the terminal names the other. */
export interface Contact {
  readonly kind: 'contact';
  readonly closes: 'when-on' | 'when-off';
  readonly role: 'main' | 'auxiliary' | 'signal';
  readonly moved: 'coil' | 'hand' | 'machine' | 'logic';
  /** Of the one of two contactors that turns a motor the other way: it rests while its partner runs. */
  readonly rests?: boolean;
  readonly ac?: ContactRating;
  readonly dc?: ContactRating;
}

export interface MotorPhase {
  readonly kind: 'motor-phase';
  readonly side: 'gives' | 'takes';
  readonly of: 'brushed' | 'brushless' | 'stepper' | 'induction';
  /** Continuous, in A. */
  readonly amps?: number;
  readonly volts?: number;
}

export interface Mains {
  readonly kind: 'mains';
  readonly side: 'gives' | 'takes' | 'passes';
  readonly pole: 'L1' | 'L2' | 'L3' | 'N';
  /** Between phase and neutral, or between the two poles of a single-phase device. */
  readonly volts?: number;
  readonly hertz?: number;
  readonly amps?: number;
}

/** Protective earth: the bar all come together on, the terminal of a device, a metal part. */
export interface Earth {
  readonly kind: 'earth';
  readonly role: 'source' | 'bar' | 'device' | 'metal' | 'passes';
}

export interface Shield {
  readonly kind: 'shield';
  /** Whether the metal here is joined to earth. */
  readonly earthed: boolean;
}

/** A terminal of a strip or a connector; all of one group are one piece of metal. */
export interface Joint {
  readonly kind: 'joint';
}

/** One end of something that protects or isolates; `with` names the other end of the same pole. */
export interface Protection {
  readonly kind: 'protection';
  readonly form: 'fuse' | 'breaker' | 'residual' | 'switch';
  readonly amps?: number;
  readonly curve?: 'B' | 'C' | 'D' | 'fast' | 'slow';
  readonly acVolts?: number;
  readonly dcVolts?: number;
  /** What it can break, in A. */
  readonly breaks?: number;
  /** It has a dial to set to the current of one motor, which `amps` is, in A; else its rating is fixed. */
  readonly release?: 'thermal';
  /** Ends of that dial, in A. */
  readonly least?: number;
  readonly most?: number;
  /** It trips at once from here on, give or take, in A; where it has no curve of a letter. */
  readonly instant?: number;
  /** Difference at which a residual current device trips, in A. */
  readonly residual?: number;
  readonly type?: 'AC' | 'A' | 'F' | 'B';
}

export interface Winding {
  readonly kind: 'winding';
  readonly side: 'primary' | 'secondary';
  readonly volts?: number;
  readonly amps?: number;
  /** Apparent power, in VA. */
  readonly power?: number;
}

export interface Rectifier {
  readonly kind: 'rectifier';
  readonly leg: 'ac' | 'plus' | 'minus';
  readonly volts?: number;
  readonly amps?: number;
  /** Across its DC side, in F. */
  readonly farads?: number;
}

export interface Resistor {
  readonly kind: 'resistor';
  readonly ohms?: number;
  readonly watts?: number;
}

export interface Diode {
  readonly kind: 'diode';
  readonly leg: 'anode' | 'cathode';
  readonly volts?: number;
  readonly amps?: number;
}

/** A resolver's or tacho's winding: small a.c. or d.c. signals, neither logic nor power. */
export interface Sensor {
  readonly kind: 'sensor';
  readonly side: 'gives' | 'takes';
  /** Of the excitation of a resolver: effective volts, and Hz. */
  readonly volts?: number;
  readonly hertz?: number;
}

/** Nobody has said what it is, or its settings cannot be read. */
export interface Unclear {
  readonly kind: 'unclear';
}

export type Nature =
  | Output
  | Input
  | DifferentialOutput
  | DifferentialInput
  | AnalogueOutput
  | AnalogueInput
  | Supply
  | Feed
  | Common
  | Load
  | Contact
  | MotorPhase
  | Mains
  | Earth
  | Shield
  | Joint
  | Protection
  | Winding
  | Rectifier
  | Resistor
  | Diode
  | Sensor
  | Unclear;

export interface Terminal {
  /** 'K1.A1' */
  readonly id: string;
  readonly device: string;
  /** 'A1' */
  readonly mark: string;
  /** Plain name, lower case: 'step, plus'. */
  readonly name: string;
  readonly nature: Nature;
  /** Terminals of one device in different groups are isolated from each other: 'main', 'command', 'in'. */
  readonly group: string;
  /** Id of the terminal its volts are measured against; null where there is none. */
  readonly common: string | null;
  /** Id of its other end: of a contact, a coil, a fuse pole, a differential pair, an input with two ends. */
  readonly with: string | null;
  /** How many conductors it holds. */
  readonly holds: number;
  /** Ends of one signal bear the same name on both devices: 'x-step', 'a', 'index'. Empty where it has none. */
  readonly signal: string;
  /** Whether it must be wired for the device to work. */
  readonly needed: boolean;
}

/** Metal inside a device that joins two terminals for good. */
export interface Join {
  readonly a: string;
  readonly b: string;
}

export interface Device {
  readonly id: string;
  /** A kind of `KINDS`; 'unknown' where the kind is not known. */
  readonly kind: string;
  /** 'contactor' */
  readonly kindName: string;
  readonly name: string;
  /** Id of the part of the refit it stands for, whether it is still there or not. */
  readonly part: string | null;
  /** Whether that part is in the refit and fills a place; null where it stands for none. */
  readonly partThere: boolean | null;
  readonly where: string;
  /** Settings read: quantities in SI, choices as their text; what is undefined is not known. */
  readonly settings: Readonly<Record<string, number | string | undefined>>;
  /** Ids, in the order they are drawn. */
  readonly terminals: readonly string[];
  readonly joins: readonly Join[];
  /** Whether metal of it can be touched and has to be bonded. */
  readonly exposed: boolean;
}

export interface Wire {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly cable: string | null;
  /** Number on its ferrules; '' where it has none yet. */
  readonly number: string;
  readonly colour: string;
  /** m². */
  readonly section?: number;
  /** m; its own, or its cable's, or what is said once for all wires in the cabinet. */
  readonly length?: number;
  /** Lies in no cable, between two parts of the cabinet: how long such wires are is asked once for all of them. */
  readonly isInside: boolean;
  /** The length is no more than the most that such a wire has. */
  readonly atMost: boolean;
  readonly ferrule: string;
}

export interface Cable {
  readonly id: string;
  readonly name: string;
  readonly cores?: number;
  /** m². */
  readonly section?: number;
  /** m. */
  readonly length?: number;
  readonly shield: 'none' | 'foil' | 'braid' | 'unknown';
  readonly twisted: boolean | undefined;
  /** F/m between a core and its neighbours. */
  readonly capacitance: number;
  readonly route: string;
  readonly moved: boolean;
  /** Ids of its wires. */
  readonly wires: readonly string[];
}

/** Terminals joined for good by wires and metal. */
export interface Net {
  /** The first of its terminals in the order of their ids. */
  readonly id: string;
  /** In the order of their ids. */
  readonly terminals: readonly string[];
  readonly wires: readonly string[];
}

/** Something that could not be read; the thing itself is kept, and shown. */
export interface WiringProblem extends Problem {
  /** 'devices.K1.settings.volts' */
  readonly where: string;
}

export interface ReadWiring {
  readonly devices: ReadonlyMap<string, Device>;
  readonly terminals: ReadonlyMap<string, Terminal>;
  readonly wires: ReadonlyMap<string, Wire>;
  readonly cables: ReadonlyMap<string, Cable>;
  readonly nets: readonly Net[];
  /** Net of each terminal, by the terminal's id. */
  readonly netOf: ReadonlyMap<string, Net>;
  readonly problems: readonly WiringProblem[];
}

export type { Verdict };

/** One number of a working, ready to be shown. */
export interface Figure {
  readonly name: string;
  /** SI. */
  readonly value: number;
  /** The unit it is shown in: 'mA'. */
  readonly unit: string;
}

/** One answer of a rule about one subject. */
export interface WiringFinding {
  /** '<rule>:<subject>', the same as long as rule and subject are. */
  readonly id: string;
  readonly rule: string;
  /** What it is about: ids of terminals, wires, devices, cables. The first is the subject. */
  readonly about: readonly string[];
  readonly title: string;
  readonly verdict: Verdict;
  /** Capacity over demand, where the rule compares two totals. */
  readonly margin?: number;
  readonly sentence: string;
  readonly figures: readonly Figure[];
  readonly source: string;
  /** What would make it fit, where it does not. */
  readonly remedy?: string;
  /** Settings or facts it waits for, where it cannot be judged: 'A1.x-step-.swallows'. */
  readonly needs?: readonly string[];
  /** Set where one wire on the wrong terminal spoils what hangs on it: such a finding stands before all others. */
  readonly root?: Root;
}

/** Two terminals that must never be joined, and are. */
export interface Root {
  readonly ends: readonly [string, string];
  /** What it does to what hangs on it: mains where they kill, current that only a fuse stops, volts of another supply. */
  readonly harm: 'mains' | 'short' | 'volts';
  /** Only closed contacts complete the way: which wire it is shows by what is still said without it. */
  readonly throughContacts?: true;
  /** Ids of wires that most likely join them; everything else is judged as if these were not there. Empty: none found. */
  readonly wires?: readonly string[];
  /** How many other findings there would be with those wires that are not there without them. */
  readonly follow?: number;
}
