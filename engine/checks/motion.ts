/** How the axis moves: lead, reduction, efficiency, forces, inertia, torque in each phase, the working minute. */
import { axisCycle } from '../handbook/axis-cycle.ts';
import { axisTorque } from '../handbook/axis-torque.ts';
import { backEfficiency } from '../handbook/back-efficiency.ts';
import { belt } from '../handbook/belt.ts';
import { gearRatio } from '../handbook/gear-ratio.ts';
import { inertia } from '../handbook/inertia.ts';
import { moveTrapezoidal } from '../handbook/move-trapezoidal.ts';
import { movingMass } from '../handbook/moving-mass.ts';
import { reflectedInertia } from '../handbook/reflected-inertia.ts';
import { screwDrag } from '../handbook/screw-drag.ts';
import { screwLead } from '../handbook/screw-lead.ts';
import { screwPreload } from '../handbook/screw-preload.ts';
import { screwRolling } from '../handbook/screw-rolling.ts';
import { screwSliding } from '../handbook/screw-sliding.ts';
import { screwSpeed } from '../handbook/screw-speed.ts';
import { slideForces } from '../handbook/slide-forces.ts';
import { usualFriction } from '../handbook/usual-friction.ts';
import { WAY_FRICTION } from '../tables/way-friction.ts';
import type { RatioCheck } from './check.ts';
import { CONTINUOUS_TORQUE } from './motor-constants.ts';
import { fact, first, stated, table, when } from './refs.ts';
import { axisWorking } from './working.ts';

const MEMORY = 'from memory: handbook values of the trade';

const leadFromThread = axisWorking('lead', 'Lead from pitch and starts', screwLead, {
  P: fact('screw', 'pitch'),
  z: fact('screw', 'starts'),
});

/** Travel of one screw turn: measured if it was, else pitch times starts. */
export const LEAD = first(fact('screw', 'lead'), leadFromThread.get('Ph'));

const teeth = axisWorking('teeth', 'Reduction from the teeth', belt, {
  z_m: fact('reduction', 'motorTeeth'),
  z_s: fact('reduction', 'screwTeeth'),
});

/** Motor turns for one screw turn. */
export const RATIO = when('reduction', 'type', {
  coupling: stated('1', '1', 'a coupling turns both shafts alike'),
  belt: teeth.get('i'),
  gears: teeth.get('i'),
});

export const REDUCTION_EFFICIENCY = first(
  fact('reduction', 'efficiency'),
  table('reduction', 'type', '%', { coupling: '100 %', belt: '97 ± 1.5 %', gears: '97 ± 1.5 %' }, MEMORY),
);

const threadFriction = first(
  fact('screw', 'threadFriction'),
  table(
    'screw',
    'type',
    '1',
    {
      ball: '0.0065 ± 0.0035',
      roller: '0.0105 ± 0.0045',
      trapezoidal: '0.12 ± 0.04',
      acme: '0.12 ± 0.04',
      square: '0.12 ± 0.04',
    },
    'from memory: rolling 0.003 to 0.015, oiled bronze nut 0.08 to 0.15',
  ),
);

const rolling = axisWorking('rolling', 'Efficiency of a rolling screw', screwRolling, {
  d0: fact('screw', 'ballCircle'),
  Ph: LEAD,
  mu: threadFriction,
});

const sliding = axisWorking('sliding', 'Efficiency of a sliding screw', screwSliding, {
  d: fact('screw', 'outside'),
  P: fact('screw', 'pitch'),
  z: fact('screw', 'starts'),
  mu: threadFriction,
  alpha: table(
    'screw',
    'type',
    '°',
    { trapezoidal: '15 °', acme: '14.5 °', square: '0 °' },
    'flank half-angle: ISO 2904 trapezoidal, ASME B1.5 Acme',
  ),
  mu_c: stated('0', '1', 'the thrust runs on a rolling bearing'),
  d_c: stated('0 mm', 'mm', 'the thrust runs on a rolling bearing'),
});

const SLIDING_TYPES = ['trapezoidal', 'acme', 'square'] as const;
const byScrew = (roll: ReturnType<typeof first>, slide: ReturnType<typeof first>) =>
  when('screw', 'type', {
    ball: roll,
    roller: roll,
    ...Object.fromEntries(SLIDING_TYPES.map((type) => [type, slide])),
  });

