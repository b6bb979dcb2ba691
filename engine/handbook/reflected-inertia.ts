import { defineSheet, formula, input } from '../sheet/index.ts';

const energy = 'derivation: kinetic energy';

export const reflectedInertia = defineSheet({
  id: 'reflected-inertia',
  title: 'Inertia as the motor feels it',
  about:
    'Everything behind a reduction feels lighter to the motor by the square of the ratio. Belt and coupling are taken as stiff. Losses of a gearbox change the torque, not the inertia.',
  symbols: {
    J_m: input('inertia of the motor’s rotor', 'kg·m²', { domain: 'positive' }),
    J_mp: input('inertia on the motor shaft: pulley or coupling', 'kg·m²', {
      domain: 'not negative',
      tex: 'J_\\mathrm{mp}',
    }),
    J_sp: input('inertia on the screw: pulley or coupling', 'kg·m²', {
      domain: 'not negative',
      tex: 'J_\\mathrm{sp}',
    }),
    J_s: input('inertia of the screw', 'kg·m²', { domain: 'not negative' }),
    J_lin: input('inertia of the slide at the screw', 'kg·m²', {
      domain: 'not negative',
      tex: 'J_\\mathrm{lin}',
    }),
    m_belt: input('mass of the belt', 'kg', { domain: 'not negative', tex: 'm_\\mathrm{belt}' }),
    r_m: input('radius of the motor pulley', 'mm', { domain: 'not negative' }),
    i: input('reduction, motor turns for one screw turn', '1', { domain: 'positive' }),
    J_load: formula(
      'inertia at the screw',
      'kg·m²',
      'J_sp + J_s + J_lin',
      'derivation: inertias on one shaft add up',
      {
        tex: 'J_\\mathrm{load}',
      },
    ),
    J_ref: formula(
      'inertia the motor has to turn besides its own',
      'kg·m²',
      'J_mp + m_belt * r_m^2 + J_load / i^2',
      energy,
      {
        tex: 'J_\\mathrm{ref}',
        says: 'A reduction of 2 makes what is behind it feel a quarter.',
      },
    ),
    ratio: formula('load inertia over rotor inertia', '1', 'J_ref / J_m', 'derivation: definition', {
      tex: 'J_\\mathrm{ref}/J_m',
      says: 'Small is lively and easy to tune; far above 5 the motor is led by its load.',
    }),
    J_tot: formula(
      'whole inertia at the motor',
      'kg·m²',
      'J_m + J_ref',
      'derivation: inertias on one shaft add up',
      {
        tex: 'J_\\mathrm{tot}',
      },
    ),
    J_rot: formula(
      'inertia of all that turns, at the screw',
      'kg·m²',
      'i^2 * (J_m + J_mp + m_belt * r_m^2) + J_sp + J_s',
      energy,
      { tex: 'J_\\mathrm{rot}', says: 'Without the slide: this is what a falling slide has to spin up.' },
    ),
  },
});
