import { defineSheet, formula, input } from '../sheet/index.ts';

const CURVE = 'derivation: constant torque up to the base speed, constant power above it';
const BELT = 'derivation: energy balance of a ratio with losses';

export const spindleAtSpeed = defineSheet({
  id: 'spindle-at-speed',
  title: 'Torque at the spindle at one speed, in one range',
  about:
    'A belt or gear range changes speed for torque. In each range the motor must turn fast enough to be useful and slow enough to hold together: outside that there is no torque at all.',
  symbols: {
    T_r: input('rated torque of the motor', 'N·m', { domain: 'positive', tex: 'T_r' }),
    n_b: input('motor speed at which its volts run out', 'r/min', { domain: 'positive' }),
    k_c: input('share of the torque for hours', '1', { domain: 'positive', tex: 'k_c' }),
    k_p: input('share of the torque for a minute', '1', { domain: 'positive', tex: 'k_p' }),
    k_k: input('pull-out torque over rated torque', '1', { domain: 'positive', tex: 'k_k' }),
    k_s: input('share of the pull-out torque that may be used', '1', { domain: 'fraction', tex: 'k_s' }),
    k_f: input('share of the torque for hours while the motor turns slowly', '1', {
      domain: 'fraction',
      tex: 'k_f',
      note: 'A fan on the shaft blows little then.',
    }),
    n_f: input('motor speed below which it is cooled badly', 'r/min', { domain: 'not negative' }),
    n_l: input('lowest useful motor speed', 'r/min', { domain: 'not negative' }),
    n_h: input('highest motor speed', 'r/min', { domain: 'positive' }),
    i: input('motor turns for one spindle turn', '1', { domain: 'positive' }),
    eta: input('efficiency of belts and gears', '%', { domain: 'fraction', tex: '\\eta' }),
    k_a: input('share of its torque the motor brakes with where nothing takes the energy', '1', {
      domain: 'fraction',
      tex: 'k_a',
    }),
    n: input('spindle speed', 'r/min', { domain: 'not negative' }),
    n_m: formula('motor speed', 'r/min', 'n * i', 'definition of the ratio'),
    on: formula(
      'whether the range reaches that speed',
      '1',
      'n_m < n_l * (1 - 1e-9) ? 0 : n_m > n_h * (1 + 1e-9) ? 0 : 1',
      'one for yes, zero for no',
      { tex: 'r' },
    ),
    w: formula('share left above the base speed', '1', 'n_b / max(n_m, n_b)', CURVE),
    T_k: formula('usable pull-out torque', 'N·m', 'k_s * k_k * T_r * w^2', CURVE, {
      tex: 'T_k',
      says: 'Falls with the square of the speed.',
    }),
    T_m: formula('motor torque for hours, well cooled', 'N·m', 'min(T_r * k_c * w, T_k)', CURVE, {
      tex: 'T_m',
    }),
    T_e: formula('torque at the spindle, well cooled', 'N·m', 'on * T_m * i * eta', BELT, { tex: 'T_e' }),
    T_c: formula('torque at the spindle for hours', 'N·m', 'T_e * (n_m < n_f ? k_f : 1)', BELT, {
      tex: 'T_c',
      says: 'Where the motor’s own fan turns too slowly, only a share of it.',
    }),
    T_p: formula('torque at the spindle for seconds', 'N·m', 'on * min(T_r * k_p * w, T_k) * i * eta', BELT, {
      tex: 'T_p',
    }),
    T_K: formula(
      'usable pull-out torque at the spindle, below the base speed',
      'N·m',
      'k_s * k_k * T_r * i * eta',
      BELT,
      {
        tex: 'T_K',
      },
    ),
    T_a: formula('torque it brakes with alone, at the spindle', 'N·m', 'k_a * T_r * i * eta', BELT, {
      tex: 'T_a',
      says: 'What motor and drive burn themselves, without a resistor.',
    }),
    P_c: formula('power at the spindle for hours', 'kW', 'T_c * n', 'power is torque times speed', {
      tex: 'P_c',
    }),
  },
});
