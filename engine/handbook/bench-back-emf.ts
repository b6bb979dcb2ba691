import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const DEFINITION = 'definition of the back-EMF constant';

/** Back-EMF constant of a spun motor. */
export const benchBackEmf = defineSheet({
  id: 'bench-back-emf',
  title: 'Back-EMF constant of a motor spun by hand or drill',
  about:
    'A motor with magnets makes volts when it is turned. Volts for each unit of speed is the one number that says how fast it will run and, by the same magnets, how hard it will pull.',
  symbols: {
    V: input('voltage it makes, leads open', 'V', { domain: 'positive' }),
    w: input('speed', 'r/min', { tex: '\\omega', domain: 'positive' }),
    t: input('temperature of the motor', '°C'),
    aB: input('change of magnet strength with temperature', '1/K', {
      tex: '\\alpha_B',
      note: 'Negative: weaker when warm.',
    }),
    V_cw: input('mean voltage for one speed, clockwise', 'V', { tex: 'V_{cw}', domain: 'positive' }),
    V_ccw: input('mean voltage for the same speed, counter-clockwise', 'V', {
      tex: 'V_{ccw}',
      domain: 'positive',
    }),
    K: input('back-EMF constant found', 'V·s/rad', { domain: 'positive' }),
    K_plate: input('back-EMF constant of the plate', 'V·s/rad', { tex: 'K_{plate}', domain: 'positive' }),
    t20: constant('reference temperature', '°C', '20 °C', 'definition of the constant at 20 °C', {
      tex: 't_{20}',
    }),
    Ke: formula('back-EMF constant as it is', 'V/krpm', 'V / w', DEFINITION, {
      tex: 'K_e',
      says: 'Volts divided by speed.',
    }),
    Ke20: formula(
      'back-EMF constant at 20 °C',
      'V/krpm',
      'Ke / (1 + aB*(t - t20))',
      'derived: voltage in proportion to magnet strength',
      {
        tex: 'K_{e20}',
        says: 'A warm motor makes a little less; this takes it back to 20 °C, where plates speak.',
      },
    ),
    Ke_rms: formula(
      'r.m.s. constant of a sine whose peak was read',
      'V/krpm',
      'Ke20 / sqrt(2)',
      'definition of r.m.s. of a sine',
      { tex: 'K_{e,rms}', says: 'The meter’s number for the scope’s number.' },
    ),
    asymmetry: formula(
      'difference between the two ways round',
      '%',
      '2*abs(V_cw - V_ccw) / (V_cw + V_ccw)',
      'definition',
      { says: 'Brushes off their neutral place make one way round weaker.' },
    ),
    ratio: formula('share of the plate', '%', 'K / K_plate', 'definition', {
      says: 'Under 90 % the magnets have lost strength.',
    }),
  },
});
