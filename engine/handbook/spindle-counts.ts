import { defineSheet, formula, input } from '../sheet/index.ts';

const COUNT = 'derived: four edges to a line';

export const spindleCounts = defineSheet({
  id: 'spindle-counts',
  title: 'Counts of the spindle’s encoder',
  about:
    'While a thread is cut, the slide follows the spindle count by count. Few counts make a coarse staircase; many make a high frequency at top speed.',
  symbols: {
    N: input('lines a turn of the encoder', 'lines', { domain: 'positive' }),
    u: input('encoder turns for one spindle turn', '1', { domain: 'positive' }),
    n: input('spindle speed', 'r/min', { domain: 'not negative' }),
    P: input('pitch of the thread', 'mm', { domain: 'positive' }),
    c: formula('counts for one spindle turn', 'counts', '4 * N * u', COUNT),
    q: formula('travel along the thread for one count', 'µm', 'P / c', COUNT, {
      says: 'What the slide moves between one count and the next.',
    }),
    f: formula('frequency of one channel', 'kHz', 'N * u * n / (2 * pi)', COUNT),
    f_e: formula('count rate', 'kHz', '4 * f', COUNT, { tex: 'f_e' }),
  },
});
