import { defineSheet, formula, input } from '../sheet/index.ts';

export const shareOf = defineSheet({
  id: 'share-of',
  title: 'A share of the tolerance',
  about: 'Several errors share one tolerance; each may use up only its part.',
  symbols: {
    k: input('share it may use up', '1', { domain: 'fraction' }),
    whole: input('whole tolerance', 'mm', { domain: 'positive' }),
    part: formula('error allowed', 'mm', 'k * whole', 'common practice, no source'),
  },
});
