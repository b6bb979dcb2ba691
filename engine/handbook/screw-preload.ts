import { defineSheet, formula, input } from '../sheet/index.ts';

const jis = 'JIS B 1192, reference torque (from memory)';

export const screwPreload = defineSheet({
  id: 'screw-preload',
  title: 'Drag of a preloaded ball nut',
  about:
    'A nut squeezed to take out its play turns stiffly even without load. Real drag scatters by 30 to 50 % around this figure: a measured value beats it. Support bearings and seals add 0.05 to 0.3 N·m each on small machines (from memory).',
  symbols: {
    d0: input('ball-circle diameter', 'mm', { domain: 'positive', tex: 'd_0' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    Fpr: input('preload', 'N', {
      domain: 'not negative',
      tex: 'F_\\mathrm{pr}',
      note: 'Usually a third of the largest axial load, and not above a tenth of the dynamic load rating.',
    }),
    beta: formula('lead angle', '°', 'atan(Ph / (pi * d0))', 'derivation: one turn of the thread unrolled', {
      tex: '\\beta',
    }),
    k: formula('internal friction of the nut', '1', '0.05 / sqrt(tan(beta))', jis, {
      says: 'Flatter threads feel the squeeze more.',
    }),
    T_pr: formula('preload drag torque', 'N·m', 'k * Fpr * Ph / (2 * pi)', jis, { tex: 'T_\\mathrm{pr}' }),
    F_off: formula(
      'load at which the preload is gone',
      'N',
      '2^1.5 * Fpr',
      'ball-screw makers’ technical text: a preloaded pair lifts off at 2^1.5 times the preload',
      {
        tex: 'F_\\mathrm{off}',
        says: 'Above this axial load one side of the nut hangs free and play is back.',
      },
    ),
  },
});
