/** The gains of a loop as a person reads them: name, unit, and what more of it does. */
import type { AxisModel } from './model.ts';

export interface Gain {
  readonly name: string;
  readonly unit: string;
  readonly says: string;
}

const CASCADE: Readonly<Record<string, Gain>> = {
  positionGain: {
    name: 'position gain',
    unit: '1/s',
    says: 'How hard the position loop mends a lag: more of it follows more closely, until it overshoots.',
  },
  speedGain: {
    name: 'speed gain',
    unit: 'A·s/rad',
    says: 'Amperes for each radian a second of wrong speed: more of it is stiffer, until it hums.',
  },
  speedIntegral: {
    name: 'integral of the speed loop',
    unit: 'A/rad',
    says: 'Amperes that gather while the speed stays wrong: it works off friction and weight.',
  },
  currentGain: {
    name: 'current gain',
    unit: 'V/A',
    says: 'Volts for each ampere that is missing; follows from winding and delay, seldom touched.',
  },
  currentIntegral: {
    name: 'integral of the current loop',
    unit: 'V/(A·s)',
    says: 'Volts that gather while amperes are missing: it makes up for the resistance of the winding.',
  },
};

const single = (out: 'V' | 'A'): Readonly<Record<string, Gain>> => {
  const pushes = out === 'V' ? 'Volts' : 'Amperes';
  return {
    proportional: {
      name: 'proportional gain',
      unit: `${out}/rad`,
      says: `${pushes} for each radian the motor lags: more of it is stiffer, until it swings.`,
    },
    derivative: {
      name: 'derivative gain',
      unit: `${out}·s/rad`,
      says: `${pushes} against each radian a second of wrong speed: it damps; too much makes it hum.`,
    },
    integral: {
      name: 'integral gain',
      unit: `${out}/(rad·s)`,
      says: `${pushes} that gather while a lag stays: it works off friction and weight; too much overshoots.`,
    },
  };
};

/** The loops of this drive, in a sentence, and its gains in the order they are set. */
export function gainWords({ control }: AxisModel): { loops: string; gains: Readonly<Record<string, Gain>> } {
  if (control.kind === 'pid') {
    const out = control.output === 'current' ? 'A' : 'V';
    return {
      loops: `This drive has one loop: it compares the position with the command and sets the ${out === 'V' ? 'voltage' : 'current'} of the motor from that. A radian is about a sixth of a turn of the motor; drives that take plain numbers have scales of their own, which their manuals tell.`,
      gains: single(out),
    };
  }
  const gains = control.kind === 'cascade' && control.current === 'ideal' ? withoutCurrent(CASCADE) : CASCADE;
  return {
    loops:
      'Three loops lie in each other: the position asks for a speed, the speed for a current, the current for volts. They are set from the inside out.',
    gains,
  };
}

/** A current that is taken to follow at once has no gains to set. */
const withoutCurrent = (all: Readonly<Record<string, Gain>>): Readonly<Record<string, Gain>> =>
  Object.fromEntries(Object.entries(all).filter(([name]) => !name.startsWith('current')));
