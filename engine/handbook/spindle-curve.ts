import { defineSheet, formula, input } from '../sheet/index.ts';

const power = 'derivation: power is torque times speed';

export const spindleCurve = defineSheet({
  id: 'spindle-curve',
  title: 'What torque a spindle has at a speed',
  about:
    'Up to the base speed the torque is constant, above it the power, and near the top even the power falls. The kilowatts of the plate are not there at 100 turns a minute.',
  symbols: {
    Pr: input('rated power', 'kW', { domain: 'positive', tex: 'P_r' }),
    n_b: input('base speed', 'r/min', { domain: 'positive', tex: 'n_b' }),
    n_2: input('speed at which the power begins to fall', 'r/min', { domain: 'positive', tex: 'n_2' }),
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    T_max: formula('torque below the base speed', 'N·m', 'Pr / n_b', power, { tex: 'T_\\mathrm{max}' }),
    T: formula(
      'torque at this speed',
      'N·m',
      'n > max(n_2, n_b) ? Pr * max(n_2, n_b) / n^2 : Pr / max(n, n_b)',
      power,
    ),
    P: formula('power at this speed', 'kW', 'T * n', power),
  },
});
