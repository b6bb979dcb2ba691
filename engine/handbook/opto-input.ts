import { defineSheet, formula, input } from '../sheet/index.ts';

const LOOP = 'derived: voltages round the loop';

/** Series resistor of an opto-coupler input. */
export const optoInput = defineSheet({
  id: 'opto-input',
  title: 'Resistor of an opto-coupler input',
  about:
    'Behind such an input sits a small lamp (LED). It needs its few milliamperes even with a weak supply and an old lamp, and it burns if 24 V meets a resistor meant for 5 V.',
  symbols: {
    V: input('voltage that drives it', 'V', { domain: 'positive' }),
    VF: input('voltage of the LED', 'V', { tex: 'V_F', domain: 'positive', note: 'About 1.2 V.' }),
    VOL: input('voltage left across the switching output', 'V', { tex: 'V_{OL}', domain: 'not negative' }),
    I_F: input('current wanted', 'A', { tex: 'I_F', domain: 'positive' }),
    R_s: input('series resistor that is there', 'Ω', { tex: 'R_s', domain: 'positive' }),
    V_min: input('lowest voltage that drives it', 'V', { tex: 'V_{min}', domain: 'positive' }),
    VF_max: input('highest voltage of the LED', 'V', { tex: 'V_{F,max}', domain: 'positive' }),
    VOL_max: input('highest voltage left across the output', 'V', {
      tex: 'V_{OL,max}',
      domain: 'not negative',
    }),
    R_tol: input('tolerance of the resistor', '%', { tex: '\\delta_R', domain: 'fraction' }),
    I_on: input('current at which it switches for certain', 'A', { tex: 'I_{on}', domain: 'positive' }),
    V_rated: input('voltage the input is made for', 'V', { tex: 'V_r', domain: 'positive' }),
    R: formula('series resistor for the current wanted', 'Ω', '(V - VF - VOL) / I_F', LOOP, {
      says: 'What is left of the volts, divided by the current.',
    }),
    I: formula('current with the resistor that is there', 'A', '(V - VF - VOL) / R_s', LOOP, {
      says: 'What is left of the volts, divided by the resistor. Negative: the voltage does not even light the LED.',
    }),
    P: formula('power of that resistor', 'W', 'I^2 * R_s', LOOP, {
      says: 'Take a part of twice this rating.',
    }),
    I_min: formula('current at worst', 'A', '(V_min - VF_max - VOL_max) / (R_s * (1 + R_tol))', LOOP, {
      tex: 'I_{min}',
      says: 'Weak supply, hungry LED, resistor at the top of its tolerance.',
    }),
    m: formula('margin at worst', '1', 'I_min / I_on', LOOP, {
      says: 'LEDs fade over the years: 1.6 is the usual wish.',
    }),
    R_add: formula('resistor to add for a higher voltage', 'Ω', '(V - V_rated) / I_F', LOOP, {
      tex: 'R_{add}',
      says: 'In series with an input made for less; it takes up the difference at the current wanted.',
    }),
    P_add: formula('power of that resistor', 'W', 'I_F^2 * R_add', LOOP, {
      tex: 'P_{add}',
      says: 'Take a part of twice this rating.',
    }),
  },
});
