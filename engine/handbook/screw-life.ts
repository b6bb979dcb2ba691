import { defineSheet, formula, input } from '../sheet/index.ts';
import { ratingTurns } from './constants.ts';

const iso = 'ISO 3408-5 (from memory)';
const force = (k: number) =>
  input(`axial force in segment ${k}`, 'N', { tex: `F_${k}`, note: 'Its size counts, not its sign.' });
const speed = (k: number) =>
  input(`screw speed in segment ${k}`, 'r/min', { domain: 'not negative', tex: `n_${k}` });
const share = (k: number) =>
  input(`share of the time in segment ${k}`, '1', {
    domain: 'not negative',
    tex: `q_${k}`,
    note: 'Percent, seconds or any other weight, the same for all; 0 for a segment that is not used.',
  });

export const screwLife = defineSheet({
  id: 'screw-life',
  title: 'Life of a ball screw',
  about:
    'Turns and hours that nine of ten new screws reach before the tracks begin to flake, for a duty of up to four segments in one direction of load. For duty in both directions work out each, with the whole travel in the speeds, and take the shorter life. A rusted or worn second-hand screw does not keep to it.',
  symbols: {
    F1: force(1),
    F2: force(2),
    F3: force(3),
    F4: force(4),
    n1: speed(1),
    n2: speed(2),
    n3: speed(3),
    n4: speed(4),
    q1: share(1),
    q2: share(2),
    q3: share(3),
    q4: share(4),
    Ca: input('dynamic load rating', 'kN', { domain: 'positive', tex: 'C_a' }),
    C0a: input('static load rating', 'kN', { domain: 'positive', tex: 'C_{0a}' }),
    fw: input('load factor', '1', {
      domain: 'positive',
      tex: 'f_w',
      note: 'Smooth 1.0 to 1.2, normal 1.2 to 1.5, with blows 1.5 to 2.5 (from memory).',
    }),
    fs_min: input('static safety wanted', '1', {
      domain: 'positive',
      tex: 'f_{s,\\min}',
      note: 'Machine tools 1.5 to 3, with blows 5 to 7 (from memory).',
    }),
    q: formula('all shares together', '1', 'q1 + q2 + q3 + q4', 'derivation: sum of the weights', {
      domain: 'positive',
    }),
    n_m: formula('mean screw speed', 'r/min', '(q1 * n1 + q2 * n2 + q3 * n3 + q4 * n4) / q', iso, {
      tex: 'n_m',
      domain: 'positive',
      says: 'Speeds weighted by their share of the time.',
    }),
    Fm: formula(
      'equivalent load',
      'N',
      '((abs(F1)^3 * n1 * q1 + abs(F2)^3 * n2 * q2 + abs(F3)^3 * n3 * q3 + abs(F4)^3 * n4 * q4) / (q * n_m))^(1/3)',
      iso,
      {
        tex: 'F_m',
        says: 'The steady load that would wear the tracks as much. It is averaged over turns, not over time, and heavy loads count by their cube.',
      },
    ),
    L10: formula('life in turns', 'rev', '(Ca / (fw * Fm))^3 * turns', iso, {
      tex: 'L_{10}',
      says: 'Half the load gives eight times the life.',
    }),
    Lh: formula('life in hours', 'h', 'L10 / n_m', iso, { tex: 'L_h' }),
    Fmax: formula(
      'largest load',
      'N',
      'max(abs(F1), abs(F2), abs(F3), abs(F4))',
      'derivation: the largest of the segments',
      {
        tex: 'F_\\max',
        says: 'A blow that hardly takes time still counts here: give it a segment with share 0.',
      },
    ),
    fs: formula('static safety', '1', 'C0a / Fmax', 'ISO 3408-5 (from memory)', {
      tex: 'f_s',
      says: 'How many times the largest load could grow before balls dent the tracks.',
    }),
    F_fs: formula('load allowed by static safety', 'N', 'C0a / fs_min', 'ISO 3408-5 (from memory)', {
      tex: 'F_{fs}',
    }),
    turns: ratingTurns,
  },
});
