import { defineSheet, formula, input } from '../sheet/index.ts';

const UNIFORM = 'derived: error spread evenly over one count';

/** What counting in whole counts does to position and speed. */
export const quantisation = defineSheet({
  id: 'quantisation',
  title: 'Coarseness of counted speed',
  about:
    'A control works out speed from the counts of each cycle. With few counts a cycle it sees the speed in coarse steps, and the motor growls at low feed.',
  symbols: {
    q: input('travel of one count', 'µm', { domain: 'positive' }),
    Ts: input('cycle of the control', 'ms', { tex: 'T_s', domain: 'positive' }),
    v: input('speed', 'mm/min', { domain: 'positive' }),
    dv: formula('step in which speed is seen', 'mm/s', 'q / Ts', UNIFORM, {
      tex: '\\Delta v',
      says: 'One count more or less in a cycle.',
    }),
    sd: formula('noise of the speed seen', 'mm/s', 'q / (sqrt(6)*Ts)', UNIFORM, {
      tex: '\\sigma_v',
      says: 'Standard deviation of the difference of two counted positions.',
    }),
    u: formula('uncertainty of position', 'µm', 'q / sqrt(12)', UNIFORM, {
      says: 'Standard uncertainty of a position known to one count.',
    }),
    share: formula('step as a share of the speed', '%', 'dv / v', UNIFORM, {
      says: 'Above some tens of per cent the motor runs rough.',
    }),
  },
});
