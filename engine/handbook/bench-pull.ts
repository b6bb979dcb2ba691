import { defineSheet, formula, input } from '../sheet/index.ts';
import { gravity } from './constants.ts';

const STATICS = 'derived: statics';

/** Friction, weight and torque from a spring scale, and from motor current. */
export const benchPull = defineSheet({
  id: 'bench-pull',
  title: 'Friction and weight from a spring scale or from motor current',
  about:
    'Pulled slowly both ways, half the sum is friction and half the difference is weight. Motor current at a crawl says the same without taking anything apart.',
  symbols: {
    F: input('pull on the scale', 'N', { domain: 'not negative' }),
    r: input('radius of the pulley, or length of the lever', 'mm', { domain: 'positive' }),
    F_up: input('pull one way, or upwards', 'N', { tex: 'F_{up}' }),
    F_down: input('pull the other way, or downwards', 'N', {
      tex: 'F_{down}',
      note: 'Negative when it has to be held back.',
    }),
    m: input('mass that lies on the ways', 'kg', { domain: 'positive' }),
    Kt: input('torque constant', 'N·m/A', { tex: 'K_t', domain: 'positive' }),
    I_up: input('current one way, or upwards', 'A', { tex: 'I_{up}' }),
    I_down: input('current the other way, with its sign', 'A', { tex: 'I_{down}' }),
    m_b: input('mass of the belt by length', 'kg/m', { tex: 'm_b', domain: 'positive' }),
    L: input('free span of the belt', 'mm', { domain: 'positive' }),
    f: input('note of the plucked belt', 'Hz', { domain: 'positive' }),
    g: gravity,
    T: formula('torque', 'N·m', 'F*r', STATICS, { says: 'Pull times radius, the pull square to it.' }),
    F_friction: formula('friction', 'N', '(F_up + F_down)/2', STATICS, {
      tex: 'F_{friction}',
      says: 'Holds both ways alike.',
    }),
    F_weight: formula('weight, or what helps one way', 'N', '(F_up - F_down)/2', STATICS, {
      tex: 'F_{weight}',
      says: 'Hinders up and helps down.',
    }),
    mu: formula('friction coefficient', '1', 'F_friction/(m*g)', 'definition', {
      tex: '\\mu',
      says: 'Friction over weight, on level ways.',
    }),
    T_friction: formula('friction torque', 'N·m', 'Kt*(I_up - I_down)/2', STATICS, {
      tex: 'T_{friction}',
      says: 'From the currents of the two ways.',
    }),
    T_weight: formula('torque of the weight', 'N·m', 'Kt*(I_up + I_down)/2', STATICS, {
      tex: 'T_{weight}',
      says: 'What is not friction.',
    }),
    S: formula('tension of the belt', 'N', '4*m_b*L^2*f^2', 'derived: stretched string, first note', {
      says: 'The higher it sounds the tighter it is.',
    }),
  },
});
