/** What the spindle's drive, motor, belts and masses come to: torque at the motor, ranges, speeds, inertia. */
import { bestRange } from '../handbook/best-range.ts';
import { driveMatch } from '../handbook/drive-match.ts';
import { gripForCut } from '../handbook/grip-for-cut.ts';
import { inductionMotor } from '../handbook/induction-motor.ts';
import { motorSpeeds } from '../handbook/motor-speeds.ts';
import { rangeSteps } from '../handbook/range-steps.ts';
import { spindleAtSpeed } from '../handbook/spindle-at-speed.ts';
import { spindleBelt } from '../handbook/spindle-belt.ts';
import { spindleInertia } from '../handbook/spindle-inertia.ts';
import { starDelta } from '../handbook/star-delta.ts';
import { fact, first, fitted, inapplicable, policy, type Ref, stated, table, when } from './refs.ts';
import { spindleWorking, type TypedWorking } from './working.ts';

const MEMORY = 'from memory: usual values of the trade';
/** Stands where nothing limits: far above all that a spindle does. */
export const NO_LIMIT = stated('1000000 r/min', 'r/min', 'nothing there that could set a limit');

const connection = spindleWorking('winding', 'Star and delta', starDelta, {
  U: fact('spindle-drive', 'outputVoltage'),
  U_Y: fact('spindle-motor', 'starVoltage'),
});

/** Volts the motor wants as its winding is connected. */
export const MOTOR_VOLTS = when('spindle-motor', 'type', {
  induction: when('spindle-motor', 'connection', {
    star: fact('spindle-motor', 'starVoltage'),
    delta: first(fact('spindle-motor', 'deltaVoltage'), connection.get('U_D')),
  }),
  dc: fact('spindle-motor', 'voltage'),
  servo: fact('spindle-motor', 'voltage'),
});

export const DRIVE_VOLTS = when('spindle-drive', 'type', {
  inverter: fact('spindle-drive', 'outputVoltage'),
  dc: fact('spindle-drive', 'outputVoltage'),
  servo: fact('spindle-drive', 'outputVoltage'),
  line: fact('site', 'lineVoltage'),
});

export const MOTOR_EFFICIENCY = first(
  fact('spindle-motor', 'efficiency'),
  table('spindle-motor', 'type', '%', { induction: '80 ± 6 %', dc: '80 ± 6 %', servo: '90 ± 4 %' }, MEMORY),
);

const PULL_OUT = when('spindle-motor', 'type', {
  induction: first(
    fact('spindle-motor', 'pullOut'),
    table('spindle-motor', 'type', '1', { induction: '2.5 ± 0.5' }, 'from memory: small motors 2 to 3'),
  ),
  dc: stated('100', '1', 'a DC motor has no pull-out torque'),
  servo: stated('100', '1', 'a servo motor has no pull-out torque'),
});

export const plate = spindleWorking('spindle-plate', 'The motor’s plate', inductionMotor, {
  Pr: fact('spindle-motor', 'power'),
  f: fact('spindle-motor', 'frequency'),
  p: fact('spindle-motor', 'poles'),
  n: fact('spindle-motor', 'speed'),
  U: MOTOR_VOLTS,
  eta: MOTOR_EFFICIENCY,
  phi: fact('spindle-motor', 'powerFactor'),
  f_d: fact('spindle-drive', 'highestFrequency'),
  k: PULL_OUT,
});

/** Rated current as the winding is connected: from the plate, else worked from its power. */
export const MOTOR_CURRENT = when('spindle-motor', 'type', {
  induction: when('spindle-motor', 'connection', {
    star: first(fact('spindle-motor', 'starCurrent'), plate.get('I')),
    delta: first(fact('spindle-motor', 'deltaCurrent'), plate.get('I')),
  }),
  dc: fact('spindle-motor', 'current'),
  servo: fact('spindle-motor', 'current'),
});

const MAINS_GIVE = stated('10000 A', 'A', 'across the mains nothing limits the current');
const amperes = (name: 'continuousCurrent' | 'peakCurrent'): Ref =>
  when('spindle-drive', 'type', {
    inverter: fact('spindle-drive', name),
    dc: fact('spindle-drive', name),
    servo: fact('spindle-drive', name),
    line: MAINS_GIVE,
  });

export const match = spindleWorking('spindle-match', 'What the drive leaves of the motor', driveMatch, {
  Pr: fact('spindle-motor', 'power'),
  n_r: fact('spindle-motor', 'speed'),
  U_m: MOTOR_VOLTS,
  U_d: DRIVE_VOLTS,
  I_m: MOTOR_CURRENT,
  I_d: amperes('continuousCurrent'),
  I_p: amperes('peakCurrent'),
});

