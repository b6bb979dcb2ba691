import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const LOAD_LINE = 'derived: load line of a magnet with straight recoil';

/** Demagnetising limit of a magnet, and the current of a motor put on a reversed bus. */
export const demagnetising = defineSheet({
  id: 'demagnetising',
  title: 'Currents that weaken the magnets',
  about:
    'Too much current weakens the magnets of a motor for good: it then needs more amperes for the same torque and heats more. The worst accident is a spinning motor put on a reversed bus.',
  symbols: {
    Br: input('remanence of the magnet', 'T', { tex: 'B_r', domain: 'positive' }),
    mur: input('recoil permeability', '1', { tex: '\\mu_r', domain: 'positive', note: 'A little above 1.' }),
    PC: input('permeance coefficient', '1', { domain: 'positive' }),
    lm: input('length of the magnet along its field', 'mm', { tex: 'l_m', domain: 'positive' }),
    Bk: input('field below which it is weakened', 'T', {
      tex: 'B_k',
      note: 'Ferrite is weakest cold, neodymium hot.',
    }),
    F: input('demagnetising ampere-turns on one magnet', 'A', { domain: 'not negative' }),
    Vb: input('bus voltage', 'V', { tex: 'V_b', domain: 'positive' }),
    Vbr: input('voltage lost in the brushes', 'V', { tex: 'V_{br}', domain: 'not negative' }),
    Ke: input('back-EMF constant', 'V·s/rad', { tex: 'K_e', domain: 'positive' }),
    w: input('speed', 'r/min', { tex: '\\omega', domain: 'not negative' }),
    R: input('winding resistance', 'Ω', { domain: 'positive' }),
    mu0: constant('magnetic constant', 'H/m', '1.25663706212e-6 H/m', 'CODATA 2018', { tex: '\\mu_0' }),
    B_m: formula('field in the magnet', 'T', 'PC * (Br - mu0*mur*F/lm) / (mur + PC)', LOAD_LINE, {
      tex: 'B_m',
      says: 'Where the magnet works while that current flows.',
    }),
    F_max: formula('most ampere-turns it stands', 'A', 'lm/(mu0*mur) * (Br - Bk*(mur + PC)/PC)', LOAD_LINE, {
      tex: 'F_{max}',
      says: 'Up to here the magnet comes back to its full strength.',
    }),
    I_plug: formula(
      'current when a spinning motor is put on a reversed bus',
      'A',
      '(Vb - Vbr + Ke*w) / R',
      'derived: bus and back-EMF add up',
      {
        tex: 'I_{plug}',
        says: 'Bus voltage and back-EMF push the same way, and only the winding holds them back. Never do this.',
      },
    ),
  },
});
