import { defineSheet, formula, input } from '../sheet/index.ts';

const INDEX = 'derived: one index pulse a turn';

/** Counts between two index pulses against what they should be. */
export const indexCount = defineSheet({
  id: 'index-count',
  title: 'Counts lost between index pulses',
  about:
    'From one index pulse to the next an encoder must always count the same. Any other number means lost or false counts: cable, termination, 5 V supply, noise, a slow receiver or a dirty disc.',
  symbols: {
    N_rev: input('counts found between two index pulses', 'counts', { tex: 'N_{rev}' }),
    PPR: input('lines a turn', 'lines', { domain: 'positive' }),
    ratio: input('encoder turns for one turn of the screw', '1', { tex: 'i', domain: 'positive' }),
    lead: input('lead of the screw', 'mm', { domain: 'positive' }),
    dN: formula('counts too many', 'counts', 'N_rev - 4*PPR', INDEX, {
      tex: '\\Delta N',
      says: 'Negative: counts were lost.',
    }),
    error: formula('error of position each turn', 'mm', 'dN * lead / (4*PPR*ratio)', INDEX, {
      says: 'It adds up turn by turn until the axis is homed again.',
    }),
  },
});
