import { defineSheet, formula, input } from '../sheet/index.ts';

export const backEfficiency = defineSheet({
  id: 'back-efficiency',
  title: 'Efficiency backwards from efficiency forwards',
  about:
    'For a rolling screw of which only the forward efficiency is known. The losses are the same both ways.',
  symbols: {
    eta: input('efficiency, turning moves the load', '%', { domain: 'positive', tex: '\\eta' }),
    eta_b: formula(
      'efficiency, the load turns the screw',
      '%',
      '2 - 1 / eta',
      'derivation: wedge mechanics for small friction; good to 1e-4 for friction up to 0.01',
      {
        tex: '\\eta_b',
        says: 'Above zero the load can turn the screw.',
      },
    ),
  },
});