export const EFFICIENCY = first(
  fact('screw', 'efficiency'),
  byScrew(rolling.get('eta'), sliding.get('eta_all')),
);

const backwards = axisWorking('backwards', 'Efficiency when the load turns the screw', backEfficiency, {
  eta: EFFICIENCY,
});

export const BACK_EFFICIENCY = byScrew(
  first(rolling.get('eta_b'), backwards.get('eta_b')),
  sliding.get('eta_b'),
);

const nutDrag = axisWorking('nut-drag', 'Drag of the preloaded nut', screwPreload, {
  d0: fact('screw', 'ballCircle'),
  Ph: LEAD,
  Fpr: fact('screw', 'preload'),
});

const drag = axisWorking('drag', 'Drag of nut, seals and bearings', screwDrag, {
  T_nut: byScrew(nutDrag.get('T_pr'), stated('0 N·m', 'N·m', 'a sliding nut is not preloaded')),
  T_end: table(
    'screw',
    'type',
    'N·m',
    Object.fromEntries(['ball', 'roller', ...SLIDING_TYPES].map((type) => [type, '0.15 ± 0.1 N·m'])),
    'from memory: seals and a pair of small thrust bearings 0.05 to 0.3 N·m',
  ),
});

export const DRAG = first(fact('screw', 'dragTorque'), drag.get('T_d'));

export const screwAtRapid = axisWorking('screw-rapid', 'Screw speed at rapid', screwSpeed, {
  Ph: LEAD,
  v_set: fact('duty', 'rapid'),
});
export const screwAtFeed = axisWorking('screw-feed', 'Screw speed at the fastest feed', screwSpeed, {
  Ph: LEAD,
  v_set: fact('duty', 'feed'),
});
export const motorAtRapid = axisWorking('motor-rapid', 'Motor speed at rapid', gearRatio, {
  i: RATIO,
  n_s: screwAtRapid.get('n_set'),
});
export const motorAtFeed = axisWorking('motor-feed', 'Motor speed at the fastest feed', gearRatio, {
  i: RATIO,
  n_s: screwAtFeed.get('n_set'),
});

const counterweight = when('slide', 'balance', {
  weight: fact('slide', 'counterweight'),
  none: stated('0 kg', 'kg', 'no counterweight'),
  force: stated('0 kg', 'kg', 'no counterweight'),
});

export const forces = axisWorking('forces', 'Forces on the slide', slideForces, {
  m: fact('slide', 'mass'),
  theta: fact('slide', 'slope'),
  a: fact('duty', 'acceleration'),
  mu: first(
    fact('slide', 'friction'),
    table(
      'slide',
      'ways',
      '1',
      Object.fromEntries(WAY_FRICTION.map((row) => [row.id, `${row.mu} ± ${row.half}`])),
      'rails: a guide maker’s support page; lined and plain ways: A. H. Slocum, Precision Machine Design (1992) and from memory',
    ),
  ),
  phi: stated('90 °', '°', 'the friction named is that of the whole way, gib included'),
  F_n: stated('0 N', 'N', 'the gib is in the friction named'),
  F_seal: first(
    fact('slide', 'sealDrag'),
    table(
      'slide',
      'ways',
      'N',
      {
        'ball-rail': '70 ± 50 N',
        'roller-rail': '70 ± 50 N',
        'ptfe-box': '25 ± 25 N',
        moulded: '25 ± 25 N',
        'cast-iron': '25 ± 25 N',
        'hardened-box': '25 ± 25 N',
        dovetail: '25 ± 25 N',
      },
      'from memory: 5 to 30 N for each of four rail carriages; felt wipers up to 50 N',
    ),
  ),
  F_cut: fact('duty', 'cutForce'),
  m_cb: counterweight,
  F_b: when('slide', 'balance', {
    force: fact('slide', 'balanceForce'),
    none: stated('0 N', 'N', 'no balance'),
    weight: stated('0 N', 'N', 'the counterweight is counted as mass'),
  }),
});

export const mass = axisWorking('mass', 'All that moves', movingMass, {
  m: fact('slide', 'mass'),
  m_cb: counterweight,
});

const screwInertia = axisWorking('screw-inertia', 'Inertia of the screw', inertia, {
  d: fact('screw', 'outside'),
  L: fact('screw', 'length'),
  rho: stated('7850 kg/m³', 'kg/m³', 'steel'),
});
const slideInertia = axisWorking('slide-inertia', 'Inertia of the slide at the screw', inertia, {
  m: mass.get('m_all'),
  Ph: LEAD,
});

