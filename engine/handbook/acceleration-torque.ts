import { defineSheet, formula, input } from '../sheet/index.ts';

const newton = 'derivation: Newton’s second law for turning';

export const accelerationTorque = defineSheet({
  id: 'acceleration-torque',
  title: 'Torque to gain speed',
  about:
    'What the motor must give to speed up itself and all it turns, on top of the torque for steady running. The slide’s mass is already in the inertia: take the running torque from the force at steady speed, not from the force while gaining speed.',
  symbols: {
    J_tot: input('whole inertia at the motor', 'kg·m²', { domain: 'positive', tex: 'J_\\mathrm{tot}' }),
    a: input('acceleration of the slide', 'm/s²', { domain: 'not negative' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    i: input('reduction, motor turns for one screw turn', '1', { domain: 'positive' }),
    T_run: input('torque at the motor for steady running', 'N·m', { tex: 'T_\\mathrm{run}' }),
    alpha: formula(
      'angular acceleration of the motor',
      'rad/s²',
      '2 * pi * i * a / Ph',
      'derivation: one screw turn moves one lead',
      {
        tex: '\\alpha',
      },
    ),
    T_a: formula('torque to gain speed', 'N·m', 'J_tot * alpha', newton),
    T_up: formula('motor torque while gaining speed', 'N·m', 'T_run + T_a', newton, {
      tex: 'T_\\mathrm{up}',
    }),
    T_stop: formula('motor torque while slowing down', 'N·m', 'T_run - T_a', newton, {
      tex: 'T_\\mathrm{stop}',
      says: 'Below zero the motor brakes and gives energy back.',
    }),
  },
});
