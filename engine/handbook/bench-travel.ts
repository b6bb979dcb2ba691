import { defineSheet, formula, input } from '../sheet/index.ts';

/** Lead of a screw from its travel over several turns. */
export const benchTravel = defineSheet({
  id: 'bench-travel',
  title: 'Lead from travel over several turns',
  about:
    'Over many turns the doubt of rule and eye is shared out, so that an inch screw is told from a metric one.',
  symbols: {
    x: input('travel of the slide', 'mm', { domain: 'positive' }),
    N: input('turns of the screw', '1', { domain: 'positive' }),
    phi: input('how far the mark was from where it began', '°', {
      note: 'Nearly always 0, with a ± for the eye.',
    }),
    Ph: formula('lead', 'mm', 'x / (N + phi/(2*pi))', 'definition of the lead', {
      tex: 'P_h',
      domain: 'positive',
      says: 'Travel shared out over the turns.',
    }),
  },
});
