/** What the screw stands: lead, whirling, speed of the balls, buckling, life, resonance. */
import { axialResonance } from '../handbook/axial-resonance.ts';
import { buckling } from '../handbook/buckling.ts';
import { dnLimit } from '../handbook/dn-limit.ts';
import { leadAgreement } from '../handbook/lead-agreement.ts';
import { screwLife } from '../handbook/screw-life.ts';
import { screwStiffness } from '../handbook/screw-stiffness.ts';
import { whirl } from '../handbook/whirl.ts';
import { SCREW_ENDS } from '../tables/screw-ends.ts';
import { type Answer, type Check, type Facts, ifChoice, ifKnown } from './check.ts';
import { cycle, forces, LEAD, mass, screwAtFeed, screwAtRapid } from './motion.ts';
import { fact, first, inapplicable, policy, stated, table, when } from './refs.ts';
import { axisWorking } from './working.ts';

const lambda = table(
  'screw',
  'ends',
  '1',
  Object.fromEntries(SCREW_ENDS.map((row) => [row.id, String(row.whirl.lambda)])),
  SCREW_ENDS[0]!.whirl.source,
);
const nE = table(
  'screw',
  'ends',
  '1',
  Object.fromEntries(SCREW_ENDS.map((row) => [row.id, String(row.buckling.nE)])),
  SCREW_ENDS[0]!.buckling.source,
);

const turning = (value: ReturnType<typeof fact>) =>
  when('screw', 'driven', {
    screw: value,
    nut: inapplicable('The nut turns and the screw stands still: it cannot whirl.'),
  });

const agreement = axisWorking('lead-agreement', 'Lead from pitch and starts', leadAgreement, {
  P: fact('screw', 'pitch'),
  z: fact('screw', 'starts'),
  tol: policy('lead-agreement'),
});

const whirling = axisWorking('whirl', 'Whirling speed of the screw', whirl, {
  lambda,
  d1: fact('screw', 'root'),
  L: fact('screw', 'freeLength'),
  k_allow: policy('whirl'),
});

const balls = axisWorking('balls', 'Speed limit of the balls', dnLimit, {
  DN: first(
    fact('screw', 'speedFactor'),
    table('screw', 'type', '1', { ball: '50000 ± 10000' }, 'from memory: older nuts with return tubes'),
  ),
  D: fact('screw', 'ballCircle'),
});

const column = axisWorking('buckling', 'Buckling of the screw', buckling, {
  nE,
  d1: fact('screw', 'root'),
  L: fact('screw', 'freeLength'),
  k_allow: policy('buckling'),
});

const life = axisWorking('life', 'Life of the screw', screwLife, {
  F1: forces.get('F_up'),
  F2: forces.get('F_up_run'),
  F3: forces.get('F_up_cut'),
  F4: stated('0 N', 'N', 'at rest nothing rolls'),
  n1: cycle.get('n_acc'),
  n2: screwAtRapid.get('n_set'),
  n3: screwAtFeed.get('n_set'),
  n4: stated('0 r/min', 'r/min', 'at rest nothing rolls'),
  q1: cycle.get('q_acc'),
  q2: cycle.get('q_run'),
  q3: cycle.get('q_cut'),
  q4: cycle.get('q_rest'),
  Ca: fact('screw', 'dynamicRating'),
  fw: fact('screw', 'loadFactor'),
});

const stiffness = axisWorking('stiffness', 'Stiffness of the screw drive', screwStiffness, {
  d1: fact('screw', 'root'),
  x: fact('screw', 'freeLength'),
  L: fact('screw', 'freeLength'),
  Ph: LEAD,
  Kn: fact('screw', 'nutStiffness'),
  Kb: fact('screw', 'bearingStiffness'),
  Kh: fact('slide', 'housingStiffness'),
});

const ringing = axisWorking('resonance', 'First resonance along the axis', axialResonance, {
  K: when('screw', 'ends', {
    'fixed-fixed': stiffness.get('K_min'),
    'fixed-supported': stiffness.get('K_twist'),
    'fixed-free': stiffness.get('K_twist'),
    'supported-supported': stiffness.get('K_twist'),
  }),
  m: mass.get('m_all'),
  m_s: stated('0 kg', 'kg', 'the screw’s own mass is left out'),
});

/** Two standard uncertainties hold the truth 95 times in a hundred. */
const SURE = 2;

