import { defineSheet, formula, input } from '../sheet/index.ts';

export const shareOf = defineSheet({
  id: 'share-of',
  title: 'A share of the tolerance',
  about: 'Several errors share one tolerance; each may use up only its part.',
  symbols: {
    k: input('share it may use up', '1', { domain: 'fraction' }),
    whole: input('whole tolerance', 'mm', { domain: 'positive' }),
    k_dia: input('how often it shows in the tolerance', '1', {
      tex: 'k_\\varnothing',
      domain: 'positive',
      note: '2 where the tolerance is on a diameter and the slide moves the radius; else 1.',
    }),
    part: formula('error allowed', 'mm', 'k * whole / k_dia', 'common practice, no source'),
  },
});
