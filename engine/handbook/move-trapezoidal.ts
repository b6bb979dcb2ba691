import { defineSheet, formula, input } from '../sheet/index.ts';

const kinematics = 'derivation: kinematics, from rest to rest';

export const moveTrapezoidal = defineSheet({
  id: 'move-trapezoidal',
  title: 'A move with steady acceleration',
  about:
    'Gain speed, run, slow down. A short move never reaches the full speed: it only gains speed and slows down again.',
  symbols: {
    D: input('travel', 'mm', { domain: 'positive' }),
    v: input('top speed allowed', 'm/min', { domain: 'positive' }),
    a: input('acceleration', 'm/s²', { domain: 'positive' }),
    t_dwell: input('rest before the next move', 's', { domain: 'not negative', tex: 't_\\mathrm{dwell}' }),
    T_want: input('time wanted for the move', 's', { domain: 'positive', tex: 'T_\\mathrm{want}' }),
    v_pk: formula('speed reached', 'm/min', 'D >= v^2 / a ? v : sqrt(a * D)', kinematics, {
      tex: 'v_\\mathrm{pk}',
      says: 'The full speed if the travel is long enough to reach it.',
    }),
    ta: formula('time to gain speed', 's', 'v_pk / a', kinematics, {
      tex: 't_a',
      says: 'Slowing down takes as long.',
    }),
    tc: formula('time at full speed', 's', 'D >= v^2 / a ? D / v - v / a : 0', kinematics, {
      tex: 't_c',
      says: 'Zero for a short move.',
    }),
    T: formula('time for the move', 's', '2 * ta + tc', kinematics),
    d_acc: formula('travel while gaining speed', 'mm', 'v_pk^2 / (2 * a)', kinematics, {
      tex: 'd_\\mathrm{acc}',
    }),
    T_cyc: formula('time from move to move', 's', 'T + t_dwell', 'derivation: sum of the times', {
      tex: 'T_\\mathrm{cyc}',
    }),
    a_rms: formula(
      'acceleration as the motor’s heating feels it',
      'm/s²',
      'a * sqrt(2 * ta / T_cyc)',
      kinematics,
      {
        tex: 'a_\\mathrm{rms}',
        says: 'Squared, averaged over move and rest, and the root taken.',
      },
    ),
    v_third: formula('top speed, a third each', 'm/min', '1.5 * D / T_want', kinematics, {
      tex: 'v_{1/3}',
      says: 'For a move that gains speed, runs and slows down for a third of the wanted time each.',
    }),
    a_third: formula('acceleration, a third each', 'm/s²', '4.5 * D / T_want^2', kinematics, {
      tex: 'a_{1/3}',
    }),
  },
});
