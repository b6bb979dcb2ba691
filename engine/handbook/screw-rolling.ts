import { defineSheet, formula, input } from '../sheet/index.ts';

const wedge = 'derivation: wedge mechanics; the same form stands in ball-screw catalogues (from memory)';

export const screwRolling = defineSheet({
  id: 'screw-rolling',
  title: 'Efficiency of a ball or roller screw',
  about:
    'How much of the work put into a rolling screw arrives at the slide, and how well the load can turn the screw. Without preload and seal drag, which are added as torque.',
  symbols: {
    d0: input('ball-circle diameter', 'mm', {
      domain: 'positive',
      tex: 'd_0',
      note: 'For a planetary roller screw the nominal diameter.',
    }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    mu: input('rolling friction coefficient', '1', {
      domain: 'positive',
      tex: '\\mu',
      note: 'Ball screw 0.003 to 0.01, planetary roller screw 0.006 to 0.015 (from memory).',
    }),
    t: formula('slope of the thread', '1', 'Ph / (pi * d0)', 'derivation: tangent of the lead angle', {
      says: 'One turn climbs by the lead over the circumference.',
    }),
    beta: formula('lead angle', '°', 'atan(t)', 'derivation: one turn of the thread unrolled', {
      tex: '\\beta',
    }),
    eta: formula('efficiency, turning moves the load', '1', '(1 - mu * t) / (1 + mu / t)', wedge, {
      tex: '\\eta',
      says: 'The share of the turning work that arrives as thrust. Catalogues print about nine tenths of it as a practical value.',
    }),
    eta_b: formula('efficiency, the load turns the screw', '1', '(1 - mu / t) / (1 + mu * t)', wedge, {
      tex: '\\eta_b',
      says: 'The share of the falling load’s work that arrives as turning. Above zero the load runs the screw backwards: a vertical axis then needs a brake.',
    }),
  },
});
