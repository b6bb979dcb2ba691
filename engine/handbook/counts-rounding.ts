import { defineSheet, formula, input } from '../sheet/index.ts';

const ROUNDED = 'derived: the control multiplies every distance by the number it holds';

/** Counts or pulses per millimetre as a control with rounded settings holds them. */
export const countsRounding = defineSheet({
  id: 'counts-rounding',
  title: 'Counts per millimetre as the control holds them',
  about:
    'Inch screws and odd belts give crooked numbers such as 3937.007874 counts per millimetre. A control that keeps only part of the digits makes every distance a little wrong, always the same way.',
  symbols: {
    cpm: input('counts or pulses for each millimetre, exactly', '1/mm', { tex: 'c', domain: 'positive' }),
    step: input('smallest step of that number the control can hold', '1/mm', {
      domain: 'not negative',
      note: 'Whole numbers only: 1 1/mm. Four decimals: 0.0001 1/mm. Exact: 0 1/mm.',
    }),
    travel: input('travel', 'mm', { domain: 'not negative' }),
    cpm_held: formula(
      'the number as it is held',
      '1/mm',
      'step > 0 ? step * round(cpm / step) : cpm',
      ROUNDED,
      {
        tex: 'c_{held}',
        says: 'The nearest number the control can keep.',
      },
    ),
    err_per_m: formula('error of every distance', 'mm/m', 'cpm_held/cpm - 1', ROUNDED, {
      tex: '\\varepsilon',
      says: 'Positive: the axis moves too far.',
    }),
    err_travel: formula('error over the whole travel', 'mm', 'travel * err_per_m', ROUNDED, {
      tex: '\\Delta',
      says: 'What a long move is wrong by.',
    }),
    err_abs: formula('size of that error', 'mm', 'abs(err_travel)', ROUNDED, {
      tex: '|\\Delta|',
      says: 'The same, whichever way it goes.',
    }),
    q: formula('travel of one count or pulse', 'µm', '1 / cpm', 'definition', {
      says: 'One millimetre shared among the counts.',
    }),
  },
});
