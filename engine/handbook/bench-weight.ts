import { defineSheet, formula, input } from '../sheet/index.ts';
import { gravity } from './constants.ts';

const STATICS = 'derived: statics';
const NEWTON = 'derived: Newton’s second law';

/** Torque and inertia from a weight on a string. */
export const benchWeight = defineSheet({
  id: 'bench-weight',
  title: 'Torque and inertia from a weight on a string',
  about:
    'A weight on a string round a drum is a torque nobody has to calibrate. The smallest that starts the shaft is its breakaway; how fast a larger one falls tells the inertia.',
  symbols: {
    m: input('weight that just starts it', 'kg', { domain: 'positive' }),
    r: input('radius: drum plus half the string', 'mm', { domain: 'positive' }),
    T_one: input('breakaway torque one way', 'N·m', { tex: 'T_{one}', domain: 'not negative' }),
    T_other: input('breakaway torque the other way', 'N·m', { tex: 'T_{other}', domain: 'not negative' }),
    Ph: input('lead', 'mm', { tex: 'P_h', domain: 'positive' }),
    eta: input('efficiency of the screw', '%', { tex: '\\eta', domain: 'fraction' }),
    h: input('height it falls', 'm', { domain: 'positive' }),
    t: input('time of the fall', 's', { domain: 'positive' }),
    Tf: input('running friction at the drum', 'N·m', { tex: 'T_f', domain: 'not negative' }),
    g: gravity,
    T: formula('breakaway torque', 'N·m', 'm*g*r', STATICS, { says: 'Weight times radius.' }),
    T_friction: formula('friction', 'N·m', '(T_one + T_other)/2', STATICS, {
      tex: 'T_{friction}',
      says: 'Friction holds both ways alike.',
    }),
    T_bias: formula('torque that helps one way', 'N·m', '(T_one - T_other)/2', STATICS, {
      tex: 'T_{bias}',
      says: 'A weight or an imbalance helps one way and hinders the other.',
    }),
    F_axial: formula('friction along the screw', 'N', '2*pi*eta*T_friction/Ph', STATICS, {
      tex: 'F_{axial}',
      says: 'What the slide resists, as a push along the screw.',
    }),
    a: formula('acceleration of the fall', 'm/s²', '2*h/t^2', NEWTON, {
      says: 'From rest, over a height, in a time.',
    }),
    J: formula('inertia', 'kg·m²', '(m*(g - a)*r - Tf)*r/a', NEWTON, {
      domain: 'positive',
      says: 'What the string pulls, less friction, over how fast it gains.',
    }),
  },
});
