import { defineSheet, formula, input } from '../sheet/index.ts';

const energy = 'derivation: energy balance of one turn';
const newton = 'derivation: Newton’s second law for the falling slide and all it turns';

export const backDriving = defineSheet({
  id: 'back-driving',
  title: 'A load that turns its own screw',
  about:
    'What it takes to hold a vertical or sloping axis, and how far it drops before its brake holds. A power-off brake holds; it is not there to stop motion. Never stand or reach under the axis; block it before motor or brake is removed.',
  symbols: {
    F_hold: input('weight left to hold', 'N', {
      domain: 'not negative',
      tex: 'F_\\mathrm{hold}',
      note: 'Along the slope, balance taken off, friction not counted.',
    }),
    m: input('mass that falls', 'kg', {
      domain: 'positive',
      note: 'With the counterweight, if there is one: it moves too.',
    }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    eta: input('efficiency, turning moves the load', '1', { domain: 'positive', tex: '\\eta' }),
    i: input('reduction between the brake and the screw', '1', {
      domain: 'positive',
      note: 'Motor turns for one screw turn if the brake is on the motor; 1 if it is on the screw.',
    }),
    k_br: input('brake torque over the load it holds', '1', {
      domain: 'positive',
      tex: 'k_\\mathrm{br}',
      note: '1.3 to 2, common practice, no source.',
    }),
    T_br: input('brake torque there is, at the brake', 'N·m', { domain: 'positive', tex: 'T_\\mathrm{br}' }),
    J: input('inertia of all that turns, at the screw', 'kg·m²', {
      domain: 'not negative',
      note: 'Without the slide.',
    }),
    T_f: input('friction torque at the screw', 'N·m', {
      domain: 'not negative',
      note: '0 for the worst case.',
    }),
    t_d: input('time until the brake holds', 'ms', { domain: 'not negative' }),
    r: formula('travel for each radian', 'mm', 'Ph / (2 * pi)', 'derivation: one turn moves one lead'),
    T_hold: formula('torque to hold, at the screw', 'N·m', 'F_hold * r', energy, {
      tex: 'T_\\mathrm{hold}',
      says: 'Friction is not counted: it must not be relied on to hold a load.',
    }),
    T_lift: formula('torque to lift, at the screw', 'N·m', 'T_hold / eta', energy, {
      tex: 'T_\\mathrm{lift}',
    }),
    T_need: formula(
      'brake torque needed, at the brake',
      'N·m',
      'k_br * T_hold / i',
      'common practice, no source',
      {
        tex: 'T_\\mathrm{need}',
        says: 'The load’s torque, less the reduction, with room for oil, dust and wear.',
      },
    ),
    J_all: formula(
      'inertia with the slide, at the screw',
      'kg·m²',
      'J + m * r^2',
      'derivation: kinetic energy',
      {
        tex: 'J_\\mathrm{all}',
      },
    ),
    alpha: formula(
      'angular acceleration of the free fall',
      'rad/s²',
      'max(T_hold - T_f, 0) / J_all',
      newton,
      {
        tex: '\\alpha',
        says: 'Zero if friction alone holds the load.',
      },
    ),
    s_d: formula('drop until the brake bites', 'mm', 'alpha * t_d^2 / 2 * r', newton, {
      says: 'Twice the delay drops four times as far.',
    }),
    v_d: formula('speed when the brake bites', 'm/min', 'alpha * t_d * r', newton),
    T_slow: formula('torque left to stop the fall, at the screw', 'N·m', 'i * T_br + T_f - T_hold', newton, {
      tex: 'T_\\mathrm{slow}',
      domain: 'positive',
      says: 'At zero or below the brake cannot hold the load at all.',
    }),
    s_b: formula(
      'drop while the brake stops it',
      'mm',
      'J_all * (alpha * t_d)^2 / (2 * T_slow) * r',
      'derivation: energy of the falling axis over the torque that stops it',
      {
        says: 'The brake slips until the energy is used up.',
      },
    ),
    s: formula('whole drop', 'mm', 's_d + s_b', 'derivation: sum of the two'),
  },
});
