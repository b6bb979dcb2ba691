import { defineSheet, formula, input } from '../sheet/index.ts';

const basic = 'ISO 68-1, ISO 724 and ASME B1.1: same profile for metric and inch threads';

export const threadForm60 = defineSheet({
  id: 'thread-form-60',
  title: 'Basic sizes of a 60° thread',
  about:
    'Metric and Unified threads share one profile: a 60° triangle with its tips cut off. These are the sizes before any tolerance. “Minor” means two things, so mind which: the bore of a nut, or the deeper root of a bolt.',
  symbols: {
    d: input('nominal diameter', 'mm', { domain: 'positive' }),
    P: input('pitch', 'mm', {
      domain: 'positive',
      note: 'From one groove to the next, not the travel of one turn where there are several starts.',
    }),
    H: formula('height of the sharp triangle', 'mm', 'sqrt(3) / 2 * P', basic),
    d2: formula('pitch diameter', 'mm', 'd - 3 / 4 * H', basic, {
      tex: 'd_2',
      says: 'Where groove and ridge are equally wide. It decides the fit.',
    }),
    D1: formula('minor diameter of the nut (bore)', 'mm', 'd - 5 / 4 * H', basic, { tex: 'D_1' }),
    d3: formula('root diameter of the bolt, rounded root', 'mm', 'd - 17 / 12 * H', basic, { tex: 'd_3' }),
    h3: formula('depth of the bolt’s thread', 'mm', '17 / 24 * H', basic, {
      tex: 'h_3',
      says: 'How deep a single-point tool goes outside, measured on the radius.',
    }),
    H1: formula('depth of the nut’s thread', 'mm', '5 / 8 * H', basic, {
      tex: 'H_1',
      says: 'How deep a tool goes inside, from the bore.',
    }),
    flat: formula('flat at the crest of the bolt', 'mm', 'P / 8', basic),
  },
});