/** Ranges that can be there. */
export const RANGES = [1, 2, 3, 4] as const;
export type RangeNumber = (typeof RANGES)[number];
const COUNTS = ['one', 'two', 'three', 'four'] as const;

/** What stands for a range, by whether the machine has it. */
const ifThere = (range: RangeNumber, there: Ref, not: Ref): Ref => {
  const counted = when(
    'belts',
    'ranges',
    Object.fromEntries(COUNTS.map((count, at) => [count, at + 1 >= range ? there : not])),
  );
  return when('belts', 'type', {
    direct: range === 1 ? there : not,
    'v-belt': counted,
    toothed: counted,
    gears: counted,
  });
};

const wheels = RANGES.map((range) =>
  spindleWorking(`range-${range}-belt`, `Ratio of range ${range} from its wheels`, spindleBelt, {
    D_m: fact('belts', `motorWheel${range}`),
    D_s: fact('belts', `spindleWheel${range}`),
  }),
);

const ratioOf = (range: RangeNumber): Ref => {
  const worked = first(fact('belts', `ratio${range}`), wheels[range - 1]!.get('i'));
  return when('belts', 'type', {
    direct: stated('1', '1', 'a coupling turns both alike'),
    'v-belt': worked,
    toothed: worked,
    gears: worked,
  });
};

const NO_RANGE = inapplicable('There is no such range.');

/** Motor turns for one spindle turn, by range; inapplicable where the machine has no such range. */
export const RATIOS: readonly Ref[] = RANGES.map((range) => ifThere(range, ratioOf(range), NO_RANGE));

const without = stated('0', '1', 'no such range');
export const steps = spindleWorking('spindle-ranges', 'The ranges beside each other', rangeSteps, {
  i_1: ifThere(1, ratioOf(1), without),
  i_2: ifThere(2, ratioOf(2), without),
  i_3: ifThere(3, ratioOf(3), without),
  i_4: ifThere(4, ratioOf(4), without),
});

export const BELT_EFFICIENCY = first(
  fact('belts', 'efficiency'),
  table(
    'belts',
    'type',
    '%',
    { direct: '100 %', 'v-belt': '94 ± 2 %', toothed: '97 ± 1.5 %', gears: '94 ± 3 %' },
    MEMORY,
  ),
);

const LOWEST_SHARE = when('spindle-drive', 'type', {
  inverter: table(
    'spindle-drive',
    'mode',
    '1',
    { vf: '0.2 ± 0.05', sensorless: '0.06 ± 0.03', closed: '0' },
    'from memory: V/f is weak below about 10 Hz, vector without an encoder below about 3 Hz',
  ),
  dc: table(
    'spindle-drive',
    'mode',
    '1',
    { vf: '0.1 ± 0.05', sensorless: '0.05 ± 0.02', closed: '0' },
    'from memory: one to twenty with armature feedback',
  ),
  servo: stated('0', '1', 'a servo motor holds its torque at rest'),
  line: stated('1', '1', 'across the mains a motor has one speed'),
});

const turnedTo = when('spindle-drive', 'type', {
  inverter: plate.get('n_d'),
  dc: fact('spindle-motor', 'topSpeed'),
  servo: fact('spindle-motor', 'topSpeed'),
  line: fact('spindle-motor', 'speed'),
});

const turnedIdling = when('spindle-drive', 'type', {
  inverter: plate.get('n_0'),
  dc: fact('spindle-motor', 'topSpeed'),
  servo: fact('spindle-motor', 'topSpeed'),
  line: plate.get('n_s'),
});

export const speeds = spindleWorking('spindle-speeds', 'Slowest and fastest', motorSpeeds, {
  n_r: fact('spindle-motor', 'speed'),
  k: LOWEST_SHARE,
  n_b: match.get('n_b'),
  n_d: turnedTo,
  n_0: turnedIdling,
  n_t: when('spindle-drive', 'type', {
    inverter: fact('spindle-motor', 'topSpeed'),
    dc: fact('spindle-motor', 'topSpeed'),
    servo: fact('spindle-motor', 'topSpeed'),
    line: fact('spindle-motor', 'speed'),
  }),
  k_f: when('spindle-motor', 'cooling', {
    own: policy('own-fan'),
    forced: stated('0', '1', 'its fan always blows'),
    none: stated('0', '1', 'its rating needs no fan'),
  }),
  i_slow: steps.get('i_slow'),
  i_fast: steps.get('i_fast'),
});

