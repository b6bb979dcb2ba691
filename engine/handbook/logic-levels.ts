import { defineSheet, formula, input } from '../sheet/index.ts';

const MARGINS = 'definition of noise margins (common practice, no source)';

/** Output levels against input levels. */
export const logicLevels = defineSheet({
  id: 'logic-levels',
  title: 'Logic levels',
  about:
    'An output must get higher than the input needs to read high, and lower than it needs to read low, with something in hand against noise. And it must never exceed what the input survives.',
  symbols: {
    VOH: input('lowest voltage of the output when high', 'V', { tex: 'V_{OH}' }),
    VOL: input('highest voltage of the output when low', 'V', { tex: 'V_{OL}' }),
    VIH: input('lowest voltage the input reads as high', 'V', { tex: 'V_{IH}' }),
    VIL: input('highest voltage the input reads as low', 'V', { tex: 'V_{IL}' }),
    V_out_max: input('highest voltage the output can reach', 'V', { tex: 'V_{out,max}', domain: 'positive' }),
    V_in_max: input('highest voltage the input survives', 'V', { tex: 'V_{in,max}', domain: 'positive' }),
    NMH: formula('in hand when high', 'V', 'VOH - VIH', MARGINS, {
      tex: 'NM_H',
      says: 'Negative: a high is not surely read. 0.4 V or more is the usual wish.',
    }),
    NML: formula('in hand when low', 'V', 'VIL - VOL', MARGINS, {
      tex: 'NM_L',
      says: 'Negative: a low is not surely read. 0.4 V or more is the usual wish.',
    }),
    m_high: formula('margin when high', '1', 'VOH / VIH', MARGINS, {
      tex: 'm_H',
      says: 'What the output gives over what the input needs.',
    }),
    m_low: formula('margin when low', '1', 'VIL / VOL', MARGINS, {
      tex: 'm_L',
      says: 'What the input allows over what the output leaves.',
    }),
    m_survive: formula('margin of survival', '1', 'V_in_max / V_out_max', MARGINS, {
      tex: 'm_S',
      says: 'Below 1 the input is destroyed.',
    }),
  },
});
