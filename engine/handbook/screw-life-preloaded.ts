import { defineSheet, formula, input } from '../sheet/index.ts';
import { ratingTurns } from './constants.ts';

const iso = 'ISO 3408-5 (from memory)';

export const screwLifePreloaded = defineSheet({
  id: 'screw-life-preloaded',
  title: 'Life of a preloaded ball nut',
  about:
    'Two halves of a preloaded nut push against each other, so both wear even without load. The axial load adds to one and takes from the other.',
  symbols: {
    Fpr: input('preload', 'N', { domain: 'positive', tex: 'F_\\mathrm{pr}' }),
    F: input('axial load', 'N', { domain: 'not negative' }),
    Ca: input('dynamic load rating', 'kN', { domain: 'positive', tex: 'C_a' }),
    fw: input('load factor', '1', { domain: 'positive', tex: 'f_w', note: '1 for smooth running.' }),
    n_m: input('mean screw speed', 'r/min', { domain: 'positive', tex: 'n_m' }),
    F_off: formula(
      'load at which the preload is gone',
      'N',
      '2^1.5 * Fpr',
      'ball-screw makers’ technical text: a preloaded pair lifts off at 2^1.5 times the preload',
      { tex: 'F_\\mathrm{off}' },
    ),
    F_1: formula('load on the pressed half', 'N', 'F <= F_off ? Fpr * (1 + F / F_off)^1.5 : F', iso, {
      says: 'Preload and load share out as two springs would; above the lift-off load this half carries all.',
    }),
    F_2: formula('load on the relieved half', 'N', 'F <= F_off ? F_1 - F : 0', iso, {
      says: 'Nothing is left on it once the preload is gone.',
    }),
    L: formula(
      'life in turns',
      'rev',
      'turns * ((fw * F_1 / Ca)^(10/3) + (fw * F_2 / Ca)^(10/3))^(-9/10)',
      'ISO 3408-5 (from memory): L = (L_1^(-10/9) + L_2^(-10/9))^(-9/10), with each L_i = (Ca / (fw F_i))^3 million turns put in',
      { says: 'Either half may fail first, so both together live shorter than the better one alone.' },
    ),
    Lh: formula('life in hours', 'h', 'L / n_m', iso, { tex: 'L_h' }),
    turns: ratingTurns,
  },
});
