import { defineSheet, formula, input } from '../sheet/index.ts';

export const movingMass = defineSheet({
  id: 'moving-mass',
  title: 'All that moves along the axis',
  about: 'A counterweight has to be sped up too; a gas spring has not.',
  symbols: {
    m: input('mass of the slide', 'kg', { domain: 'positive' }),
    m_cb: input('mass of the counterweight', 'kg', { domain: 'not negative' }),
    m_all: formula('mass to be sped up', 'kg', 'm + m_cb', 'derivation: both move at the same speed'),
  },
});
