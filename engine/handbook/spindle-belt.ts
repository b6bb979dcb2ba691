import { defineSheet, formula, input } from '../sheet/index.ts';

const BELT = 'derivation: the belt runs as fast over one wheel as over the other';

export const spindleBelt = defineSheet({
  id: 'spindle-belt',
  title: 'Belt from motor to spindle',
  about:
    'Ratio and speeds from the diameters on which the belt runs. A V-belt slips one or two per cent more.',
  symbols: {
    D_m: input('diameter on the motor', 'mm', { domain: 'positive' }),
    D_s: input('diameter on the spindle', 'mm', { domain: 'positive' }),
    n_m: input('motor speed', 'r/min', { domain: 'not negative' }),
    i: formula('motor turns for one spindle turn', '1', 'D_s / D_m', BELT),
    n_s: formula('spindle speed', 'r/min', 'n_m / i', BELT),
    v: formula('belt speed', 'm/s', 'D_m / 2 * n_m', BELT),
  },
});
