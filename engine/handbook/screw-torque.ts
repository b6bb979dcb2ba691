import { defineSheet, formula, input } from '../sheet/index.ts';

const energy = 'derivation: energy balance of one turn; the same formula stands in ball-screw catalogues';

export const screwTorque = defineSheet({
  id: 'screw-torque',
  title: 'Torque from thrust, thrust from torque',
  about:
    'At a steady speed. Preload, seal and bearing drag come on top. Mind the direction: losses make the drive work harder, but help it when the load pushes along.',
  symbols: {
    Fa: input('axial force against the motion', 'N', {
      domain: 'any',
      tex: 'F_a',
      note: 'Below zero when the load pushes along.',
    }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    eta: input('efficiency, turning moves the load', '1', { domain: 'positive', tex: '\\eta' }),
    eta_b: input('efficiency, the load turns the screw', '1', {
      domain: 'any',
      tex: '\\eta_b',
      note: 'Zero or below for a screw that holds by friction.',
    }),
    T_in: input('torque put in', 'N·m', { domain: 'not negative', tex: 'T_\\mathrm{in}' }),
    T: formula('torque to push this force', 'N·m', 'Fa * Ph / (2 * pi * eta)', energy, {
      says: 'The work of one turn is force times lead; the losses come on top.',
    }),
    T_b: formula('torque the load puts on the shaft', 'N·m', 'Fa * Ph * eta_b / (2 * pi)', energy, {
      says: 'What a motor or brake must hold when this force pushes back: the losses are subtracted, not added.',
    }),
    T_s: formula('torque the drive gives, by sign', 'N·m', 'Fa >= 0 ? T : T_b', energy, {
      says: 'Above zero the motor drives, below zero it brakes.',
    }),
    F: formula('thrust from the torque put in', 'N', '2 * pi * eta * T_in / Ph', energy, {
      says: 'The force that this torque can push with.',
    }),
  },
});
