import { defineSheet, formula, input } from '../sheet/index.ts';

export const screwSpeed = defineSheet({
  id: 'screw-speed',
  title: 'Slide speed and screw speed',
  about: 'How fast the slide moves at a screw speed, and how fast the screw must turn for a slide speed.',
  symbols: {
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    n: input('screw speed there is', 'r/min', { domain: 'not negative' }),
    v_set: input('slide speed wanted', 'm/min', { domain: 'not negative', tex: 'v_\\mathrm{set}' }),
    v: formula('slide speed reached', 'm/min', 'Ph * n / (2 * pi)', 'derivation: one turn moves one lead', {
      says: 'Turns per second times the lead.',
    }),
    n_set: formula(
      'screw speed needed',
      'r/min',
      '2 * pi * v_set / Ph',
      'derivation: one turn moves one lead',
      {
        tex: 'n_\\mathrm{set}',
        says: 'The slide speed divided by the lead gives the turns per second.',
      },
    ),
  },
});
