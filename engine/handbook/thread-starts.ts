import { defineSheet, formula, input } from '../sheet/index.ts';

export const threadStarts = defineSheet({
  id: 'thread-starts',
  title: 'Where each start of a thread begins',
  about:
    'A thread with several starts is cut as that many grooves. Each begins a part of a turn later, or, with the same angle, one pitch further along.',
  symbols: {
    P: input('pitch', 'mm', { domain: 'positive' }),
    z: input('number of starts', '1', { domain: 'positive' }),
    j: input('this start', '1', { domain: 'positive', note: '1 for the first.' }),
    Ph: formula('lead', 'mm', 'P * z', 'ISO 5408: lead is pitch times number of starts', { tex: 'P_h' }),
    phi: formula(
      'angle of the spindle',
      '°',
      '2 * pi * (j - 1) / z',
      'derivation: starts evenly round the turn',
      {
        tex: '\\varphi',
      },
    ),
    dz: formula('or shift along the axis', 'mm', '(j - 1) * P', 'derivation: starts evenly along the lead', {
      tex: '\\Delta z',
    }),
  },
});
