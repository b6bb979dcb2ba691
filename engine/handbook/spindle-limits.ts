import { defineSheet, formula, input } from '../sheet/index.ts';

export const spindleLimits = defineSheet({
  id: 'spindle-limits',
  title: 'Fastest the spindle may ever turn',
  about:
    'The weakest of chuck, jaws, bearings and pulleys sets the limit. What nobody knows gives no permission: a chuck without a mark is not a fast chuck.',
  symbols: {
    n_c: input('limit of the chuck', 'r/min', { domain: 'positive' }),
    n_j: input('limit of the jaws', 'r/min', { domain: 'positive' }),
    n_b: input('limit of the bearings', 'r/min', { domain: 'positive' }),
    n_p: input('limit of the wheels', 'r/min', { domain: 'positive' }),
    n: formula('limit of the spindle', 'r/min', 'min(n_c, n_j, n_b, n_p)', 'the least of them'),
  },
});
