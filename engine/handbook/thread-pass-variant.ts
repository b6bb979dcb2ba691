import { defineSheet, formula, input } from '../sheet/index.ts';

const makers = 'two tool makers’ threading sections: q is 0.3, 1, then i − 1';

export const threadPassVariant = defineSheet({
  id: 'thread-pass-variant',
  title: 'Depths as tool makers give them',
  about:
    'A gentler first pass than equal chip area, then steps that fall with the square root. Some tool sheets print this series.',
  symbols: {
    a_tot: input('whole depth', 'mm', { domain: 'positive', tex: 'a_\\mathrm{tot}' }),
    N: input('number of passes', '1', { domain: 'positive', note: 'Two or more.' }),
    i: input('this pass', '1', { domain: 'positive' }),
    q: formula('share number of this pass', '1', 'i < 1.5 ? 0.3 : i - 1', makers),
    a_i: formula('depth after this pass', 'mm', 'a_tot * sqrt(q / (N - 1))', makers, { tex: 'a_i' }),
  },
});
