import { defineSheet, formula, input } from '../sheet/index.ts';

const COUNT = 'derived: four edges to a line';

/** Incremental encoder on a motor that drives a screw. */
export const encoder = defineSheet({
  id: 'encoder',
  title: 'Counts and edges of an encoder',
  about:
    'An encoder of 1000 lines gives 4000 counts a turn. This turns lines into counts per millimetre, and speed into the rate of edges that the receiver has to follow.',
  symbols: {
    PPR: input('lines a turn', 'lines', {
      domain: 'positive',
      note: 'Called lines, pulses or PPR. Counts are four times as many.',
    }),
    ratio: input('encoder turns for one turn of the screw', '1', { tex: 'i', domain: 'positive' }),
    lead: input('lead of the screw', 'mm', { domain: 'positive' }),
    n: input('speed of the encoder', 'r/min', { domain: 'not negative' }),
    phase_err: input('error of the phase between A and B', '°', {
      tex: '\\varphi',
      domain: 'not negative',
      note: 'Makers allow 30 to 45 degrees.',
    }),
    f_max: input('highest line rate', 'kHz', {
      tex: 'f_{max}',
      domain: 'positive',
      note: 'Of one channel: of the encoder or of the receiver, whichever is less.',
    }),
    cpr: formula('counts a turn', 'counts', '4 * PPR', COUNT, {
      says: 'Each line gives two edges on A and two on B.',
    }),
    counts_per_mm: formula('counts for each millimetre', 'counts/mm', 'cpr * ratio / lead', COUNT, {
      tex: 'c',
      says: 'Counts in one turn of the screw, spread over its lead.',
    }),
    q: formula('travel of one count', 'µm', 'lead / (cpr * ratio)', COUNT, {
      says: 'The smallest movement the control can see.',
    }),
    f_ch: formula('line rate of one channel', 'kHz', 'PPR * n / (2*pi)', COUNT, {
      tex: 'f_{ch}',
      says: 'Lines a second at that speed.',
    }),
    f_edge: formula('count rate', 'kHz', '4 * f_ch', COUNT, {
      tex: 'f_{edge}',
      says: 'Edges a second that have to be counted.',
    }),
    t_edge_min: formula('shortest time between two edges', 'µs', '(pi/2 - phase_err) / (2*pi*f_ch)', COUNT, {
      tex: 't_{edge}',
      says: 'A quarter of a line, less the error of the phase.',
    }),
    f_poll: formula('rate at which a sampling receiver must look, at least', 'kHz', '1 / t_edge_min', COUNT, {
      tex: 'f_{poll}',
      says: 'Once between any two edges. In practice take twice as often.',
    }),
    n_max: formula('speed at which the highest line rate is reached', 'r/min', '2*pi * f_max / PPR', COUNT, {
      tex: 'n_{max}',
      says: 'Faster than this, counts are lost.',
    }),
  },
});
