import { defineSheet, formula, input } from '../sheet/index.ts';

/** Rating of a transformer that feeds contactors. */
export const controlTransformer = defineSheet({
  id: 'control-transformer',
  title: 'Control transformer',
  about:
    'A contactor takes several times its holding power for the moment it pulls in. The transformer has to hold all of them, and to pull in the largest while the others hold.',
  symbols: {
    S_hold: input('holding power of all coils together', 'VA', { tex: 'S_h', domain: 'not negative' }),
    S_lamps: input('power of lamps and the rest', 'VA', { tex: 'S_l', domain: 'not negative' }),
    S_one: input('holding power of the largest coil', 'VA', { tex: 'S_1', domain: 'not negative' }),
    S_pull: input('power of the largest coil while it pulls in', 'VA', {
      tex: 'S_p',
      domain: 'not negative',
    }),
    S: formula('rating needed for good', 'VA', 'S_hold + S_lamps', 'sum of what is on', {
      says: 'All coils holding, all lamps on.',
    }),
    S_short: formula(
      'power at the worst moment',
      'VA',
      'S_hold - S_one + S_pull + S_lamps',
      'sum at the moment the largest pulls in',
      {
        tex: 'S_{short}',
        says: 'The maker’s curve says whether the voltage holds up for that moment.',
      },
    ),
  },
});
