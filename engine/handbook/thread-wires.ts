import { defineSheet, formula, input } from '../sheet/index.ts';

const geometry =
  'derivation: wire between two straight flanks; the small correction for the slope is left out';

export const threadWires = defineSheet({
  id: 'thread-wires',
  title: 'Measuring a thread over three wires',
  about:
    'Three equal wires in the grooves and a micrometer over them measure the pitch diameter, which decides the fit.',
  symbols: {
    d2: input('pitch diameter wanted', 'mm', { domain: 'positive', tex: 'd_2' }),
    P: input('pitch', 'mm', { domain: 'positive' }),
    a: input('half the flank angle', '°', {
      domain: 'positive',
      note: '30° for metric and Unified, 27.5° for Whitworth and pipe, 15° for trapezoidal.',
    }),
    w: input('wire diameter', 'mm', { domain: 'positive' }),
    w_best: formula('best wire', 'mm', 'P / (2 * cos(a))', geometry, {
      tex: 'w_\\mathrm{best}',
      says: 'Touches the flanks at the pitch line, so that a wrong flank angle does the least harm.',
    }),
    M: formula(
      'reading over the wires',
      'mm',
      'd2 + w * (1 + 1 / sin(a)) - P * cos(a) / (2 * sin(a))',
      geometry,
    ),
  },
});
