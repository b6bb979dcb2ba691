import { defineSheet, formula, input } from '../sheet/index.ts';

const ENERGY = 'derived: energy balance of a slowing axis';

/** Energy and power that one axis sends back to the bus while it slows from its highest speed. */
export const brakingEnergy = defineSheet({
  id: 'braking-energy',
  title: 'Energy one axis sends back while braking',
  about:
    'A slowing axis gives back what was in its motion. One that slows on its way down gives back what its weight does on that way as well: with a heavy head and a gentle slowing that can be more than the motion held.',
  symbols: {
    J: input('inertia at the motor', 'kg·m²', { domain: 'positive', note: 'With screw and slide.' }),
    w1: input('speed at which braking starts', 'r/min', { tex: '\\omega_1', domain: 'not negative' }),
    alpha: input('deceleration at the motor', 'rad/s²', {
      tex: '\\alpha',
      domain: 'positive',
      note: 'Gentler, and a weight sinks further while it slows.',
    }),
    T_dn: input('torque at the motor while running downwards', 'N·m', {
      tex: 'T_\\mathrm{dn}',
      note: 'Below zero the weight drives the motor. Losses of ways, screw and reduction are in it.',
    }),
    T_f: input('friction torque of the motor itself', 'N·m', { domain: 'not negative', tex: 'T_f' }),
    eta: input('share of the energy that comes back', '%', { tex: '\\eta', domain: 'fraction' }),
    E_kin: formula('energy of the motion', 'J', 'J * w1^2 / 2', 'definition of kinetic energy', {
      tex: 'E',
      says: 'Half inertia times speed squared: double the speed, four times the energy.',
    }),
    T_sink: formula('torque of the weight that friction leaves', 'N·m', 'max(0, -T_dn - T_f)', ENERGY, {
      tex: 'T_\\mathrm{sink}',
      says: 'Zero for a level axis, and where friction alone holds the weight back.',
    }),
    E_sink: formula('energy of the weight that sinks', 'J', 'T_sink * w1^2 / (2 * alpha)', ENERGY, {
      tex: 'E_\\mathrm{sink}',
      says: 'That torque times the angle turned until it stands.',
    }),
    E_back: formula('energy that reaches the bus', 'J', 'eta * (E_kin + E_sink)', ENERGY, {
      tex: 'E_\\mathrm{back}',
      says: 'Friction and the winding take the rest. Their share is taken small, so that the bus is rather thought too high.',
    }),
    P_back: formula(
      'power into the bus as braking starts',
      'W',
      'eta * (J * alpha + T_sink) * w1',
      'derived: power is torque times speed, highest at the first moment',
      {
        tex: 'P_\\mathrm{back}',
        says: 'It falls to nothing as the axis comes to rest.',
      },
    ),
  },
});
