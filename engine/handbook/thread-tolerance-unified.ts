import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const asme = 'ASME B1.1-2003, clauses 5.1 and 5.8';

export const threadToleranceUnified = defineSheet({
  id: 'thread-tolerance-unified',
  title: 'Tolerances of Unified threads',
  about:
    'Inch threads. Class 2 is the everyday fit, 1 is loose, 3 is close; A is the bolt, B the nut. Class 3A has no gap.',
  symbols: {
    D: input('nominal diameter', 'in', { domain: 'positive' }),
    P: input('pitch', 'in', { domain: 'positive' }),
    LE: input('length of engagement', 'in', {
      domain: 'positive',
      note: 'One diameter for UNC, UNF, 4-UN, 6-UN and 8-UN; nine pitches for all other series.',
    }),
    in1: constant('one inch', 'in', '1 in', 'definition'),
    T_d2: formula(
      'tolerance of the pitch diameter, class 2A',
      'in',
      '0.0015 * in1 * ((D / in1)^(1 / 3) + (LE / in1)^0.5 + 10 * (P / in1)^(2 / 3))',
      asme,
      { tex: 'T_{d2}', says: 'Class 1A: one and a half times this; class 3A: three quarters.' },
    ),
    T_D2: formula('tolerance of the pitch diameter, class 2B', 'in', '1.3 * T_d2', asme, {
      tex: 'T_{D2}',
      says: 'Class 1B: one and a half times this; class 3B: three quarters.',
    }),
    gap: formula('gap of classes 1A and 2A', 'in', '0.3 * T_d2', asme),
    T_d: formula(
      'tolerance of the outside, classes 2A and 3A',
      'in',
      '0.06 * in1 * (P / in1)^(2 / 3)',
      asme,
      { tex: 'T_d' },
    ),
    T_d_1: formula('tolerance of the outside, class 1A', 'in', '1.5 * T_d', asme, { tex: 'T_{d,1A}' }),
    T_small: formula(
      'bore tolerance by the formula for small and close threads',
      'in',
      '0.05 * in1 * (P / in1)^(2 / 3) + 0.03 * P / D * in1 - 0.002 * in1',
      asme,
      { tex: 'T_s' },
    ),
    T_large: formula(
      'bore tolerance by the formula for the usual threads',
      'in',
      'P > 0.251 * in1 ? 0.15 * P : 0.25 * P - 0.4 * P^2 / in1',
      asme,
      { tex: 'T_l' },
    ),
    T_D1: formula(
      'tolerance of the bore, classes 1B and 2B',
      'in',
      'D < 0.25 * in1 ? max(min(T_small, 0.394 * P), T_large) : T_large',
      asme,
      { tex: 'T_{D1}' },
    ),
    T_D1_3: formula(
      'tolerance of the bore, class 3B',
      'in',
      'P < 0.08 * in1 ? max(min(T_small, 0.394 * P), 0.23 * P - 1.5 * P^2 / in1) : max(min(T_small, 0.394 * P), 0.12 * P)',
      asme,
      { tex: 'T_{D1,3B}' },
    ),
  },
});
