import { defineSheet, formula, input } from '../sheet/index.ts';

/** Constant and ripple of a tachogenerator. */
export const benchTacho = defineSheet({
  id: 'bench-tacho',
  title: 'Constant and ripple of a tachogenerator',
  about: 'A tachogenerator is a small generator whose volts tell the speed.',
  symbols: {
    V: input('voltage', 'V', { domain: 'positive' }),
    w: input('speed', 'r/min', { tex: '\\omega', domain: 'positive' }),
    V_pp: input('ripple, peak to peak', 'V', { tex: 'V_{pp}', domain: 'not negative' }),
    Kg: formula('tacho constant', 'V/krpm', 'V/w', 'definition', {
      tex: 'K_g',
      says: 'Volts for each thousand turns a minute.',
    }),
    ripple: formula('ripple', '%', 'V_pp/V', 'definition', { says: 'How unsteady it is at steady speed.' }),
  },
});
