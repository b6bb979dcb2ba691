import { defineSheet, formula, input } from '../sheet/index.ts';

export const leadAgreement = defineSheet({
  id: 'lead-agreement',
  title: 'Does the lead agree with pitch and starts',
  about: 'The lead measured by turning the screw against the lead that pitch and starts give.',
  symbols: {
    P: input('pitch', 'mm', { domain: 'positive' }),
    z: input('number of starts', '1', { domain: 'positive' }),
    tol: input('difference allowed', '%', { domain: 'fraction' }),
    Ph: formula(
      'lead from pitch and starts',
      'mm',
      'P * z',
      'ISO 3408-1: lead is pitch times number of starts',
      { tex: 'P_h' },
    ),
    Ph_low: formula('smallest lead that agrees', 'mm', 'Ph * (1 - tol)', 'common practice, no source'),
    Ph_high: formula('largest lead that agrees', 'mm', 'Ph * (1 + tol)', 'common practice, no source'),
  },
});
