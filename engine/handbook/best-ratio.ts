import { defineSheet, formula, input } from '../sheet/index.ts';

const calculus = 'derivation: torque balance of a loss-free ratio, differentiated';

export const bestRatio = defineSheet({
  id: 'best-ratio',
  title: 'Best reduction',
  about:
    'Too little reduction and the motor cannot move the load; too much and it only spins itself up. The best is flat: 25 % too low or 35 % too high costs under 5 % of the acceleration. Then check that the motor can still reach the speed.',
  symbols: {
    J_L: input('inertia of the load, at the load', 'kg·m²', { domain: 'positive' }),
    J_M: input('inertia of the motor', 'kg·m²', { domain: 'positive' }),
    T_L: input('torque of the load, at the load', 'N·m', { domain: 'not negative' }),
    T_M: input('torque of the motor', 'N·m', { domain: 'positive' }),
    alpha: input('angular acceleration wanted, at the load', 'rad/s²', {
      domain: 'positive',
      tex: '\\alpha',
    }),
    n_M: input('top speed of the motor', 'r/min', { domain: 'positive' }),
    n_L: input('top speed wanted, at the load', 'r/min', { domain: 'positive' }),
    i: input('reduction there is', '1', { domain: 'positive' }),
    i_J: formula('best for inertia alone', '1', 'sqrt(J_L / J_M)', calculus, {
      says: 'The load then feels just as heavy as the rotor.',
    }),
    i_a: formula(
      'best for the quickest start',
      '1',
      'T_L / T_M + sqrt((T_L / T_M)^2 + J_L / J_M)',
      calculus,
      {
        says: 'A load torque calls for more reduction.',
      },
    ),
    alpha_a: formula(
      'acceleration with it, at the load',
      'rad/s²',
      '(i_a * T_M - T_L) / (J_L + i_a^2 * J_M)',
      calculus,
      {
        tex: '\\alpha_a',
      },
    ),
    alpha_i: formula(
      'acceleration with the reduction there is',
      'rad/s²',
      '(i * T_M - T_L) / (J_L + i^2 * J_M)',
      calculus,
      {
        tex: '\\alpha_i',
        says: 'Below zero the motor cannot even hold the load.',
      },
    ),
    i_T: formula(
      'best for the smallest motor torque',
      '1',
      'sqrt((J_L * alpha + T_L) / (J_M * alpha))',
      calculus,
      {
        says: 'For the wanted acceleration.',
      },
    ),
    T_T: formula('motor torque with it', 'N·m', 'J_M * i_T * alpha + (J_L * alpha + T_L) / i_T', calculus),
    i_cap: formula('most the speed allows', '1', 'n_M / n_L', 'derivation: definition of the ratio', {
      tex: 'i_\\mathrm{cap}',
    }),
    i_use: formula('quickest start that still reaches the speed', '1', 'min(i_a, i_cap)', calculus, {
      tex: 'i_\\mathrm{use}',
    }),
  },
});
