import { defineSheet, formula, input } from '../sheet/index.ts';

/** Resolution of an axis against the tolerance of the part. */
export const resolution = defineSheet({
  id: 'resolution',
  title: 'Resolution against tolerance',
  about:
    'What cannot be seen cannot be held. A gauge maker wants ten steps inside the tolerance. On a lathe’s cross slide one step shows twice on the diameter.',
  symbols: {
    res: input('travel of one count or pulse', 'µm', { domain: 'positive' }),
    tol: input('whole width of the tolerance', 'mm', { domain: 'positive' }),
    k_dia: input('how often a step shows in the tolerance', '1', {
      tex: 'k_\\varnothing',
      domain: 'positive',
      note: '2 where the tolerance is on a diameter and the slide moves the radius; else 1.',
    }),
    res_part: formula(
      'step as it shows on the part',
      'µm',
      'k_dia * res',
      'derived: diameter is twice the radius',
      {
        tex: 'res_p',
        says: 'On a diameter each step counts double.',
      },
    ),
    ratio: formula('steps inside the tolerance', '1', 'tol / res_part', 'common practice, no source', {
      tex: 'n',
      says: 'Ten is good, four will do for roughing.',
    }),
    u: formula(
      'uncertainty from the step alone',
      'µm',
      'res_part / sqrt(12)',
      'derived: error spread evenly over one step',
      {
        says: 'Standard uncertainty of a dimension known to one step.',
      },
    ),
  },
});
