import { defineSheet, formula, input } from '../sheet/index.ts';

export const mainsTap = defineSheet({
  id: 'mains-tap',
  title: 'Secondary voltage on the mains there is',
  about:
    'A transformer made for other mains gives other volts, in proportion: a 220 V winding on 240 V gives nine per cent more.',
  symbols: {
    V_plate: input('secondary voltage on the plate', 'V', { domain: 'positive' }),
    V_mains: input('mains voltage there is', 'V', { domain: 'positive' }),
    V_rated: input('mains voltage it is made for', 'V', { domain: 'positive' }),
    Vsec: formula('secondary voltage here', 'V', 'V_plate * V_mains / V_rated', 'derivation: turns ratio', {
      says: 'The turns ratio is fixed, so the secondary follows the mains.',
    }),
  },
});
