import { defineSheet, formula, input } from '../sheet/index.ts';

export const screwLead = defineSheet({
  id: 'screw-lead',
  title: 'Lead and lead angle of a screw',
  about:
    'How far the nut moves in one turn, and how steep the thread is. The lead is not the pitch: a screw with several starts moves the nut by all of them in one turn.',
  symbols: {
    P: input('pitch', 'mm', {
      domain: 'positive',
      note: 'From one thread to the very next, whichever start it belongs to.',
    }),
    z: input('number of starts', '1', { domain: 'positive' }),
    dm: input('mean thread diameter', 'mm', {
      domain: 'positive',
      tex: 'd_m',
      note: 'For a ball screw the ball-circle diameter, not the outside.',
    }),
    Ph: formula('lead', 'mm', 'P * z', 'ISO 3408-1: lead is pitch times number of starts', {
      tex: 'P_h',
      domain: 'positive',
      says: 'One turn moves the nut by the pitch, once for each start.',
    }),
    beta: formula('lead angle', '°', 'atan(Ph / (pi * dm))', 'derivation: one turn of the thread unrolled', {
      tex: '\\beta',
      says: 'Unroll one turn: it climbs by the lead over the circumference.',
    }),
  },
});
