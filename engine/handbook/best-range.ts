import { defineSheet, formula, input } from '../sheet/index.ts';

export const bestRange = defineSheet({
  id: 'best-range',
  title: 'The best of four ranges',
  about:
    'For one cut, the range that gives most. A range that is not there gives nothing, and what bearings and belts take is no longer there for the tool.',
  symbols: {
    T_1: input('torque in the first range', 'N·m', { domain: 'not negative', tex: 'T_1' }),
    T_2: input('torque in the second range', 'N·m', { domain: 'not negative', tex: 'T_2' }),
    T_3: input('torque in the third range', 'N·m', { domain: 'not negative', tex: 'T_3' }),
    T_4: input('torque in the fourth range', 'N·m', { domain: 'not negative', tex: 'T_4' }),
    T_f: input('drag of bearings, seals and belts', 'N·m', { domain: 'not negative', tex: 'T_f' }),
    T_b: formula('torque in the best range', 'N·m', 'max(T_1, T_2, T_3, T_4)', 'the largest of them', {
      tex: 'T_b',
    }),
    T: formula(
      'torque left for the tool',
      'N·m',
      'max(T_b - T_f, 0)',
      'derivation: balance of torques at a steady speed',
    ),
  },
});
