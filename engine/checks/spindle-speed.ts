/** How fast the spindle can turn and may turn, how slowly, and whether the jaws still hold. */
import { bearingSpeed } from '../handbook/bearing-speed.ts';
import { chuckGrip } from '../handbook/chuck-grip.ts';
import { gripForCut } from '../handbook/grip-for-cut.ts';
import { rimSpeed } from '../handbook/rim-speed.ts';
import { spindleLimits } from '../handbook/spindle-limits.ts';
import { type Check, ifAbove, ifChoice, ifFitted } from './check.ts';
import { fact, first, fitted, policy, table, when } from './refs.ts';
import { cut, JAW_FRICTION, NO_LIMIT, speeds, steps } from './spindle-chain.ts';
import { spindleWorking } from './working.ts';

const FLIES =
  'What lets go at speed goes through sheet metal. Nobody in the plane of the chuck; the guard shut. The mark on the chuck, the jaws in use and the work each have their own limit, and the lowest counts.';

const jaws = {
  m: fact('chuck', 'jawMass'),
  r: fact('chuck', 'jawRadius'),
  z: fact('chuck', 'jaws'),
  F_0: fact('chuck', 'grip'),
} as const;

export const grip = spindleWorking('jaw-grip', 'Grip of the jaws at the heaviest cut', chuckGrip, {
  ...jaws,
  F_z: cut.get('F_z'),
  S_p: policy('grip'),
  S_z: policy('grip-cut'),
  n: fact('spindle-duty', 'cutSpeed'),
});

const cutAtTop = spindleWorking(
  'spindle-grip-top',
  'Grip a cut of that power needs at top speed',
  gripForCut,
  {
    P: fact('spindle-duty', 'cutPower'),
    n: fact('spindle-duty', 'topSpeed'),
    D: fact('spindle-duty', 'gripDiameter'),
    mu: JAW_FRICTION,
  },
);

const gripAtTop = spindleWorking('jaw-grip-top', 'Grip of the jaws at top speed', chuckGrip, {
  ...jaws,
  F_z: cutAtTop.get('F_z'),
  S_p: policy('grip'),
  S_z: policy('grip-cut'),
  n: fact('spindle-duty', 'topSpeed'),
});

const bearing = spindleWorking('spindle-bearing', 'Speed limit of the bearings', bearingSpeed, {
  A: table(
    'spindle',
    'bearings',
    '1',
    {
      plain: '80000 ± 20000',
      taper: '180000 ± 40000',
      ball: '300000 ± 60000',
      precision: '500000 ± 100000',
    },
    'from memory: grease, light preload',
  ),
  d: fact('spindle', 'bore'),
});

const rim = spindleWorking('pulley-rim', 'Speed limit of the wheel on the spindle', rimSpeed, {
  v: table(
    'belts',
    'pulleyMaterial',
    'm/s',
    { 'cast-iron': '30 m/s', steel: '45 m/s', aluminium: '40 m/s', unknown: '30 m/s' },
    'from memory: cast iron 30 m/s, steel and aluminium more',
  ),
  D: fact('belts', 'largestWheel'),
});

const CHUCK = fitted('chuck', fact('chuck', 'topSpeed'), NO_LIMIT);
const JAWS = fitted(
  'chuck',
  when('chuck', 'type', {
    power: grip.get('n_67'),
    manual: grip.get('n_67'),
    collet: NO_LIMIT,
    holder: NO_LIMIT,
  }),
  NO_LIMIT,
);
const BEARINGS = first(fact('spindle', 'topSpeed'), bearing.get('n'));
const pulley = first(fact('belts', 'pulleySpeed'), rim.get('n'));
const PULLEYS = when('belts', 'type', {
  direct: NO_LIMIT,
  'v-belt': pulley,
  toothed: pulley,
  gears: pulley,
});

/** What may set the limit of the spindle's speed, by name. */
export const LIMITS = [
  ['chuck', CHUCK],
  ['jaws', JAWS],
  ['bearing', BEARINGS],
  ['pulley', PULLEYS],
] as const;

export const limits = spindleWorking('spindle-limits', 'Fastest the spindle may ever turn', spindleLimits, {
  n_c: CHUCK,
  n_j: JAWS,
  n_b: BEARINGS,
  n_p: PULLEYS,
});

const least = [
  ['the speed marked on the chuck', CHUCK],
  ['the jaws, which are thrown outwards and lose their grip', JAWS],
  ['the spindle’s bearings', BEARINGS],
  ['the wheel on the spindle', PULLEYS],
] as const;

const NO_PERMISSION =
  'No permission to turn it at that speed: until every limit is known, the slowest range and a low speed are all that is sensible.';

