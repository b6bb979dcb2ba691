/** How long the spindle takes to start and to stop, and what its braking resistor must stand. */
import { brakingResistor } from '../handbook/braking-resistor.ts';
import { spindleRunUp } from '../handbook/spindle-run-up.ts';
import { spindleStop } from '../handbook/spindle-stop.ts';
import { type Check, ifChoice } from './check.ts';
import { fact, policy, stated, when } from './refs.ts';
import { inertia, speeds, standing } from './spindle-chain.ts';
import { spindleWorking } from './working.ts';

const STILL_TURNING =
  'A chuck that runs down without a sound is as dangerous as one that is driven. The guard must stay locked until it stands.';
const HOT =
  'A braking resistor gets hot enough to light swarf and oil, and carries several hundred volts. Mount it in a cage, clear of both.';

const runUp = spindleWorking('spindle-run-up', 'Time to come up to speed', spindleRunUp, {
  J: inertia.get('J'),
  T: standing.get('T_p'),
  T_k: standing.get('T_K'),
  T_d: fact('spindle', 'drag'),
  n_b: speeds.get('S_b'),
  n: fact('spindle-duty', 'topSpeed'),
});

const resistor = spindleWorking('spindle-resistor', 'Braking resistor', brakingResistor, {
  V: fact('spindle-drive', 'brakeVoltage'),
  R: fact('spindle-drive', 'resistor'),
  T_b: standing.get('T_p'),
  n: fact('spindle-duty', 'topSpeed'),
  J: inertia.get('J'),
  N: fact('spindle-duty', 'stopsPerMinute'),
});

const UNLIMITED = stated('1000000 W', 'W', 'nothing limits the power');
const NO_BRAKING = stated('0 N·m', 'N·m', 'off the mains it runs down alone');

/** Torque the drive brakes with in the fastest range. */
export const BRAKING_TORQUE = when(
  'spindle-drive',
  'type',
  { line: NO_BRAKING },
  {
    otherwise: when('spindle-drive', 'braking', {
      none: standing.get('T_a'),
      resistor: standing.get('T_p'),
      mains: standing.get('T_p'),
    }),
  },
);

/** Most power it can brake with. */
export const BRAKING_POWER = when(
  'spindle-drive',
  'type',
  { line: UNLIMITED },
  {
    otherwise: when('spindle-drive', 'braking', {
      none: UNLIMITED,
      resistor: resistor.get('P_R'),
      mains: UNLIMITED,
    }),
  },
);

export const stopping = spindleWorking('spindle-stop', 'Time to stop', spindleStop, {
  J: inertia.get('J'),
  n: fact('spindle-duty', 'topSpeed'),
  T_f: fact('spindle', 'drag'),
  T_b: BRAKING_TORQUE,
  T_k: standing.get('T_K'),
  n_b: speeds.get('S_b'),
  P_b: BRAKING_POWER,
});

const withResistor = [
  ifChoice('spindle-drive', 'type', 'inverter', 'dc', 'servo'),
  ifChoice('spindle-drive', 'braking', 'resistor'),
];

const checks: readonly Check[] = [
  {
    form: 'ratio',
    id: 'run-up',
    scope: 'spindle',
    title: 'Time to reach top speed',
    place: 'spindle-drive',
    demand: runUp.get('t'),
    capacity: fact('spindle-duty', 'runUp'),
    unit: 's',
    tight: 'exact',
    why: 'A heavy chuck in the fastest range is what a spindle motor finds hardest. Set a shorter ramp than this, and the drive trips.',
    says: {
      fits: 'From rest to top speed it takes {asked}; you allow {there}.',
      tight: 'From rest to top speed it takes {asked}; you allow {there}.',
      fails: 'From rest to top speed it takes {asked}, and you allow {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'spindle-stop',
    scope: 'spindle',
    title: 'Time to stop from top speed',
    place: 'spindle-drive',
    caution: STILL_TURNING,
    demand: stopping.get('t_b'),
    capacity: fact('spindle-duty', 'stopTime'),
    unit: 's',
    tight: 'exact',
    why: 'Without a resistor a drive can only brake as hard as motor and drive can burn by themselves; harder, and it trips on overvoltage and lets the spindle run down.',
    says: {
      fits: 'From top speed it stops in {asked}; you allow {there}.',
      tight: 'From top speed it stops in {asked}; you allow {there}.',
      fails: 'From top speed it stops in {asked}, and you allow {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'run-down',
    scope: 'spindle',
    title: 'Time to run down when the power goes',
    place: 'spindle',
    caution: STILL_TURNING,
    demand: stopping.get('t_f'),
    capacity: policy('run-down'),
    unit: 's',
    tight: 'margin',
    why: 'On a power cut or an emergency stop that cuts the power, nothing but drag brakes the spindle. So long must nobody reach in.',
    says: {
      fits: 'With the power gone it runs down in {asked}; the guard stays shut that long.',
      tight: 'With the power gone it runs down in {asked}; the guard must stay locked that long.',
      fails:
        'With the power gone it runs down in {asked}, longer than the {there} that people wait: the guard must be locked until the spindle stands, or a mechanical brake fitted.',
    },
  },
  {
    form: 'ratio',
    id: 'resistor-ohms',
    scope: 'spindle',
    title: 'Ohms of the braking resistor',
    place: 'spindle-drive',
    caution: HOT,
    onlyIf: withResistor,
    demand: fact('spindle-drive', 'lowestResistance'),
    capacity: fact('spindle-drive', 'resistor'),
    unit: 'Ω',
    tight: 'exact',
    why: 'The switch in the drive carries volts ÷ ohms. Fewer ohms than the maker allows burn it out, and then the resistor stays on for good.',
    says: {
      fits: 'The drive wants {asked} or more; the resistor has {there}.',
      tight: 'The drive wants {asked} or more; the resistor has {there}.',
      fails: 'The drive wants at least {asked}; the resistor has only {there} and burns out its switch.',
    },
  },
  {
    form: 'ratio',
    id: 'resistor-watts',
    scope: 'spindle',
    title: 'Watts of the braking resistor',
    place: 'spindle-drive',
    caution: HOT,
    onlyIf: withResistor,
    demand: resistor.get('P_mean'),
    capacity: fact('spindle-drive', 'resistorPower'),
    unit: 'W',
    tight: 'margin',
    why: 'Each stop turns the whole energy of the spindle into heat. A resistor forgives one stop of many times its rating, but not one every few seconds.',
    says: {
      fits: 'With as many stops as you make it burns {asked} on average; the resistor bears {there}.',
      tight: 'With as many stops as you make it burns {asked} on average; the resistor bears {there}.',
      fails:
        'With as many stops as you make it burns {asked} on average, but the resistor bears only {there}: it burns out.',
    },
  },
];

export const spindleTimes = { workings: [runUp, resistor, stopping], checks };
