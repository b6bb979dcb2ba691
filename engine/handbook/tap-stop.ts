import { defineSheet, formula, input } from '../sheet/index.ts';

const torque = 'derivation: constant braking torque';
const power = 'derivation: constant torque up to the base speed, constant power above';

export const tapStop = defineSheet({
  id: 'tap-stop',
  title: 'How far a tap runs on before the spindle turns back',
  about:
    'The spindle cannot stop at once. Until it does, the tap goes deeper. All inertia counts, at the spindle: on a lathe the chuck is most of it.',
  symbols: {
    J: input('inertia at the spindle', 'kg·m²', {
      domain: 'positive',
      note: 'Chuck, work, spindle, and the motor times its ratio squared.',
    }),
    T: input('braking torque at the spindle', 'N·m', { domain: 'positive' }),
    n_b: input('base speed', 'r/min', {
      domain: 'positive',
      tex: 'n_b',
      note: 'At the spindle. Above it a drive gives constant power, so its torque falls.',
    }),
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    P: input('pitch', 'mm', { domain: 'positive' }),
    t_d: input('time until the drive begins to brake', 'ms', { domain: 'not negative', tex: 't_d' }),
    d: input('overrun allowed for braking', 'mm', { domain: 'positive' }),
    t: formula(
      'time to stop',
      's',
      'n > n_b ? J * (n^2 - n_b^2) / (2 * T * n_b) + J * n_b / T : J * n / T',
      power,
    ),
    theta: formula(
      'turns until it stands',
      'rev',
      'n > n_b ? J * (n^3 - n_b^3) / (3 * T * n_b) + J * n_b^2 / (2 * T) : J * n^2 / (2 * T)',
      power,
      {
        tex: '\\theta',
      },
    ),
    x: formula('overrun while braking', 'mm', 'theta / (2 * pi) * P', torque),
    x_d: formula('overrun before it brakes', 'mm', 'n / (2 * pi) * P * t_d', torque, { tex: 'x_d' }),
    x_all: formula('overrun in all', 'mm', 'x + x_d', torque, { tex: 'x_\\mathrm{all}' }),
    theta_b: formula('turns to stop from the base speed', 'rev', 'J * n_b^2 / (2 * T)', torque, {
      tex: '\\theta_b',
    }),
    theta_d: formula('turns within the overrun allowed', 'rev', '2 * pi * d / P', torque, {
      tex: '\\theta_d',
    }),
    n_max: formula(
      'highest speed for that overrun',
      'r/min',
      'theta_d > theta_b ? (3 * T * n_b * (theta_d - theta_b) / J + n_b^3)^(1 / 3) : sqrt(2 * T * theta_d / J)',
      power,
      { tex: 'n_\\mathrm{max}', says: 'Without the time before it brakes.' },
    ),
  },
});