const checks: readonly Check[] = [
  {
    form: 'ratio',
    id: 'overspeed',
    scope: 'spindle',
    title: 'Top speed and what chuck, jaws, bearings and wheels stand',
    place: 'chuck',
    caution: FLIES,
    untilKnown: NO_PERMISSION,
    demand: fact('spindle-duty', 'topSpeed'),
    capacity: limits.get('n'),
    least,
    unit: 'r/min',
    tight: 'exact',
    why: 'The force that pulls a chuck apart grows with the square of its speed: ten per cent too fast is a fifth too much. The least of all limits is the limit of the spindle.',
    says: {
      fits: 'You want {asked}; the least limit is {there}, set by {which}.',
      tight: 'You want {asked}; the least limit is {there}, set by {which}.',
      fails: 'You want {asked}, but the limit is {there}, set by {which}. Do not turn it faster.',
    },
  },
  {
    form: 'ratio',
    id: 'overspeed-drive',
    scope: 'spindle',
    title: 'What the drive could turn it to, and what it stands',
    place: 'spindle-drive',
    caution: FLIES,
    untilKnown: NO_PERMISSION,
    demand: speeds.get('S_0'),
    capacity: limits.get('n'),
    least,
    unit: 'r/min',
    tight: 'exact',
    why: 'A wrong digit in a program, a lost command wire or a runaway control asks for full speed. What the drive itself is set to is the last thing between that and a burst chuck. Idling, an induction motor turns as fast as its field, some per cent above the speed on its plate: that counts here.',
    says: {
      fits: 'As set, the drive can turn the spindle to {asked}; the least limit is {there}, set by {which}.',
      tight: 'As set, the drive can turn the spindle to {asked}; the least limit is {there}, set by {which}.',
      fails:
        'As set, the drive can turn the spindle to {asked} in its fastest range, but the limit is {there}, set by {which}: set its highest frequency lower.',
    },
  },
  {
    form: 'ratio',
    id: 'reach',
    scope: 'spindle',
    title: 'Does it reach the top speed',
    place: 'belts',
    demand: fact('spindle-duty', 'topSpeed'),
    capacity: speeds.get('S_h'),
    unit: 'r/min',
    tight: 'exact',
    why: 'The fastest range, the highest frequency of the drive and what the rotor stands together make the top speed.',
    says: {
      fits: 'You want {asked}; in the fastest range it reaches {there}.',
      tight: 'You want {asked}; in the fastest range it reaches {there}.',
      fails: 'You want {asked}, but in the fastest range it reaches only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'lowest-speed',
    scope: 'spindle',
    title: 'Lowest useful speed',
    place: 'belts',
    demand: speeds.get('S_l'),
    capacity: fact('spindle-duty', 'lowestSpeed'),
    unit: 'r/min',
    tight: 'exact',
    why: 'Below a few turns a second an induction motor has little torque and turns unevenly, however low the frequency goes. Only a servo, or a vector drive with an encoder on the motor, holds at 0 r/min.',
    says: {
      fits: 'In the slowest range the torque can be relied on down to {asked}; you want {there}.',
      tight: 'In the slowest range the torque can be relied on down to {asked}; you want {there}.',
      fails:
        'In the slowest range the torque can be relied on only down to {asked}, and you want {there}: a slower range, or a drive with an encoder on the motor.',
      nothing: 'The motor holds its torque down to rest.',
    },
  },
  {
    form: 'ratio',
    id: 'range-step',
    scope: 'spindle',
    title: 'Do the ranges meet',
    place: 'belts',
    onlyIf: [
      ifChoice('spindle-drive', 'type', 'inverter', 'dc', 'servo'),
      ifAbove(speeds.get('n_l'), 'The motor is useful down to rest, so its ranges always meet.'),
    ],
    demand: steps.get('step'),
    capacity: speeds.get('span'),
    unit: '1',
    tight: 'margin',
    why: 'Between two ranges the motor itself must cover the step. Where it cannot, there are spindle speeds that no range reaches with useful torque.',
    says: {
      fits: 'The next range is at most {asked} times faster; the motor covers {there} to one.',
      tight: 'The next range is at most {asked} times faster; the motor covers {there} to one.',
      fails:
        'The next range is {asked} times faster, but the motor covers only {there} to one: between them are speeds that no range reaches.',
    },
  },
  {
    form: 'ratio',
    id: 'jaw-grip',
    scope: 'spindle',
    title: 'Grip of the jaws for the heaviest cut',
    place: 'chuck',
    caution: FLIES,
    onlyIf: [ifFitted('chuck'), ifChoice('chuck', 'type', 'power', 'manual')],
    demand: grip.get('F_n'),
    capacity: fact('chuck', 'grip'),
    unit: 'kN',
    tight: 'exact',
    why: 'The jaws must hold the work against the cut, and they are thrown outwards at the same time. A chuck gripped tight at rest may hold nothing at speed.',
    says: {
      fits: 'Cut and speed ask for {asked} of grip at rest, safety included; there are {there}.',
      tight: 'Cut and speed ask for {asked} of grip at rest, safety included; there are {there}.',
      fails:
        'Cut and speed ask for {asked} of grip at rest, safety included, and there are only {there}: the work is thrown.',
    },
  },
  {
    form: 'ratio',
    id: 'jaw-grip-top',
    scope: 'spindle',
    title: 'Grip of the jaws at top speed',
    place: 'chuck',
    caution: FLIES,
    onlyIf: [ifFitted('chuck'), ifChoice('chuck', 'type', 'power', 'manual')],
    demand: gripAtTop.get('F_n'),
    capacity: fact('chuck', 'grip'),
    unit: 'kN',
    tight: 'exact',
    why: 'A cut of the same power pushes less the faster it turns, but the jaws are thrown outwards with the square of the speed. Between the heaviest cut and the top speed lies nothing worse than at one of the two ends, so both are asked.',
    says: {
      fits: 'At top speed, cutting with the same power, the jaws need {asked} of grip at rest, safety included; there are {there}.',
      tight:
        'At top speed, cutting with the same power, the jaws need {asked} of grip at rest, safety included; there are {there}.',
      fails:
        'At top speed, cutting with the same power, the jaws need {asked} of grip at rest, safety included, and there are only {there}: the work is thrown. Turn it slower, or take lighter jaws.',
    },
  },
];

export const spindleSpeeds = { workings: [grip, cutAtTop, gripAtTop, bearing, rim, limits], checks };
