import { defineSheet, formula, input } from '../sheet/index.ts';

const cone = 'derivation: cone geometry; taper measured on the diameter (ISO 7-1, ASME B1.20.1)';

export const threadTaper = defineSheet({
  id: 'thread-taper',
  title: 'Taper of a pipe thread',
  about:
    'A taper thread grows with its length. 1 in 16 is on the diameter: the slide moves half of that. The pitch is measured along the axis.',
  symbols: {
    t: input('taper on the diameter', '1', { domain: 'positive', note: '1/16 = 0.0625 for R, Rc and NPT.' }),
    d: input('diameter at the gauge plane', 'mm', { domain: 'positive' }),
    Lg: input('length from the small end to the gauge plane', 'mm', { domain: 'positive', tex: 'L_g' }),
    L: input('length of thread cut', 'mm', { domain: 'positive' }),
    P: input('pitch', 'mm', { domain: 'positive' }),
    half: formula('angle of the slope to the axis', '°', 'atan(t / 2)', cone),
    d_end: formula('diameter at the small end', 'mm', 'd - t * Lg', cone, { tex: 'd_\\mathrm{end}' }),
    d_big: formula('diameter at the end of the cut', 'mm', 'd + t * (L - Lg)', cone, {
      tex: 'd_\\mathrm{big}',
    }),
    dx_turn: formula('travel of the cross slide per turn', 'mm', 't * P / 2', cone, {
      tex: '\\Delta x',
      says: 'On the radius.',
    }),
    dx: formula('travel of the cross slide over the cut', 'mm', 't * L / 2', cone, { tex: 'x' }),
  },
});
