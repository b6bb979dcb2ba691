import { defineSheet, formula, input } from '../sheet/index.ts';

const vdi = 'VDI 3106';

export const chuckGrip = defineSheet({
  id: 'chuck-grip',
  title: 'What grip a chuck keeps at speed',
  about:
    'The jaws are thrown outwards, so a chuck that grips from outside grips less the faster it turns. The number marked on the chuck is never to be passed, whatever comes out here. Forces are those of all jaws together.',
  symbols: {
    m: input('mass of one jaw', 'kg', { domain: 'positive', note: 'Soft jaws are heavier and further out.' }),
    r: input('radius of its centre of gravity', 'mm', { domain: 'positive' }),
    z: input('number of jaws', '1', { domain: 'positive' }),
    F_0: input('grip at rest', 'N', { domain: 'positive', note: 'Measured with a grip gauge.', tex: 'F_0' }),
    F_z: input('grip that the cut needs', 'N', { domain: 'not negative', tex: 'F_z' }),
    S_p: input('safety of the grip', '1', { domain: 'positive', tex: 'S_p', note: '1.5 or more.' }),
    S_z: input('safety of the cut', '1', { domain: 'positive', tex: 'S_z', note: '1.5 or more.' }),
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    F_c: formula('force that throws the jaws outwards', 'N', 'z * m * r * n^2', vdi, { tex: 'F_c' }),
    F: formula('grip left', 'N', 'F_0 - F_c', vdi),
    F_n: formula('grip at rest that is needed', 'N', 'S_p * (S_z * F_z + F_c)', vdi, {
      tex: 'F_n',
      says: 'What the cut needs and what the speed takes, each with its safety.',
    }),
    n_67: formula(
      'speed at which 67 % of the grip is gone',
      'r/min',
      'sqrt(0.67 * F_0 / (z * m * r))',
      'EN 1550',
      {
        tex: 'n_{67}',
      },
    ),
    n_max: formula('highest speed for the cut', 'r/min', 'sqrt((F_0 / S_p - S_z * F_z) / (z * m * r))', vdi, {
      tex: 'n_\\mathrm{max}',
      says: 'And never above what is marked on the chuck.',
    }),
  },
});
