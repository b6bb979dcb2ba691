/** A stepper axis: it either follows or stalls, so torque at speed is the question. */
import { stepper as stepperSheet } from '../handbook/stepper.ts';
import { stepperCurve } from '../handbook/stepper-curve.ts';
import { stepperTurn } from '../handbook/stepper-turn.ts';
import { BUS_LOW } from './bus.ts';
import { type Check, ifAbove, ifChoice } from './check.ts';
import { forces, motorAtFeed, motorAtRapid, reflected, torque } from './motion.ts';
import { fact, first, policy, type Ref } from './refs.ts';
import { axisWorking } from './working.ts';

const electrics = {
  theta_s: fact('motor', 'stepAngle'),
  Th: fact('motor', 'holdingTorque'),
  I: fact('motor', 'continuousCurrent'),
  I_peak: fact('drive', 'peakCurrent'),
  R: fact('motor', 'resistance'),
  L: fact('motor', 'inductance'),
  Vs: BUS_LOW,
} satisfies Record<string, Ref>;

/** Pull-out torque at a speed: from the maker’s curve if there is one, else worked from the winding. */
const at = (id: string, words: string, w: Ref) => {
  const worked = axisWorking(`stepper-${id}`, `Pull-out torque ${words}`, stepperSheet, {
    ...electrics,
    w,
    J: reflected.get('J_tot'),
  });
  const read = axisWorking(`stepper-${id}-curve`, `Pull-out torque ${words}, from the curve`, stepperCurve, {
    pullOut: fact('motor', 'pullOut'),
    w,
  });
  const usable = axisWorking(`stepper-${id}-usable`, `Torque that may be used ${words}`, stepperTurn, {
    T_po: first(read.get('T_po'), worked.get('T_po')),
    k: policy('stepper-usable'),
  });
  return { workings: [worked, read, usable], torque: usable.get('T_use') };
};

const rapid = at('rapid', 'at rapid', motorAtRapid.get('n_m'));
const feed = at('feed', 'at the fastest feed', motorAtFeed.get('n_m'));

const STEPPER = ifChoice('motor', 'type', 'stepper');
const STALL =
  'A stepper that is asked for more than it has stalls in an instant and loses its place, and nothing tells the control. The worked torque is an optimistic estimate: it can show that a stepper is not enough, never that it is.';

const checks: readonly Check[] = [
  {
    form: 'ratio',
    id: 'pull-out',
    scope: 'axis',
    title: 'Stepper at rapid',
    place: 'motor',
    onlyIf: [STEPPER],
    demand: torque.get('T_acc'),
    capacity: rapid.torque,
    unit: 'N·m',
    tight: 'margin',
    why: STALL,
    says: {
      fits: 'Gaining speed takes {asked}; at rapid the stepper can be counted on for {there}.',
      tight: 'Gaining speed takes {asked}; at rapid the stepper can be counted on for {there}.',
      fails:
        'Gaining speed takes {asked}, but at rapid the stepper can only be counted on for {there}: it stalls.',
    },
  },
  {
    form: 'ratio',
    id: 'pull-out-cut',
    scope: 'axis',
    title: 'Stepper while cutting',
    place: 'motor',
    onlyIf: [STEPPER],
    demand: torque.get('T_cut'),
    capacity: feed.torque,
    unit: 'N·m',
    tight: 'margin',
    why: STALL,
    says: {
      fits: 'The cut takes {asked}; at that feed the stepper can be counted on for {there}.',
      tight: 'The cut takes {asked}; at that feed the stepper can be counted on for {there}.',
      fails:
        'The cut takes {asked}, but at that feed the stepper can only be counted on for {there}: it loses steps in the metal.',
    },
  },
  {
    form: 'ratio',
    id: 'stepper-current',
    scope: 'axis',
    title: 'Current of the stepper’s drive',
    place: 'drive',
    onlyIf: [STEPPER],
    demand: fact('drive', 'peakCurrent'),
    capacity: fact('drive', 'continuousCurrent'),
    unit: 'A',
    tight: 'exact',
    why: 'A stepper’s drive holds its set current all the time, moving or not.',
    says: {
      fits: 'The drive is set to {asked} and may give {there} for hours.',
      tight: 'The drive is set to {asked}, just what it may give for hours.',
      fails: 'The drive is set to {asked} but may give only {there} for hours.',
    },
  },
  {
    form: 'ratio',
    id: 'stepper-heat',
    scope: 'axis',
    title: 'Current of the stepper’s winding',
    place: 'motor',
    onlyIf: [STEPPER],
    demand: fact('drive', 'peakCurrent'),
    capacity: fact('motor', 'continuousCurrent'),
    unit: 'A',
    tight: 'exact',
    why: 'More than the rated current cooks the winding slowly; the torque hardly grows.',
    says: {
      fits: 'The drive is set to {asked}; the winding is rated for {there}.',
      tight: 'The drive is set to {asked}; the winding is rated for {there}.',
      fails: 'The drive is set to {asked}; the winding is rated for only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'stepper-holding',
    scope: 'axis',
    title: 'Stepper holding the weight',
    place: 'motor',
    onlyIf: [STEPPER, ifAbove(forces.get('F_hold'), 'The weight does not pull along this axis.')],
    demand: torque.get('T_still'),
    capacity: fact('motor', 'holdingTorque'),
    unit: 'N·m',
    tight: 'margin',
    caution:
      'A stepper without current holds nothing. Fit and test a brake, and prop the axis before you work on it.',
    why: 'A vertical or sloping axis pulls on its motor even at rest.',
    says: {
      fits: 'At rest the weight asks {asked}; the stepper holds {there}.',
      tight: 'At rest the weight asks {asked}; the stepper holds {there}.',
      fails: 'At rest the weight asks {asked}, but the stepper holds only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'stepper-inertia',
    scope: 'axis',
    title: 'Load inertia against the stepper’s rotor',
    place: 'reduction',
    onlyIf: [STEPPER],
    demand: reflected.get('ratio'),
    capacity: policy('inertia-ratio-stepper'),
    unit: '1',
    tight: 'exact',
    why: 'A stepper that has to shake a heavy load rings at each step and loses steps at its resonance.',
    says: {
      fits: 'The load is {asked} times the rotor; up to {there} is usual.',
      tight: 'The load is {asked} times the rotor; up to {there} is usual.',
      fails: 'The load is {asked} times the rotor, more than the {there} a stepper bears well.',
    },
  },
];

export const stepperAxis = { workings: [...rapid.workings, ...feed.workings], checks };
