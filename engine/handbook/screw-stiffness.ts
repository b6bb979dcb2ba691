import { defineSheet, formula, input } from '../sheet/index.ts';
import { steelModulus, steelShearModulus } from './constants.ts';

const hooke = 'derivation: Hooke’s law; ball-screw catalogue rigidity pages';
const series = 'derivation: springs in series';

export const screwStiffness = defineSheet({
  id: 'screw-stiffness',
  title: 'Stiffness of the screw drive along the axis',
  about:
    'How far the slide gives way when pushed. Screw, nut, thrust bearing and housing give way one after the other, so the softest rules; on a converted manual machine that is often the housing.',
  symbols: {
    d1: input('root diameter', 'mm', { domain: 'positive', tex: 'd_1' }),
    x: input('length from nut to thrust bearing', 'mm', {
      domain: 'positive',
      note: 'The longest that occurs is the softest.',
    }),
    L: input('length between thrust bearings', 'mm', {
      domain: 'positive',
      note: 'Only for a screw fixed at both ends.',
    }),
    a: input('length from nut to the nearer thrust bearing', 'mm', {
      domain: 'positive',
      note: 'Only for a screw fixed at both ends.',
    }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    Kn: input('stiffness of the nut', 'N/µm', { domain: 'positive', tex: 'K_n' }),
    Kb: input('stiffness of the thrust bearing', 'N/µm', { domain: 'positive', tex: 'K_b' }),
    Kh: input('stiffness of housings and brackets', 'N/µm', { domain: 'positive', tex: 'K_h' }),
    E: steelModulus,
    G: steelShearModulus,
    A: formula('area of the core', 'mm²', 'pi * d1^2 / 4', 'derivation: solid round section'),
    b: formula(
      'length from nut to the other thrust bearing',
      'mm',
      'L - a',
      'derivation: the rest of the length',
      {
        domain: 'positive',
      },
    ),
    Ks: formula('stiffness of the screw, one end fixed', 'N/µm', 'A * E / x', hooke, {
      tex: 'K_s',
      says: 'Twice the length is half as stiff.',
    }),
    Ks_both: formula('stiffness of the screw, both ends fixed', 'N/µm', 'A * E * L / (a * b)', hooke, {
      tex: 'K_{s,2}',
      says: 'Both sides of the nut hold; both thrust bearings must be preloaded for it.',
    }),
    Ks_min: formula('least stiffness of the screw, both ends fixed', 'N/µm', '4 * A * E / L', hooke, {
      tex: 'K_{s,\\min}',
      says: 'With the nut at mid-length.',
    }),
    K: formula(
      'stiffness of the whole drive, one end fixed',
      'N/µm',
      '1 / (1 / Ks + 1 / Kn + 1 / Kb + 1 / Kh)',
      series,
      {
        says: 'The ways of giving add up; the stiffnesses do not.',
      },
    ),
    K_both: formula(
      'stiffness of the whole drive, both ends fixed',
      'N/µm',
      '1 / (1 / Ks_both + 1 / Kn + 1 / Kb + 1 / Kh)',
      series,
      { tex: 'K_2' },
    ),
    K_min: formula(
      'least stiffness of the whole drive, both ends fixed',
      'N/µm',
      '1 / (1 / Ks_min + 1 / Kn + 1 / Kb + 1 / Kh)',
      series,
      { tex: 'K_\\min' },
    ),
    Jp: formula(
      'polar second moment of the core',
      'mm⁴',
      'pi * d1^4 / 32',
      'derivation: solid round section',
      {
        tex: 'J_p',
      },
    ),
    K_tor: formula(
      'twist of the screw, as stiffness along the axis',
      'N/µm',
      'G * Jp / x * (2 * pi / Ph)^2',
      'derivation: energy of the twist, seen at the nut',
      {
        tex: 'K_\\mathrm{tor}',
        says: 'A screw driven at one end also winds up. That hardly shows with a short lead and may rule with a long one.',
      },
    ),
    K_twist: formula(
      'stiffness of the whole drive with twist, one end fixed',
      'N/µm',
      '1 / (1 / K + 1 / K_tor)',
      series,
      {
        tex: 'K_t',
      },
    ),
  },
});
