import { constant, defineSheet, formula, input } from '../sheet/index.ts';
import { copperConductivity } from './electrical-constants.ts';

const EIA422 =
  'TIA/EIA-422-B, informative curve of length against rate for 24 AWG twisted pair; published end points';
const CAPACITY = 'derived: charging a cable through a resistor; 2.2 is the 10 to 90 % rise of that';

/** Signal lines of an encoder: differential, single-ended, and the drop of its supply. */
export const lineDriver = defineSheet({
  id: 'line-driver',
  title: 'Cable of an encoder',
  about:
    'Differential pairs carry fast signals far; single-ended lines and open collectors get slow and pick up noise. A long thin cable also starves the encoder of its 5 volts.',
  symbols: {
    L: input('length of the cable', 'm', { domain: 'positive' }),
    f: input('line rate to be carried', 'kHz', { domain: 'positive' }),
    R: input('resistor that pulls the line up', 'Ω', { domain: 'positive' }),
    C_m: input('capacitance of the cable', 'pF/m', {
      tex: "C'",
      domain: 'positive',
      note: 'About 100 pF/m.',
    }),
    A: input('copper cross-section of each supply core', 'mm²', { domain: 'positive' }),
    I: input('current of the encoder', 'A', { domain: 'not negative' }),
    V_sup: input('supply voltage at the sending end', 'V', { tex: 'V_{sup}', domain: 'positive' }),
    V_enc_min: input('lowest supply the encoder stands', 'V', {
      tex: 'V_{enc,min}',
      domain: 'positive',
      note: 'Usually 4.75 V.',
    }),
    rate_top: constant('highest bit rate', '1/s', '10000000 1/s', EIA422, { tex: 'r_{top}' }),
    rate_length: constant(
      'bit rate times length',
      'm/s',
      '120000000 m/s',
      'derived from the end points of the TIA/EIA-422-B curve',
      { tex: 'rL' },
    ),
    L_top: constant('longest cable', 'm', '1200 m', EIA422, { tex: 'L_{top}' }),
    gamma: copperConductivity,
    f_square_max: formula(
      'highest line rate on a differential pair of that length',
      'kHz',
      'L <= L_top ? min(rate_top, rate_length/L) / 2 : 0',
      EIA422,
      {
        tex: 'f_{max}',
        says: 'Two bits to a line. Only for a twisted pair with its resistor at the far end; longer than the longest cable, nothing.',
      },
    ),
    L_max: formula(
      'longest differential cable for that line rate',
      'm',
      '2*f <= rate_top ? min(L_top, rate_length/(2*f)) : 0',
      EIA422,
      {
        tex: 'L_{max}',
        says: 'The same curve read the other way.',
      },
    ),
    t_r: formula('rise time of a line with a pull-up resistor', 'µs', '2.2 * R * C_m * L', CAPACITY, {
      tex: 't_r',
      says: 'The resistor has to fill the capacitance of the cable before the line is up.',
    }),
    f_rc: formula(
      'line rate at which that rise takes a tenth of a line',
      'kHz',
      '0.1 / t_r',
      'common practice, no source',
      {
        tex: 'f_{rc}',
        says: 'Above it the edges get too round for reliable counting.',
      },
    ),
    R_loop: formula(
      'resistance of the supply cores, there and back',
      'Ω',
      '2 * L / (gamma * A)',
      'IEC 60028, copper at 20 °C',
      {
        tex: 'R_{loop}',
        says: 'Both cores count.',
      },
    ),
    dV: formula('voltage lost on the way', 'V', 'R_loop * I', 'IEC 60028, copper at 20 °C', {
      tex: '\\Delta V',
      says: 'Resistance times current.',
    }),
    V_enc: formula('voltage at the encoder', 'V', 'V_sup - dV', 'IEC 60028, copper at 20 °C', {
      tex: 'V_{enc}',
      says: 'What is left of the supply.',
    }),
    A_min: formula(
      'least cross-section of the supply cores',
      'mm²',
      '2*L*I / (gamma * (V_sup - V_enc_min))',
      'IEC 60028, copper at 20 °C',
      {
        tex: 'A_{min}',
        says: 'Spare cores in parallel add up.',
      },
    ),
  },
});
