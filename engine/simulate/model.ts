/**
 * One axis as the simulation knows it. Everything is SI: metre, kilogram, second, ampere, volt, radian.
 * A limit that is not there is `Infinity`, and so is the stiffness of an axis taken as rigid.
 */

/** A motor that follows a current: brushed, or brushless seen as its d.c. equivalent. */
export interface ServoMotor {
  readonly kind: 'servo';
  /** Ω between the two leads. */
  readonly resistance: number;
  /** H; 0 lets the current follow the voltage at once. */
  readonly inductance: number;
  /** Torque and back-EMF constant, N·m/A = V·s/rad. */
  readonly constant: number;
  /** kg·m² of the rotor with what turns on its shaft. */
  readonly inertia: number;
  /** N·m of dry friction at the motor and screw. */
  readonly coulomb: number;
  /** N·m·s/rad of friction that grows with motor speed. */
  readonly viscous: number;
  /** V lost in the brushes. */
  readonly brushDrop: number;
}

/** A two-phase stepping motor, driven in fine steps; the rotor is held to the commanded field as by a spring. */
export interface StepperMotor {
  readonly kind: 'stepper';
  /** N·m with both phases at the rated current. */
  readonly holdingTorque: number;
  /** A of one phase. */
  readonly ratedCurrent: number;
  /** Ω of one phase. */
  readonly resistance: number;
  /** H of one phase as driven. */
  readonly inductance: number;
  /** Teeth of the rotor: 50 for a full step of 1.8°. */
  readonly rotorTeeth: number;
  readonly inertia: number;
  readonly coulomb: number;
  readonly viscous: number;
  /** N·m·s/rad by which the field damps a rotor that swings against it. */
  readonly damping: number;
}

export interface Transmission {
  /** m the slide moves in one turn of the screw. */
  readonly lead: number;
  /** Motor turns for one turn of the screw. */
  readonly ratio: number;
  /** kg·m² of the screw with what turns on it. */
  readonly screwInertia: number;
  /** N/m along the slide, of coupling, screw, nut and bearings in series; Infinity for a rigid axis. */
  readonly stiffness: number;
  /** N·s/m along the slide. */
  readonly damping: number;
  /** m of free play at the slide. */
  readonly backlash: number;
  /** Share (0 to 1) of the yielding that lies between motor and screw, which a feedback on the screw sees. */
  readonly couplingShare: number;
}

export interface Slide {
  readonly mass: number;
  /** rad; positive when the slide climbs in its positive direction. */
  readonly tilt: number;
  /** N of a counterbalance, against the weight along the axis. */
  readonly balance: number;
  /** N of friction that must be overcome from rest. */
  readonly staticFriction: number;
  /** N of friction once it moves. */
  readonly coulomb: number;
  /** N·s/m. */
  readonly viscous: number;
  /** m/s within which the friction falls in a straight line from the static to the sliding value; 0: at once. */
  readonly fallSpeed: number;
  /** m/s over which dry friction is smoothed to a tanh, as some published benchmarks do; 0: it truly sticks. */
  readonly smoothing: number;
}

export interface Feedback {
  /** What the position loop sees. */
  readonly on: 'motor' | 'screw' | 'slide';
  /** Counts in one turn of that shaft (motor, screw); 0 sees without steps. */
  readonly countsPerTurn: number;
  /** m of one count of a scale on the slide; 0 sees without steps. */
  readonly countLength: number;
}

export interface Drive {
  /** A. */
  readonly currentLimit: number;
  /** Share of the bus voltage it can pass on. */
  readonly duty: number;
  /** V above and below which it switches off. */
  readonly overvoltage: number;
  readonly undervoltage: number;
  /** m of following error at which it switches off. */
  readonly followingLimit: number;
  /** What the motor feels when the drive is off. */
  readonly whenOff: 'coast' | 'short';
  /** m of one command pulse; 0 commands without steps. */
  readonly pulse: number;
}

