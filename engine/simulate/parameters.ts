/**
 * Every parameter of a model: its path, unit, what it may be, and what is taken where a model file leaves it out.
 * The checks, the reader of model files and their published schema all read this one list.
 */

export interface NumberParameter {
  readonly kind: 'number';
  readonly name: string;
  /** Unit in which a bare description speaks; any unit of the same kind may be typed. */
  readonly unit: string;
  readonly domain: 'positive' | 'not negative' | 'any' | 'fraction' | 'whole';
  /** The word for having none of it, where that is possible: it stands for Infinity. */
  readonly none?: string;
  /** As it would be typed; without one a model must give it. */
  readonly usual?: string;
}

export interface ChoiceParameter {
  readonly kind: 'choice';
  readonly name: string;
  readonly options: readonly string[];
  readonly usual?: string;
}

export type Parameter = NumberParameter | ChoiceParameter;

/** A group of parameters: one set, or one of several by its `kind`. */
export interface Group {
  readonly says: string;
  readonly kinds: Readonly<Record<string, Readonly<Record<string, Parameter>>>>;
  /** The kind taken where the group says none; '' for groups of one kind. */
  readonly usualKind?: string;
  /** Whether a model may be without the whole group. */
  readonly absent?: boolean;
}

const number = (
  name: string,
  unit: string,
  domain: NumberParameter['domain'],
  usual?: string,
  none?: string,
): NumberParameter => ({
  kind: 'number',
  name,
  unit,
  domain,
  ...(usual === undefined ? {} : { usual }),
  ...(none === undefined ? {} : { none }),
});
const choice = (name: string, options: readonly string[], usual?: string): ChoiceParameter => ({
  kind: 'choice',
  name,
  options,
  ...(usual === undefined ? {} : { usual }),
});

const SAMPLE = number('time between two samples of the innermost loop (0: analogue)', 's', 'not negative');
const DELAY = number('samples from reading to effect', '1', 'whole', '1');
const BUS = {
  mains: number('mains as a share of nominal', '1', 'positive', '1'),
  frequency: number('mains frequency', 'Hz', 'positive', '50 Hz'),
  diodeDrop: number('voltage of one rectifier diode', 'V', 'not negative', '1 V'),
  bleeder: number('bleeder resistor', 'Ω', 'positive', 'none', 'none'),
  dumpOn: number('voltage at which the dump resistor switches in', 'V', 'positive', 'none', 'none'),
  dumpOff: number('voltage at which it switches out', 'V', 'positive', 'none', 'none'),
  dumpResistance: number('dump resistor', 'Ω', 'positive', 'none', 'none'),
  otherLoad: number('power that other things draw all the time', 'W', 'not negative', '0 W'),
};
const SOURCE = number('resistance of the source seen from the bus', 'Ω', 'not negative');
const CAPACITANCE = number('bus capacitance', 'F', 'positive');

