import { defineSheet, formula, input } from '../sheet/index.ts';

export const regulatedSupply = defineSheet({
  id: 'regulated-supply',
  title: 'Limits of a regulated supply',
  about:
    'A switched-mode supply holds its output whatever the mains do, within its own tolerance and up to its rated current. It cannot take power back.',
  symbols: {
    V: input('rated output voltage', 'V', { domain: 'positive' }),
    tol: input('how far it may stray', '%', { domain: 'fraction' }),
    V_low: formula('lowest output', 'V', 'V * (1 - tol)', 'derivation: tolerance band'),
    V_high: formula('highest output', 'V', 'V * (1 + tol)', 'derivation: tolerance band'),
  },
});
