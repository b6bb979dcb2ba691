import { defineSheet, formula, input } from '../sheet/index.ts';

export const usualFriction = defineSheet({
  id: 'usual-friction',
  title: 'Usual friction torque of a motor',
  about:
    'For a motor whose friction nobody has measured: bearings and brushes take a few hundredths of the continuous torque.',
  symbols: {
    k: input('usual share of the continuous torque', '%', { domain: 'fraction' }),
    T_c: input('continuous torque', 'N·m', { domain: 'positive' }),
    T_f: formula('friction torque', 'N·m', 'k * T_c', 'common practice, no source', {
      says: 'A stand-in until the no-load current is measured.',
    }),
  },
});