/** Position → speed → current, one loop inside the other. Angles and speeds are those of the motor. */
export interface Cascade {
  readonly kind: 'cascade';
  /** 1/s. */
  readonly positionGain: number;
  /** A·s/rad. */
  readonly speedGain: number;
  /** A/rad. */
  readonly speedIntegral: number;
  /** Share of the commanded speed given to the speed loop directly. */
  readonly speedForward: number;
  /** Share of the current that the commanded acceleration needs, given directly. */
  readonly accelerationForward: number;
  /** `ideal` makes the wanted current at once, as far as the bus voltage allows, and leaves the inductance out. */
  readonly current: 'pi' | 'ideal';
  /** V/A. */
  readonly currentGain: number;
  /** V/(A·s). */
  readonly currentIntegral: number;
  /** s between two runs of the innermost loop; 0 for an analogue control that never pauses. */
  readonly sample: number;
  /** The speed loop runs at every n-th sample. */
  readonly speedEvery: number;
  /** The position loop runs at every n-th sample; a multiple of `speedEvery`. */
  readonly positionEvery: number;
  /** Samples from reading to effect. */
  readonly delay: number;
  /** `encoder` takes the speed from the difference of two counts, `tacho` from the shaft itself. */
  readonly speedFrom: 'tacho' | 'encoder';
}

/** One PID on the position, as in drives that take step pulses. Angles are those of the motor. */
export interface SingleLoop {
  readonly kind: 'pid';
  /** V/rad, or A/rad where the output is a current. */
  readonly proportional: number;
  readonly integral: number;
  readonly derivative: number;
  readonly derivativeOn: 'error' | 'measurement';
  /** Per rad/s and rad/s² of the command. */
  readonly speedForward: number;
  readonly accelerationForward: number;
  readonly output: 'voltage' | 'current';
  readonly sample: number;
  readonly delay: number;
}

/** No loop: a stepping motor follows the pulses or falls out of step. */
export interface OpenLoop {
  readonly kind: 'open';
  /** s between two looks of the simulation at the command and the bus. */
  readonly sample: number;
}

export interface Brake {
  /** N·m at the motor shaft. */
  readonly torque: number;
  /** s from switching off until it holds. */
  readonly delay: number;
}

export interface Supply {
  readonly kind: 'constant' | 'regulated' | 'transformer';
  /** V: d.c. of a constant or regulated supply; r.m.s. of the unloaded secondary at nominal mains. */
  readonly voltage: number;
  /** Mains as a share of nominal, 0.9 for ten per cent low. */
  readonly mains: number;
  readonly frequency: number;
  /** Ω of transformer and leads, seen from the bridge. */
  readonly sourceResistance: number;
  /** V of one diode; two conduct at a time. */
  readonly diodeDrop: number;
  /** F. */
  readonly capacitance: number;
  /** Ω across the bus; Infinity without one. */
  readonly bleeder: number;
  /** V at which the dump resistor switches in and out; Infinity without one. */
  readonly dumpOn: number;
  readonly dumpOff: number;
  readonly dumpResistance: number;
  /** W that other things draw all the time. */
  readonly otherLoad: number;
}

export interface AxisModel {
  readonly motor: ServoMotor | StepperMotor;
  readonly transmission: Transmission;
  readonly slide: Slide;
  readonly feedback: Feedback;
  readonly drive: Drive;
  readonly control: Cascade | SingleLoop | OpenLoop;
  /** Absent where the axis has none: `null`. */
  readonly brake: Brake | null;
  readonly supply: Supply;
}

/** m of slide travel per radian of the motor. */
export const travelPerRadian = ({ transmission }: AxisModel): number =>
  transmission.lead / (2 * Math.PI * transmission.ratio);

/** kg·m² on the motor side of the yielding parts, and of the slide as the motor feels it. */
export function inertias(model: AxisModel): { readonly motorSide: number; readonly slideSide: number } {
  const { motor, transmission, slide } = model;
  return {
    motorSide: motor.inertia + transmission.screwInertia / transmission.ratio ** 2,
    slideSide: slide.mass * travelPerRadian(model) ** 2,
  };
}
