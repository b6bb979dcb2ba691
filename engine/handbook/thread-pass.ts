import { defineSheet, formula, input } from '../sheet/index.ts';

const area = 'derivation: every pass cuts the same area of a groove with a flat of width w';

export const threadPass = defineSheet({
  id: 'thread-pass',
  title: 'One pass of a thread cut in several',
  about:
    'Equal steps would make every pass heavier than the one before. Equal chip area makes the first step the largest and the last the smallest. With a sharp tool the depth goes with the square root of the pass number.',
  symbols: {
    a_tot: input('whole depth', 'mm', { domain: 'positive', tex: 'a_\\mathrm{tot}', note: 'On the radius.' }),
    N: input('number of passes', '1', { domain: 'positive' }),
    i: input('this pass', '1', { domain: 'positive' }),
    w: input('width of the tool’s flat tip', 'mm', {
      domain: 'not negative',
      note: 'Zero for a V thread; the tip of the tool for a trapezoidal one.',
    }),
    a: input('half the flank angle', '°', { domain: 'positive' }),
    gamma: input('infeed angle', '°', {
      domain: 'not negative',
      tex: '\\gamma',
      note: 'Zero goes straight in; 29 to 29.5° follows one flank of a 60° thread.',
    }),
    t: formula('slope of a flank', '1', 'sin(a) / cos(a)', area, { tex: '\\tan\\alpha' }),
    A: formula('whole area of the groove', 'mm²', 'w * a_tot + t * a_tot^2', area),
    a_i: formula('depth after this pass', 'mm', '(sqrt(w^2 + 4 * t * A * i / N) - w) / (2 * t)', area, {
      tex: 'a_i',
    }),
    a_before: formula(
      'depth before it',
      'mm',
      'i > 1 ? (sqrt(w^2 + 4 * t * A * (i - 1) / N) - w) / (2 * t) : 0',
      area,
      {
        tex: 'a_{i-1}',
      },
    ),
    da: formula('infeed of this pass', 'mm', 'a_i - a_before', area, { tex: '\\Delta a' }),
    dz: formula(
      'shift along the axis',
      'mm',
      'da * sin(gamma) / cos(gamma)',
      'derivation: the tool moves in along the infeed angle',
      {
        tex: '\\Delta z',
      },
    ),
    A_i: formula('chip area of this pass', 'mm²', 'A / N', area, { tex: 'A_i' }),
  },
});
