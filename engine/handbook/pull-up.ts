import { defineSheet, formula, input } from '../sheet/index.ts';

const LEVELS = 'derived: voltages round the loop';

/** Window for the pull-up resistor of an open collector. */
export const pullUp = defineSheet({
  id: 'pull-up',
  title: 'Pull-up resistor of an open collector',
  about:
    'An open collector can only pull a line down; a resistor has to pull it up. Too large, and the line does not get high, or not in time; too small, and the output cannot pull it down.',
  symbols: {
    Vcc: input('supply of the resistor', 'V', { tex: 'V_{cc}', domain: 'positive' }),
    VIH: input('lowest voltage read as high', 'V', { tex: 'V_{IH}', domain: 'positive' }),
    VOL: input('voltage left when the output pulls down', 'V', { tex: 'V_{OL}', domain: 'not negative' }),
    I_leak: input('current that leaks while the output is off', 'A', { tex: 'I_{leak}', domain: 'positive' }),
    I_OL: input('most current the output can pull down', 'A', { tex: 'I_{OL}', domain: 'positive' }),
    R: input('pull-up resistor', 'Ω', { domain: 'positive' }),
    C: input('capacitance of line and input', 'pF', { domain: 'positive' }),
    R_max: formula('largest resistor', 'Ω', '(Vcc - VIH) / I_leak', LEVELS, {
      tex: 'R_{max}',
      says: 'Larger, and the leaking current pulls the line out of the high range.',
    }),
    R_min: formula('smallest resistor', 'Ω', '(Vcc - VOL) / I_OL', LEVELS, {
      tex: 'R_{min}',
      says: 'Smaller, and the output cannot pull the line down.',
    }),
    t_r: formula('rise time', 'µs', '2.2 * R * C', 'derived: 10 to 90 % of an exponential', {
      tex: 't_r',
      says: 'How long the line takes to get up.',
    }),
  },
});
