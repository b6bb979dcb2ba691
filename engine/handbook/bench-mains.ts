import { defineSheet, formula, input } from '../sheet/index.ts';

const DROP = 'derived: source behind a resistance';

/** Mains at the machine, idle and loaded. */
export const benchMains = defineSheet({
  id: 'bench-mains',
  title: 'Mains at the machine, idle and loaded',
  about:
    'Every socket sags under load. Two readings tell by how much, and what is left when the spindle pulls hardest.',
  symbols: {
    V0: input('voltage without the load', 'V', { tex: 'V_0', domain: 'positive' }),
    V1: input('voltage with the load', 'V', { tex: 'V_1', domain: 'positive' }),
    I: input('current of the load', 'A', { domain: 'positive' }),
    R_mains: input('resistance of the mains, as found', 'Ω', { tex: 'R_{mains}' }),
    V_low: input('lowest voltage without load', 'V', { tex: 'V_{low}', domain: 'positive' }),
    I_most: input('largest current the machine will take', 'A', { tex: 'I_{most}', domain: 'positive' }),
    V_rated: input('rated mains voltage', 'V', { tex: 'V_{rated}', domain: 'positive' }),
    V_read: input('voltage to compare', 'V', { tex: 'V_{read}', domain: 'positive' }),
    R: formula('resistance of the mains up to here', 'Ω', '(V0 - V1)/I', DROP, {
      says: 'Cable, fuse and transformer together.',
    }),
    sag: formula('sag under that load', '%', '1 - V1/V0', 'definition', {
      says: 'How much of the voltage is lost.',
    }),
    V_worst: formula('voltage at the machine at its hardest', 'V', 'V_low - R_mains*I_most', DROP, {
      tex: 'V_{worst}',
      domain: 'positive',
      says: 'Lowest mains less the sag of the largest current.',
    }),
    off: formula('off the rated voltage', '%', 'V_read/V_rated - 1', 'definition', {
      says: 'Negative is low.',
    }),
  },
});