export const GROUPS: Readonly<Record<string, Group>> = {
  motor: {
    says: 'The motor.',
    kinds: {
      servo: {
        resistance: number('winding resistance between two leads', 'Ω', 'positive'),
        inductance: number('winding inductance between two leads', 'H', 'not negative'),
        constant: number('torque constant, the same as the back-EMF constant', 'N·m/A', 'positive'),
        inertia: number('inertia of the rotor and what turns on its shaft', 'kg·m²', 'positive'),
        coulomb: number('dry friction torque at motor and screw', 'N·m', 'not negative', '0 N·m'),
        viscous: number('friction that grows with speed', 'N·m·s/rad', 'not negative', '0 N·m·s/rad'),
        brushDrop: number('voltage lost in the brushes', 'V', 'not negative', '0 V'),
      },
      stepper: {
        holdingTorque: number('holding torque at the rated current', 'N·m', 'positive'),
        ratedCurrent: number('rated current of one phase', 'A', 'positive'),
        resistance: number('resistance of one phase', 'Ω', 'positive'),
        inductance: number('inductance of one phase', 'H', 'not negative'),
        rotorTeeth: number('teeth of the rotor (50 for full steps of 1.8°)', '1', 'whole', '50'),
        inertia: number('inertia of the rotor and what turns on its shaft', 'kg·m²', 'positive'),
        coulomb: number('dry friction torque at motor and screw', 'N·m', 'not negative', '0 N·m'),
        viscous: number('friction that grows with speed', 'N·m·s/rad', 'not negative', '0 N·m·s/rad'),
        damping: number('damping of the rotor against its field', 'N·m·s/rad', 'not negative', '0 N·m·s/rad'),
      },
    },
    usualKind: 'servo',
  },
  transmission: {
    says: 'What lies between motor and slide.',
    kinds: {
      '': {
        lead: number('travel of one turn of the screw', 'm', 'positive'),
        ratio: number('motor turns for one turn of the screw', '1', 'positive', '1'),
        screwInertia: number('inertia of the screw and what turns on it', 'kg·m²', 'not negative', '0 kg·m²'),
        stiffness: number(
          'stiffness along the slide, all parts in series',
          'N/m',
          'positive',
          'rigid',
          'rigid',
        ),
        damping: number('damping along the slide', 'N·s/m', 'not negative', '0 N·s/m'),
        backlash: number('free play at the slide', 'm', 'not negative', '0 mm'),
        couplingShare: number('share of the yielding before the screw', '1', 'fraction', '0'),
      },
    },
  },
  slide: {
    says: 'The slide on its ways.',
    kinds: {
      '': {
        mass: number('moving mass', 'kg', 'positive'),
        tilt: number('slope of the axis, positive when it climbs forward', 'rad', 'any', '0°'),
        balance: number('force of a counterbalance', 'N', 'not negative', '0 N'),
        staticFriction: number('friction from rest', 'N', 'not negative', '0 N'),
        coulomb: number('dry friction while sliding', 'N', 'not negative', '0 N'),
        viscous: number('friction that grows with speed', 'N·s/m', 'not negative', '0 N·s/m'),
        fallSpeed: number(
          'speed at which friction has fallen to its sliding value',
          'm/s',
          'not negative',
          '0 m/s',
        ),
        smoothing: number(
          'speed over which dry friction is smoothed (benchmarks only)',
          'm/s',
          'not negative',
          '0 m/s',
        ),
      },
    },
  },
  feedback: {
    says: 'What the position loop sees.',
    kinds: {
      '': {
        on: choice('where it sits', ['motor', 'screw', 'slide'], 'motor'),
        countsPerTurn: number('counts in one turn of its shaft (0: no steps)', '1', 'not negative', '0'),
        countLength: number('length of one count of a scale (0: no steps)', 'm', 'not negative', '0 mm'),
      },
    },
  },
  drive: {
    says: 'Limits of the drive, and when it switches off.',
    kinds: {
      '': {
        currentLimit: number('current limit', 'A', 'positive', 'none', 'none'),
        duty: number('share of the bus voltage it can pass on', '1', 'fraction', '1'),
        overvoltage: number('bus voltage above which it switches off', 'V', 'positive', 'none', 'none'),
        undervoltage: number('bus voltage below which it switches off', 'V', 'not negative', '0 V'),
        followingLimit: number('following error at which it switches off', 'm', 'positive', 'none', 'none'),
        whenOff: choice('what the motor feels when it is off', ['coast', 'short'], 'coast'),
        pulse: number('travel of one command pulse (0: no steps)', 'm', 'not negative', '0 mm'),
      },
    },
  },
  control: {
    says: 'The loop. Gains are per radian of the motor.',
    kinds: {
      cascade: {
        positionGain: number('position gain', '1/s', 'not negative'),
        speedGain: number('speed gain', 'A·s/rad', 'not negative'),
        speedIntegral: number('integral gain of the speed loop', 'A/rad', 'not negative', '0 A/rad'),
        speedForward: number('share of the commanded speed fed forward', '1', 'not negative', '0'),
        accelerationForward: number(
          'share of the acceleration current fed forward',
          '1',
          'not negative',
          '0',
        ),
        current: choice('current loop', ['pi', 'ideal'], 'ideal'),
        currentGain: number('gain of the current loop', 'V/A', 'not negative', '0 V/A'),
        currentIntegral: number('integral gain of the current loop', 'V/(A·s)', 'not negative', '0 V/(A·s)'),
        sample: SAMPLE,
        speedEvery: number('samples for one run of the speed loop', '1', 'whole', '1'),
        positionEvery: number('samples for one run of the position loop', '1', 'whole', '1'),
        delay: DELAY,
        speedFrom: choice('where the speed comes from', ['tacho', 'encoder'], 'encoder'),
      },
      pid: {
        proportional: number('proportional gain (V/rad, or A/rad for a current)', '1', 'not negative'),
        integral: number('integral gain', '1', 'not negative', '0'),
        derivative: number('derivative gain', '1', 'not negative'),
        derivativeOn: choice('what the derivative is taken of', ['error', 'measurement'], 'error'),
        speedForward: number('output for each rad/s of the command', '1', 'not negative', '0'),
        accelerationForward: number('output for each rad/s² of the command', '1', 'not negative', '0'),
        output: choice('what it sets', ['voltage', 'current'], 'voltage'),
        sample: SAMPLE,
        delay: DELAY,
      },
      open: {
        sample: number('time between two looks at command and bus', 's', 'positive', '0.1 ms'),
      },
    },
    usualKind: 'cascade',
  },
  brake: {
    says: 'A holding brake.',
    kinds: {
      '': {
        torque: number('holding torque at the motor shaft', 'N·m', 'positive'),
        delay: number('time from switching off until it holds', 's', 'not negative'),
      },
    },
    absent: true,
  },
  supply: {
    says: 'The d.c. supply that the axes share.',
    kinds: {
      constant: { voltage: number('bus voltage', 'V', 'positive') },
      regulated: {
        voltage: number('bus voltage', 'V', 'positive'),
        sourceResistance: { ...SOURCE, usual: '0 Ω' },
        capacitance: CAPACITANCE,
        ...BUS,
      },
      transformer: {
        voltage: number('r.m.s. voltage of the unloaded secondary at nominal mains', 'V', 'positive'),
        sourceResistance: SOURCE,
        capacitance: CAPACITANCE,
        ...BUS,
      },
    },
    usualKind: 'constant',
  },
};