export const reflected = axisWorking('reflected', 'Inertia as the motor feels it', reflectedInertia, {
  J_m: fact('motor', 'inertia'),
  J_mp: fact('reduction', 'motorSideInertia'),
  J_sp: fact('reduction', 'screwSideInertia'),
  J_s: first(
    fact('screw', 'inertia'),
    when('screw', 'driven', {
      screw: screwInertia.get('J_cyl'),
      nut: fact('screw', 'inertia'),
    }),
  ),
  J_lin: slideInertia.get('J_lin'),
  m_belt: stated('0 kg', 'kg', 'the belt’s own mass is left out'),
  r_m: stated('0 mm', 'mm', 'the belt’s own mass is left out'),
  i: RATIO,
});

const usual = axisWorking('usual-friction', 'Usual friction of the motor', usualFriction, {
  k: table(
    'motor',
    'type',
    '%',
    { brushed: '4 ± 3 %', brushless: '2 ± 1.5 %', stepper: '3 ± 2 %' },
    'common practice, no source: no-load current of a few hundredths of the rated one',
  ),
  T_c: when('motor', 'type', {
    brushed: CONTINUOUS_TORQUE,
    brushless: CONTINUOUS_TORQUE,
    stepper: fact('motor', 'holdingTorque'),
  }),
});

/** Friction torque of the motor itself. */
export const MOTOR_FRICTION = first(fact('motor', 'friction'), usual.get('T_f'));

export const torque = axisWorking('torque', 'Torque the motor must give', axisTorque, {
  F_up_run: forces.get('F_up_run'),
  F_dn_run: forces.get('F_dn_run'),
  F_up_cut: forces.get('F_up_cut'),
  F_dn_cut: forces.get('F_dn_cut'),
  F_hold: forces.get('F_hold'),
  Ph: LEAD,
  eta: EFFICIENCY,
  eta_b: BACK_EFFICIENCY,
  T_d: DRAG,
  i: RATIO,
  eta_g: REDUCTION_EFFICIENCY,
  J: reflected.get('J_tot'),
  a: fact('duty', 'acceleration'),
  T_f: MOTOR_FRICTION,
});

const move = axisWorking('move', 'A usual rapid move', moveTrapezoidal, {
  D: fact('duty', 'moveLength'),
  v: fact('duty', 'rapid'),
  a: fact('duty', 'acceleration'),
});

export const cycle = axisWorking('cycle', 'The working minute', axisCycle, {
  N: fact('duty', 'movesPerMinute'),
  q: fact('duty', 'cutShare'),
  ta: move.get('ta'),
  tc: move.get('tc'),
  n: screwAtRapid.get('n_set'),
  T_up: torque.get('T_up'),
  T_dn: torque.get('T_dn'),
  T_acc_up: torque.get('T_acc_up'),
  T_acc_dn: torque.get('T_acc_dn'),
  T_dec_up: torque.get('T_dec_up'),
  T_dec_dn: torque.get('T_dec_dn'),
  T_cut: torque.get('T_cut'),
  T_still: torque.get('T_still'),
  T_f: MOTOR_FRICTION,
});

const pace: RatioCheck = {
  form: 'ratio',
  id: 'pace',
  scope: 'axis',
  title: 'Pace of the work',
  place: 'duty',
  demand: cycle.get('t_asked'),
  capacity: cycle.get('t_all'),
  unit: 's',
  tight: 'exact',
  why: 'If move and cut together take longer than the time from move to move, the duty you entered cannot be done, and every answer about heat rests on it.',
  says: {
    fits: 'Move and cut take {asked} of the {there} from move to move.',
    tight: 'Move and cut take {asked} of the {there} from move to move: there is no rest left.',
    fails: 'Move and cut take {asked}, but you allow only {there} from move to move.',
  },
};

export const motion = {
  workings: [
    leadFromThread,
    teeth,
    rolling,
    sliding,
    backwards,
    nutDrag,
    drag,
    screwAtRapid,
    screwAtFeed,
    motorAtRapid,
    motorAtFeed,
    forces,
    mass,
    screwInertia,
    slideInertia,
    reflected,
    torque,
    usual,
    move,
    cycle,
  ],
  checks: [pace],
};
