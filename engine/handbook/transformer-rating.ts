import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const NOTE = 'transformer maker’s application note on rectifiers: bridge with capacitor';

/** Rule-of-thumb rating of a transformer for a bridge with capacitor, and the sum over axes. */
export const transformerRating = defineSheet({
  id: 'transformer-rating',
  title: 'Rating of the transformer',
  about:
    'A transformer that feeds a rectifier and capacitor must be larger than the d.c. power suggests, since it gives its current in gulps. But not all axes work hard at the same moment.',
  symbols: {
    Vsec: input('secondary voltage', 'V', { tex: 'V_{sec}', domain: 'positive' }),
    I_dc: input('continuous bus current', 'A', { tex: 'I_{dc}', domain: 'not negative' }),
    V_dc: input('bus voltage wanted under load', 'V', { tex: 'V_{dc}', domain: 'positive' }),
    VA_rated: input('rating of the transformer', 'VA', { tex: 'S_r', domain: 'positive' }),
    P_peak: input('peak power of the hardest-working axis', 'W', { tex: 'P_{peak}', domain: 'not negative' }),
    P_others: input('continuous power of all other axes together', 'W', {
      tex: 'P_{others}',
      domain: 'not negative',
    }),
    P_sum: input('peak power of all axes together', 'W', { tex: 'P_{sum}', domain: 'not negative' }),
    share: input('share of that sum to reckon with', '%', {
      tex: 'k',
      domain: 'fraction',
      note: 'Habit: 50 to 70 %.',
    }),
    k_I: constant('secondary current for each ampere of d.c.', '1', '1.8', NOTE, { tex: 'k_I' }),
    k_V: constant('secondary voltage for each volt of d.c.', '1', '0.8', NOTE, { tex: 'k_V' }),
    V_lost: constant('volts lost in diodes and ripple', 'V', '2 V', NOTE, { tex: 'V_{lost}' }),
    I_sec: formula('secondary current', 'A', 'k_I * I_dc', NOTE, {
      tex: 'I_{sec}',
      says: 'The gulps heat like 1.8 times the mean.',
    }),
    VA: formula('rating needed', 'VA', 'Vsec * I_sec', NOTE, {
      tex: 'S',
      says: 'Secondary volts times secondary amperes.',
    }),
    I_dc_max: formula(
      'continuous bus current this transformer can give',
      'A',
      'VA_rated / (k_I * Vsec)',
      NOTE,
      {
        tex: 'I_{dc,max}',
        says: 'The same rule read the other way.',
      },
    ),
    Vsec_need: formula('secondary voltage for the bus wanted', 'V', 'k_V * (V_dc + V_lost)', NOTE, {
      tex: 'V_{sec,need}',
      says: 'A first guess; then work out the extremes of the bus.',
    }),
    P_one: formula(
      'power with one axis at its peak',
      'W',
      'P_peak + P_others',
      'common practice, no source',
      {
        tex: 'P_1',
        says: 'One axis accelerates while the others only hold or cut.',
      },
    ),
    P_shared: formula('power by the usual allowance', 'W', 'share * P_sum', 'common practice, no source', {
      tex: 'P_k',
      says: 'A share of the sum of all peaks.',
    }),
  },
});
