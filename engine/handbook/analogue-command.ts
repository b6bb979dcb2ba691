import { defineSheet, formula, input } from '../sheet/index.ts';

const VOLTS = 'derived: speed in proportion to the command voltage';

/** ±10 V speed command: scale, resolution and offset. */
export const analogueCommand = defineSheet({
  id: 'analogue-command',
  title: 'Speed command in volts',
  about:
    'The control asks for speed with a voltage, zero for standstill and 10 V for full speed either way. Its steps and its offset show up as speed, and the position loop has to fight them.',
  symbols: {
    V_full: input('voltage at full command', 'V', {
      tex: 'V_{full}',
      domain: 'positive',
      note: 'Usually 10 V.',
    }),
    n_full: input('motor speed at full command, as the drive is set', 'r/min', {
      tex: 'n_{full}',
      domain: 'positive',
    }),
    n_bits: input('bits of the output', '1', {
      tex: 'n',
      domain: 'positive',
      note: 'Over the whole range from −10 V to +10 V.',
    }),
    V_off: input('offset of output and drive together', 'mV', {
      tex: 'V_{off}',
      note: 'What is left on a command of zero.',
    }),
    drift: input('drift of the offset with temperature', 'µV/K', { domain: 'not negative' }),
    dTa: input('change of temperature in the cabinet', 'K', { tex: '\\Delta T', domain: 'not negative' }),
    travel_rev: input('travel for one motor turn', 'mm', {
      tex: 'h',
      domain: 'positive',
      note: 'Lead of the screw divided by the reduction.',
    }),
    Kp: input('position gain', '1/s', { tex: 'K_p', domain: 'positive' }),
    v_rapid: input('rapid speed', 'm/min', { tex: 'v_{rapid}', domain: 'positive' }),
    K_n: formula('speed for each volt', 'rad/(s·V)', 'n_full / V_full', VOLTS, {
      tex: 'K_n',
      says: 'Full speed shared among the volts.',
    }),
    V_step: formula(
      'smallest step of the voltage',
      'mV',
      '2*V_full / 2^n_bits',
      'definition of a binary converter',
      {
        tex: 'V_{step}',
        says: 'Both signs of the range, shared among the steps.',
      },
    ),
    n_step: formula('speed of that step', 'r/min', 'K_n * V_step', VOLTS, {
      tex: 'n_{step}',
      says: 'The finest speed that can be asked for.',
    }),
    v_step: formula('speed of that step at the slide', 'mm/min', 'n_step * travel_rev / (2*pi)', VOLTS, {
      tex: 'v_{step}',
      says: 'The same at the slide.',
    }),
    V_off_hot: formula('offset after warming up, at worst', 'mV', 'abs(V_off) + drift*dTa', VOLTS, {
      tex: 'V_{off,hot}',
      says: 'Offset when it was trimmed, and what the heat adds.',
    }),
    v_off: formula(
      'creep of the slide without a position loop',
      'mm/min',
      'K_n * V_off_hot * travel_rev / (2*pi)',
      VOLTS,
      {
        tex: 'v_{off}',
        says: 'With the position loop open the axis crawls away at this speed.',
      },
    ),
    e_off: formula(
      'error of position from the offset',
      'µm',
      'v_off / Kp',
      'derived: a proportional position loop balances a constant speed error',
      {
        tex: 'e_{off}',
        says: 'With the loop closed the slide stands this far off, unless the control has an integral part.',
      },
    ),
    n_rapid: formula(
      'motor speed at rapid',
      'r/min',
      '2*pi * v_rapid / travel_rev',
      'definition of travel for one turn',
      {
        tex: 'n_{rapid}',
        says: 'Turns the rapid asks for.',
      },
    ),
    V_rapid: formula('voltage at rapid', 'V', 'n_rapid / K_n', VOLTS, {
      tex: 'V_{rapid}',
      says: 'Must stay below full command, with something left for the loop to correct with.',
    }),
  },
});