const motor = {
  T_r: match.get('T_r'),
  n_b: match.get('n_b'),
  k_c: match.get('k_c'),
  k_p: match.get('k_p'),
  k_k: PULL_OUT,
  k_s: policy('pull-out'),
  k_f: when('spindle-motor', 'cooling', {
    own: policy('own-fan-torque'),
    forced: stated('1', '1', 'its fan always blows'),
    none: stated('1', '1', 'its rating needs no fan'),
  }),
  n_f: speeds.get('n_f'),
  n_l: when('spindle-drive', 'type', {
    inverter: speeds.get('n_l'),
    dc: speeds.get('n_l'),
    servo: speeds.get('n_l'),
    line: stated('0 r/min', 'r/min', 'a slower cut is taken at the next speed the ranges have'),
  }),
  n_h: speeds.get('n_h'),
  eta: BELT_EFFICIENCY,
  k_a: policy('braking-alone'),
} satisfies Record<string, Ref>;

/** By range, at the speed of the heaviest cut. */
export const atCut = RANGES.map((range) =>
  spindleWorking(`range-${range}-cut`, `The heaviest cut in range ${range}`, spindleAtSpeed, {
    ...motor,
    i: RATIOS[range - 1]!,
    n: fact('spindle-duty', 'cutSpeed'),
  }),
);

const NO_TORQUE = stated('0 N·m', 'N·m', 'no such range');
const bestOf = (
  id: string,
  title: string,
  symbol: 'T_e' | 'T_c',
): TypedWorking<'T' | 'T_b' | 'T_f' | 'T_1' | 'T_2' | 'T_3' | 'T_4'> =>
  spindleWorking(id, title, bestRange, {
    T_1: ifThere(1, atCut[0]!.get(symbol), NO_TORQUE),
    T_2: ifThere(2, atCut[1]!.get(symbol), NO_TORQUE),
    T_3: ifThere(3, atCut[2]!.get(symbol), NO_TORQUE),
    T_4: ifThere(4, atCut[3]!.get(symbol), NO_TORQUE),
    T_f: fact('spindle', 'drag'),
  });

export const bestCool = bestOf('spindle-cut', 'The heaviest cut in its best range', 'T_e');
export const bestForHours = bestOf('spindle-cut-hours', 'The same for hours', 'T_c');

/** In the fastest range, from rest: what it starts and brakes with. */
export const standing = spindleWorking(
  'spindle-start',
  'Torque from rest in the fastest range',
  spindleAtSpeed,
  {
    ...motor,
    n_l: stated('0 r/min', 'r/min', 'starting passes through all speeds'),
    i: steps.get('i_fast'),
    n: stated('0 r/min', 'r/min', 'from rest'),
  },
);

export const JAW_FRICTION = table(
  'chuck',
  'jawSurface',
  '1',
  { smooth: '0.1', serrated: '0.25' },
  'from memory: 0.1 smooth, 0.25 serrated jaws on steel',
);

export const cut = spindleWorking('spindle-grip', 'Torque of the cut and grip it needs', gripForCut, {
  P: fact('spindle-duty', 'cutPower'),
  n: fact('spindle-duty', 'cutSpeed'),
  D: fact('spindle-duty', 'gripDiameter'),
  mu: JAW_FRICTION,
});

const masses = {
  J_sp: fact('spindle', 'inertia'),
  J_ch: fitted('chuck', fact('chuck', 'inertia'), stated('0 kg·m²', 'kg·m²', 'nothing on the nose')),
  J_w: fact('spindle-duty', 'workInertia'),
  J_b: fact('belts', 'spindleSideInertia'),
  J_m: fact('spindle-motor', 'inertia'),
  J_p: fact('belts', 'motorSideInertia'),
} satisfies Record<string, Ref>;

export const inertia = spindleWorking(
  'spindle-inertia',
  'All that turns, in the fastest range',
  spindleInertia,
  {
    ...masses,
    i: steps.get('i_fast'),
  },
);

/** By range. */
export const inertias = RANGES.map((range) =>
  spindleWorking(`range-${range}-inertia`, `All that turns, in range ${range}`, spindleInertia, {
    ...masses,
    i: RATIOS[range - 1]!,
  }),
);

export const spindleChain = {
  workings: [
    connection,
    plate,
    match,
    ...wheels,
    steps,
    speeds,
    ...atCut,
    bestCool,
    bestForHours,
    standing,
    cut,
    inertia,
    ...inertias,
  ],
  checks: [],
};
