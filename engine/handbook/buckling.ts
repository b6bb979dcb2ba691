import { constant, defineSheet, formula, input } from '../sheet/index.ts';
import { steelModulus } from './constants.ts';

export const buckling = defineSheet({
  id: 'buckling',
  title: 'Buckling and crushing of a screw',
  about:
    'Pushed too hard, a slender screw bends away sideways; a short thick one crushes. The smaller of both limits counts. Only the part between the nut and the thrust bearing is pushed; a screw that is pulled cannot buckle.',
  symbols: {
    nE: input('end-fixing factor', '1', {
      domain: 'positive',
      tex: 'n_E',
      note: 'From how the ends are held: 1/4 fixed and free, 1 both supported, 2 fixed and supported, 4 both fixed.',
    }),
    d1: input('root diameter', 'mm', { domain: 'positive', tex: 'd_1' }),
    L: input('length under push', 'mm', { domain: 'positive' }),
    k_allow: input('share of the buckling load allowed', '1', {
      domain: 'fraction',
      tex: 'k',
      note: '0.5 is what ball-screw catalogues use.',
    }),
    E: steelModulus,
    sigma: constant(
      'stress allowed in plain compression',
      'MPa',
      '147 MPa',
      'ball-screw catalogue practice (from memory)',
      {
        tex: '\\sigma',
      },
    ),
    I: formula('second moment of the core', 'mm⁴', 'pi * d1^4 / 64', 'derivation: solid round section'),
    F_cr: formula('buckling load', 'N', 'nE * pi^2 * E * I / L^2', 'Euler column', {
      tex: 'F_\\mathrm{cr}',
      says: 'Twice the diameter carries sixteen times the load; twice the length a quarter.',
    }),
    F_buckle: formula(
      'allowed by buckling',
      'N',
      'k_allow * F_cr',
      'ball-screw makers’ catalogues, safety factor 0.5',
      {
        tex: 'F_\\mathrm{buckle}',
      },
    ),
    F_yield: formula(
      'allowed by plain compression',
      'N',
      'sigma * pi / 4 * d1^2',
      'ball-screw catalogue practice (from memory)',
      {
        tex: 'F_\\mathrm{yield}',
      },
    ),
    F_allow: formula('allowed push', 'N', 'min(F_buckle, F_yield)', 'derivation: the smaller limit counts', {
      tex: 'F_\\mathrm{allow}',
    }),
  },
});
