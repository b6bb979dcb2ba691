import { defineSheet, formula, input } from '../sheet/index.ts';

const kinematics = 'derivation: kinematics of constant jerk, symmetric, from rest to rest';

export const moveSCurve = defineSheet({
  id: 'move-s-curve',
  title: 'A move with limited jerk',
  about:
    'The acceleration itself is ramped up and down, which spares the machine. Depending on the travel the move reaches the full speed, or only the full acceleration, or neither.',
  symbols: {
    D: input('travel', 'mm', { domain: 'positive' }),
    v: input('top speed allowed', 'm/min', { domain: 'positive' }),
    a: input('largest acceleration allowed', 'm/s²', { domain: 'positive' }),
    j: input('jerk allowed', 'm/s³', { domain: 'positive', note: 'How fast the acceleration may change.' }),
    t_dwell: input('rest before the next move', 's', { domain: 'not negative', tex: 't_\\mathrm{dwell}' }),
    v_j: formula('speed at which the acceleration just reaches its limit', 'm/min', 'a^2 / j', kinematics, {
      tex: 'v_j',
      says: 'Ramping the acceleration up to its limit and straight down again gains this much speed.',
    }),
    ta_full: formula(
      'time to gain the full speed',
      's',
      'v >= v_j ? v / a + a / j : 2 * sqrt(v / j)',
      kinematics,
      {
        tex: 't_{a,\\mathrm{full}}',
      },
    ),
    v_a: formula(
      'speed reached if only the acceleration limit holds',
      'm/min',
      'a / 2 * (sqrt((a / j)^2 + 4 * D / a) - a / j)',
      kinematics,
      { tex: 'v_a', says: 'For a travel too short to reach the full speed.' },
    ),
    vp: formula(
      'speed reached',
      'm/min',
      'D >= v * ta_full ? v : (v_a >= v_j ? v_a : (D^2 * j / 4)^(1/3))',
      kinematics,
      {
        tex: 'v_p',
        says: 'The full speed; or, on a shorter travel, what the full acceleration reaches; or, on a very short one, what the jerk alone allows.',
      },
    ),
    ap: formula('largest acceleration reached', 'm/s²', 'vp >= v_j ? a : sqrt(vp * j)', kinematics, {
      tex: 'a_p',
    }),
    tj: formula('time of one ramp of the acceleration', 's', 'ap / j', kinematics, { tex: 't_j' }),
    ta: formula('time to gain speed', 's', 'vp / ap + tj', kinematics, {
      tex: 't_a',
      says: 'Longer than speed over acceleration, by one ramp.',
    }),
    tc: formula('time at full speed', 's', 'D >= v * ta_full ? D / v - ta_full : 0', kinematics, {
      tex: 't_c',
      says: 'Zero for a short move.',
    }),
    T: formula('time for the move', 's', '2 * ta + tc', kinematics),
    d_acc: formula('travel while gaining speed', 'mm', 'vp * ta / 2', kinematics, { tex: 'd_\\mathrm{acc}' }),
    T_cyc: formula('time from move to move', 's', 'T + t_dwell', 'derivation: sum of the times', {
      tex: 'T_\\mathrm{cyc}',
    }),
    a_rms: formula(
      'acceleration as the motor’s heating feels it',
      'm/s²',
      'sqrt(2 * ap^2 * (ta - 2 * tj + 2 * tj / 3) / T_cyc)',
      'derivation: each ramp adds a third of the square of the largest acceleration times its time',
      { tex: 'a_\\mathrm{rms}', says: 'Squared, averaged over move and rest, and the root taken.' },
    ),
  },
});
