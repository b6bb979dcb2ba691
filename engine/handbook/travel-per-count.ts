import { defineSheet, formula, input } from '../sheet/index.ts';

export const travelPerCount = defineSheet({
  id: 'travel-per-count',
  title: 'Counts of an encoder on the motor or on the screw',
  about: 'How finely the encoder sees the slide, and how fast its lines pass at rapid.',
  symbols: {
    lines: input('lines a turn', 'lines', { domain: 'positive' }),
    r: input('encoder turns for one screw turn', '1', { domain: 'positive' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    n_s: input('screw speed', 'r/min', { domain: 'not negative' }),
    edges: formula(
      'counts a turn',
      'counts',
      '4 * lines',
      'common practice, no source: an incremental encoder gives four edges a line',
      {
        says: 'Two channels, each going up and down: four edges for every line.',
      },
    ),
    cpm: formula(
      'counts for one millimetre',
      '1/mm',
      'edges * r / Ph',
      'derivation: one screw turn moves one lead',
    ),
    res: formula('travel of one count', 'µm', 'Ph / (edges * r)', 'derivation: the same turned round'),
    f_line: formula(
      'line rate at that speed',
      'kHz',
      'lines * r * n_s / (2 * pi)',
      'derivation: lines a turn times turns a second',
    ),
    f_edge: formula(
      'count rate at that speed',
      'kHz',
      '4 * f_line',
      'common practice, no source: four edges a line',
    ),
  },
});