/** Yes within what is allowed; no beyond it by more than the doubt of the readings; between the two nobody can tell. */
const leadAgrees = (facts: Facts): Answer | undefined => {
  const [lead, worked, low, high] = ['lead', 'worked', 'low', 'high'].map((name) => facts.worked(name));
  if (!lead || !worked || !low || !high) return undefined;
  const measured = facts.amount(lead.value, 'mm', SURE * lead.doubt);
  const reckoned = facts.amount(worked.value, 'mm', SURE * worked.doubt);
  if (lead.value >= low.value && lead.value <= high.value)
    return {
      answer: 'yes',
      sentence: `The measured lead of ${measured} agrees with pitch × starts, ${reckoned}.`,
    };
  const doubt = SURE * Math.hypot(lead.doubt, worked.doubt);
  if (lead.value >= low.value - doubt && lead.value <= high.value + doubt)
    return {
      answer: 'tight',
      sentence: `The measured lead of ${measured} and pitch × starts, ${reckoned}, differ no more than they are in doubt. Measure over more turns to be sure.`,
    };
  return {
    answer: 'no',
    sentence: `The measured lead is ${measured}, but pitch × starts makes ${reckoned}: one of the three is wrong.`,
  };
};

const rollingOnly = ifChoice('screw', 'type', 'ball', 'roller');

const checks: readonly Check[] = [
  {
    form: 'fact',
    id: 'lead',
    scope: 'axis',
    title: 'Lead, pitch and starts',
    place: 'screw',
    onlyIf: [
      ifKnown(
        'screw',
        'lead',
        'The travel of one turn has not been measured. Measure it, and it is held against pitch × starts.',
      ),
    ],
    reads: {
      lead: fact('screw', 'lead'),
      worked: agreement.get('Ph'),
      low: agreement.get('Ph_low'),
      high: agreement.get('Ph_high'),
    },
    judge: leadAgrees,
    why: 'A screw of several starts moves several pitches in one turn. If the lead is taken for the pitch, or a start is missed, the axis moves several times too far, and every speed and force is wrong by the same factor.',
  },
  {
    form: 'ratio',
    id: 'whirl',
    scope: 'axis',
    title: 'Whirling of the screw',
    place: 'screw',
    demand: turning(screwAtRapid.get('n_set')),
    capacity: whirling.get('n_allow'),
    unit: 'r/min',
    tight: 'margin',
    why: 'A long screw turned fast enough bows out like a skipping rope, hammers its bearings and bends.',
    says: {
      fits: 'The screw turns at {asked} and may turn at {there} before it whirls.',
      tight: 'The screw turns at {asked}, close to the {there} at which whirling must be feared.',
      fails: 'The screw would have to turn at {asked}, but above {there} it whirls.',
    },
  },
  {
    form: 'ratio',
    id: 'balls',
    scope: 'axis',
    title: 'Speed of the balls',
    place: 'screw',
    onlyIf: [ifChoice('screw', 'type', 'ball')],
    demand: screwAtRapid.get('n_set'),
    capacity: balls.get('n_DN'),
    unit: 'r/min',
    tight: 'margin',
    why: 'Balls thrown round too fast break the tubes that lead them back; then the nut jams.',
    says: {
      fits: 'The nut turns at {asked}; its balls stand {there}.',
      tight: 'The nut turns at {asked}, close to the {there} its balls stand.',
      fails: 'The nut would turn at {asked}, but its balls stand only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'buckling',
    scope: 'axis',
    title: 'Buckling of the screw',
    place: 'screw',
    demand: forces.get('F_max'),
    capacity: column.get('F_allow'),
    unit: 'N',
    tight: 'margin',
    why: 'A slender screw pushed too hard bends away sideways and stays bent.',
    says: {
      fits: 'The screw is pushed with {asked} and stands {there}.',
      tight: 'The screw is pushed with {asked}; it stands {there}, not much more.',
      fails: 'The screw would be pushed with {asked}, but it stands only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'life',
    scope: 'axis',
    title: 'Life of the screw',
    place: 'screw',
    onlyIf: [rollingOnly],
    demand: fact('duty', 'hoursWanted'),
    capacity: life.get('Lh'),
    unit: 'h',
    tight: 'margin',
    why: 'Rolling tracks wear out by the load to the third power. The figure is for a new, clean screw: it knows nothing of rust pits or worn balls in a second-hand one.',
    says: {
      fits: 'You want {asked}; nine in ten such screws, new, reach {there}.',
      tight: 'You want {asked}; nine in ten such screws, new, reach {there}.',
      fails: 'You want {asked}, but even a new screw reaches only {there} at this duty.',
    },
  },
  {
    form: 'ratio',
    id: 'resonance',
    scope: 'axis',
    title: 'First resonance',
    place: 'slide',
    demand: policy('resonance'),
    capacity: ringing.get('f1'),
    unit: 'Hz',
    tight: 'margin',
    why: 'The slide on its screw is a weight on a spring. If it rings at a low note, the control must be tuned soft, and the axis follows badly.',
    says: {
      fits: 'The axis rings at {there}, well above {asked}.',
      tight: 'The axis rings at {there}, not far above {asked}.',
      fails: 'The axis rings at {there}; below {asked} it can only be tuned soft.',
    },
  },
];

export const screw = { workings: [agreement, whirling, balls, column, life, stiffness, ringing], checks };
