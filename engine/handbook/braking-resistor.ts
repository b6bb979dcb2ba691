import { defineSheet, formula, input } from '../sheet/index.ts';

const OHM = 'Ohm’s law';

export const brakingResistor = defineSheet({
  id: 'braking-resistor',
  title: 'Braking resistor of a spindle drive',
  about:
    'A spindle that slows down is a generator. Its drive burns that in a resistor: small enough to take the power, large enough for the drive’s switch, and heavy enough for every stop of the day.',
  symbols: {
    V: input('voltage at which the braking switch closes', 'V', { domain: 'positive' }),
    R: input('resistor', 'Ω', { domain: 'positive' }),
    T_b: input('braking torque', 'N·m', { domain: 'positive', tex: 'T_b' }),
    n: input('speed from which it stops', 'r/min', { domain: 'positive' }),
    J: input('inertia', 'kg·m²', { domain: 'positive' }),
    N: input('stops a minute', '1/min', { domain: 'not negative' }),
    I: formula('current through the switch', 'A', 'V / R', OHM),
    P_R: formula('power it burns while it is on', 'W', 'V^2 / R', OHM, { tex: 'P_R' }),
    P_1: formula('braking power at the start', 'W', 'T_b * n', 'power is torque times speed', { tex: 'P_1' }),
    R_max: formula('largest resistor for that torque', 'Ω', 'V^2 / P_1', OHM, {
      tex: 'R_\\mathrm{max}',
      says: 'Larger, and the drive must brake more gently at high speed.',
    }),
    E: formula('energy of one stop', 'kJ', 'J * n^2 / 2', 'definition of kinetic energy', {
      says: 'As if all of it came back: friction takes a part.',
    }),
    P_mean: formula('mean power over the day', 'W', 'E * N', 'energy of each stop, as often as it happens', {
      tex: 'P_\\mathrm{mean}',
    }),
  },
});
