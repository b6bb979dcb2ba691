import { defineSheet, formula, input } from '../sheet/index.ts';

export const tapTorqueSimple = defineSheet({
  id: 'tap-torque-simple',
  title: 'Torque of a tap, from its pitch',
  about: 'The shorter of two published formulas, with factors of its own: do not take them from the other.',
  symbols: {
    d: input('nominal diameter', 'mm', { domain: 'positive' }),
    P: input('pitch', 'mm', { domain: 'positive' }),
    kt: input('cutting force of tapping', 'N/mm²', {
      domain: 'positive',
      tex: 'k_t',
      note: 'Structural steel 2500, tempered steel to 950 MPa 2600, tool steel 3600, stainless 3200, long-chip aluminium 800, grey iron 1250, brass 720.',
    }),
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    T: formula('torque', 'N·m', 'kt * P^2 * d / 8', 'a tap maker’s technical page'),
    Pc: formula('power', 'kW', 'T * n', 'definition of power', { tex: 'P_c' }),
  },
});
