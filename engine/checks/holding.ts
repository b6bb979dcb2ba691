/** Does the axis stay where it is: at rest under power, and with the power off. */
import { backDriving } from '../handbook/back-driving.ts';
import { type Answer, type Check, type Facts, ifAbove, ifFitted } from './check.ts';
import { DRAG, EFFICIENCY, forces, LEAD, mass, RATIO, reflected, torque } from './motion.ts';
import { fact, policy, stated, when } from './refs.ts';
import { axisWorking } from './working.ts';

const brake = axisWorking('brake', 'Holding brake', backDriving, {
  F_hold: forces.get('F_hold'),
  m: mass.get('m_all'),
  Ph: LEAD,
  eta: EFFICIENCY,
  i: when('brake', 'on', { motor: RATIO, screw: stated('1', '1', 'the brake holds the screw itself') }),
  k_br: policy('brake'),
  T_br: fact('brake', 'torque'),
  J: reflected.get('J_rot'),
  T_f: stated('0 N·m', 'N·m', 'the worst case: friction does not help'),
  t_d: fact('brake', 'delay'),
});

const LEVEL = 'The weight does not pull along this axis.';
const FALL =
  'Prop the axis before you work on its motor, belt or brake. Never stand or reach under it. A brake that holds is no proof that the machine is safe.';
const heavy = ifAbove(forces.get('F_hold'), LEVEL);

/** What the brake's torque passes through on its way to the screw. */
const brakePath = (facts: Facts): Answer | undefined => {
  const on = facts.choice('brake', 'on');
  if (on === 'screw') return { answer: 'yes', sentence: 'The brake holds the screw itself.' };
  const reduction = facts.choice('reduction', 'type');
  if (on === undefined || reduction === undefined) return undefined;
  return reduction === 'belt'
    ? {
        answer: 'tight',
        sentence:
          'The brake sits on the motor and holds the axis by the belt alone: if the belt breaks, jumps or is taken off, the axis falls. A brake on the screw holds whatever becomes of the belt.',
      }
    : {
        answer: 'yes',
        sentence: `The brake sits on the motor and holds the screw by ${reduction === 'gears' ? 'gears' : 'a coupling'}. A loose clamp or key frees the axis: look at them when you test the brake.`,
      };
};

const checks: readonly Check[] = [
  {
    form: 'fact',
    id: 'brake-path',
    scope: 'axis',
    title: 'What the brake holds the axis by',
    place: 'brake',
    caution: FALL,
    onlyIf: [heavy, ifFitted('brake')],
    judge: brakePath,
    why: 'A brake holds only as well as what stands between it and the screw. A toothed belt can lose its teeth in one hard stop, and with it the axis loses its brake.',
  },
  {
    form: 'ratio',
    id: 'stays',
    scope: 'axis',
    title: 'Stays put with the power off',
    place: 'brake',
    caution: FALL,
    onlyIf: [heavy, ifFitted('brake', false)],
    demand: torque.get('T_back'),
    capacity: DRAG,
    unit: 'N·m',
    tight: 'brake',
    why: 'A ball screw turns almost as easily under a weight as under a motor. When the drive lets go, and on every power cut, the axis sinks or falls unless something holds it.',
    says: {
      fits: 'The weight turns the screw with {asked}; drag alone holds {there}.',
      tight:
        'The weight turns the screw with {asked} and drag holds {there}: it may creep down with the shaking of the machine. Fit a brake.',
      fails:
        'The weight turns the screw with {asked}, and drag holds only {there}: without a brake the axis drops when the power goes.',
      nothing:
        'The thread’s own friction holds the weight at rest. Shaking can still creep it down: that is no brake.',
    },
  },
  {
    form: 'ratio',
    id: 'brake',
    scope: 'axis',
    title: 'Torque of the brake',
    place: 'brake',
    caution: FALL,
    onlyIf: [heavy, ifFitted('brake')],
    demand: brake.get('T_need'),
    capacity: fact('brake', 'torque'),
    unit: 'N·m',
    tight: 'exact',
    why: 'The brake must hold the whole weight with something in hand for wear and oil, since friction cannot be counted on.',
    says: {
      fits: 'The brake needs {asked} with its reserve and has {there}.',
      tight: 'The brake needs {asked} with its reserve and has just {there}.',
      fails: 'The brake needs {asked} with its reserve but has only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'drop',
    scope: 'axis',
    title: 'Drop before the brake holds',
    place: 'brake',
    caution: FALL,
    onlyIf: [heavy, ifFitted('brake')],
    demand: brake.get('s'),
    capacity: policy('drop'),
    unit: 'mm',
    tight: 'exact',
    why: 'A brake takes some hundredths of a second to close; until then the axis falls freely. The control should close the brake before the drive lets go, but a power cut asks nobody.',
    says: {
      fits: 'On a power cut the axis drops {asked} before the brake holds it; {there} is allowed.',
      tight: 'On a power cut the axis drops {asked} before the brake holds it; {there} is allowed.',
      fails:
        'On a power cut the axis drops {asked} before the brake holds it, more than the {there} allowed.',
    },
  },
];

export const holding = { workings: [brake], checks };
