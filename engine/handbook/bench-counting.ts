import { defineSheet, formula, input } from '../sheet/index.ts';

/** What counting over whole turns tells of encoders and motors. */
export const benchCounting = defineSheet({
  id: 'bench-counting',
  title: 'Counting over whole turns',
  about:
    'Over whole turns a sound encoder always gives the same count, a motor a whole number of cycles. What is missing or odd shows at once.',
  symbols: {
    C: input('counts, four for each line', 'counts', { domain: 'not negative' }),
    N: input('turns', '1', { domain: 'positive' }),
    lines: input('lines a turn', 'lines', { domain: 'positive' }),
    cycles: input('cycles of the voltage', '1', { domain: 'positive' }),
    f: input('frequency of the voltage', 'Hz', { domain: 'positive' }),
    w: input('speed', 'r/min', { tex: '\\omega', domain: 'positive' }),
    Ph: input('travel of one turn', 'mm', { tex: 'P_h', domain: 'positive' }),
    lines_found: formula(
      'lines a turn',
      'lines',
      'C/(4*N)',
      'derived: a count at each edge of two channels',
      { tex: 'l', says: 'Edges shared out over turns and the four edges of a line.' },
    ),
    lost: formula('counts too many or too few', 'counts', 'C - 4*lines*N', 'definition', {
      says: 'Anything but 0 is a fault.',
    }),
    travel: formula('the same as travel', 'µm', 'lost/(4*lines)*Ph', 'derived: travel of one count', {
      says: 'How far the slide is off afterwards.',
    }),
    p_turns: formula('pole pairs from cycles', '1', 'cycles/N', 'definition of pole pairs', {
      tex: 'p_N',
      says: 'Cycles in each turn of the shaft.',
    }),
    p_speed: formula('pole pairs from frequency and speed', '1', '2*pi*f/w', 'definition of pole pairs', {
      tex: 'p_f',
      says: 'The same from a meter that shows hertz.',
    }),
  },
});
