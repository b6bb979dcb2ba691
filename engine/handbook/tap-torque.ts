import { defineSheet, formula, input } from '../sheet/index.ts';

const maker = 'a tap maker’s catalogue';

export const tapTorque = defineSheet({
  id: 'tap-torque',
  title: 'Torque of a tap, from the size of the hole',
  about:
    'Sharp tap, oiled. A worn tap may need twice as much, a forming tap two to three times. A hole a tenth too small raises it steeply. The factors belong to this formula alone.',
  symbols: {
    d: input('nominal diameter', 'mm', { domain: 'positive' }),
    D0: input('diameter of the hole', 'mm', { domain: 'positive', tex: 'D_0' }),
    alpha: input('half the flank angle', '°', { domain: 'positive', tex: '\\alpha' }),
    kt: input('cutting force of tapping', 'N/mm²', {
      domain: 'positive',
      tex: 'k_t',
      note: 'Carbon steel 3600 to 4000, aluminium casting alloy 1300, grey iron 2900, stainless 4200.',
    }),
    K: input('factor of the tap', '1', {
      domain: 'positive',
      note: 'Steel, coarse thread: hand tap 1.35, bottoming 1.43, spiral flute 1.15, spiral point 0.95.',
    }),
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    T: formula('torque', 'N·m', 'sin(alpha) / cos(alpha) * kt * K * (d - D0)^2 * (d + 2 * D0) / 24', maker),
    Pc: formula('power', 'kW', 'T * n', 'definition of power', { tex: 'P_c' }),
  },
});
