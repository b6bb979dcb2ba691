import { defineSheet, formula, input } from '../sheet/index.ts';

const energy = 'derivation: kinetic energy';

export const inertia = defineSheet({
  id: 'inertia',
  title: 'Moments of inertia',
  about: 'How hard it is to change the speed of what turns, and of what a turning shaft moves.',
  symbols: {
    m: input('mass moved by the screw', 'kg', { domain: 'not negative' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    d: input('outside diameter of the cylinder', 'mm', {
      domain: 'positive',
      note: 'For a screw the outside diameter says 5 to 25 % too much, which is the safe side; the root diameter says too little.',
    }),
    d_i: input('bore of the cylinder', 'mm', { domain: 'not negative' }),
    L: input('length of the cylinder', 'mm', { domain: 'positive' }),
    rho: input('density', 'kg/m³', {
      domain: 'positive',
      tex: '\\rho',
      note: 'Steel 7850, aluminium 2700, cast iron 7200 kg/m³ (aluminium and iron from memory).',
    }),
    J_k: input('inertia printed in a catalogue', 'kg·cm²', { domain: 'positive' }),
    L_k: input('length for which it is printed', 'mm', {
      domain: 'positive',
      note: 'Catalogues print the inertia of a screw for each millimetre or each metre.',
    }),
    m_b: input('mass on a belt or rack', 'kg', { domain: 'not negative' }),
    r: input('radius of its pulley or pinion', 'mm', { domain: 'positive' }),
    J_lin: formula('inertia of a mass moved by a screw', 'kg·m²', 'm * (Ph / (2 * pi))^2', energy, {
      tex: 'J_\\mathrm{lin}',
      says: 'Half the lead makes the slide feel four times lighter.',
    }),
    J_cyl: formula('inertia of a solid cylinder', 'kg·m²', 'pi * rho * d^4 * L / 32', energy, {
      tex: 'J_\\mathrm{cyl}',
      says: 'The diameter counts by its fourth power.',
    }),
    J_hol: formula('inertia of a hollow cylinder', 'kg·m²', 'pi * rho * (d^4 - d_i^4) * L / 32', energy, {
      tex: 'J_\\mathrm{hol}',
      domain: 'positive',
    }),
    m_cyl: formula(
      'mass of a solid cylinder',
      'kg',
      'pi * rho * d^2 * L / 4',
      'derivation: volume times density',
      {
        tex: 'm_\\mathrm{cyl}',
      },
    ),
    m_hol: formula(
      'mass of a hollow cylinder',
      'kg',
      'pi * rho * (d^2 - d_i^2) * L / 4',
      'derivation: volume times density',
      {
        tex: 'm_\\mathrm{hol}',
        domain: 'positive',
      },
    ),
    J_len: formula(
      'inertia of a screw from its catalogue',
      'kg·m²',
      'J_k * L / L_k',
      'ball-screw catalogue practice: inertia is tabled by length',
      {
        tex: 'J_\\mathrm{len}',
      },
    ),
    J_belt: formula('inertia of a mass on a belt or rack', 'kg·m²', 'm_b * r^2', energy, {
      tex: 'J_\\mathrm{belt}',
    }),
  },
});
