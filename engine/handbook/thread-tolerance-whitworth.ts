import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const bs = 'BS 84 (from memory: check the standard before you rely on it)';

export const threadToleranceWhitworth = defineSheet({
  id: 'thread-tolerance-whitworth',
  title: 'Tolerances of Whitworth threads',
  about:
    'Recalled, not read: check BS 84 before a gauge is made by it. Medium is the everyday class; close is two thirds of it, free and normal are one and a half times.',
  symbols: {
    D: input('nominal diameter', 'in', { domain: 'positive' }),
    P: input('pitch', 'in', { domain: 'positive' }),
    L: input('length of engagement', 'in', { domain: 'positive', note: 'One diameter for BSW and BSF.' }),
    in1: constant('one inch', 'in', '1 in', 'definition'),
    T: formula(
      'tolerance of the pitch diameter, medium',
      'in',
      '0.002 * in1 * (D / in1)^(1 / 3) + 0.003 * in1 * (L / in1)^0.5 + 0.005 * in1 * (P / in1)^0.5',
      bs,
    ),
    T_d: formula('tolerance of the bolt’s outside, medium', 'in', 'T + 0.01 * in1 * (P / in1)^0.5', bs, {
      tex: 'T_d',
    }),
    T_d1: formula('tolerance of the bolt’s root, medium', 'in', 'T + 0.02 * in1 * (P / in1)^0.5', bs, {
      tex: 'T_{d1}',
    }),
    T_D1: formula(
      'tolerance of the nut’s bore',
      'in',
      'P < in1 / 26.5 ? 0.2 * P + 0.004 * in1 : (P < in1 / 21 ? 0.2 * P + 0.005 * in1 : 0.2 * P + 0.007 * in1)',
      bs,
      { tex: 'T_{D1}' },
    ),
  },
});
