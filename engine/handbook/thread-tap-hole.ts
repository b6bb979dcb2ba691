import { defineSheet, formula, input } from '../sheet/index.ts';

export const threadTapHole = defineSheet({
  id: 'thread-tap-hole',
  title: 'Hole for a tap',
  about:
    'A larger hole taps much more easily and is hardly weaker. Two ways of counting “per cent of thread” are in use: part of the depth nut and bolt share, and part of the older full depth of inch tables. The same hole has a higher figure in the first.',
  symbols: {
    d: input('nominal diameter', 'mm', { domain: 'positive' }),
    H1: input('depth of the nut’s thread', 'mm', {
      domain: 'positive',
      tex: 'H_1',
      note: '0.5413 times the pitch for 60°, 0.6403 for Whitworth, 0.5 for trapezoidal.',
    }),
    P: input('pitch', 'mm', { domain: 'positive' }),
    D0: input('diameter of the hole', 'mm', { domain: 'positive', tex: 'D_0' }),
    D_cut: formula(
      'usual hole for a cutting tap',
      'mm',
      'd - P',
      'ISO 2306: nominal diameter less the pitch',
      { tex: 'D_\\mathrm{cut}' },
    ),
    D_form: formula('usual hole for a forming tap', 'mm', 'd - P / 2', 'common practice, no source', {
      tex: 'D_\\mathrm{form}',
      says: 'A forming tap pushes metal inwards, so it starts from a larger hole. Follow the tap’s own sheet.',
    }),
    share: formula(
      'share of the thread depth',
      '%',
      '(d - D0) / (2 * H1)',
      'derivation: depth left over depth of the basic profile',
    ),
    share_old: formula(
      'the same as inch tables count it',
      '%',
      '(d - D0) / (1.299 * P)',
      'common practice of inch tables (full depth 0.6495 P)',
      {
        tex: 'share_\\mathrm{old}',
        says: 'Only for 60° threads.',
      },
    ),
  },
});
