import { defineSheet, formula, input } from '../sheet/index.ts';

export const rimSpeed = defineSheet({
  id: 'rim-speed',
  title: 'How fast a pulley may turn',
  about:
    'The rim of a pulley pulls itself apart with the square of its speed, whatever it carries. Cast iron bears least.',
  symbols: {
    v: input('highest speed of the rim', 'm/s', { domain: 'positive' }),
    D: input('outside diameter', 'mm', { domain: 'positive' }),
    n: formula('highest speed of the wheel', 'r/min', '2 * v / D', 'derivation: rim speed over radius'),
  },
});
