import { constant, defineSheet, formula, input } from '../sheet/index.ts';

/** Whether magnets have lost strength. */
export const benchMagnet = defineSheet({
  id: 'bench-magnet',
  title: 'Have the magnets lost strength?',
  about:
    'Weak magnets lower the back-EMF constant and the torque constant by the same share. Where only one is low, a reading is wrong.',
  symbols: {
    Ke: input('back-EMF constant found', 'V·s/rad', { tex: 'K_e', domain: 'positive' }),
    Kt: input('torque constant found', 'N·m/A', { tex: 'K_t', domain: 'positive' }),
    K_stated: input('constant of plate or maker’s sheet', 'V·s/rad', {
      tex: 'K_{stated}',
      domain: 'positive',
    }),
    t: input('temperature it is stated for', '°C'),
    aB: input('change of magnet strength with temperature', '1/K', {
      tex: '\\alpha_B',
      note: 'Negative: weaker when warm.',
    }),
    U_e: input('± of the back-EMF constant', 'V·s/rad', { tex: 'U_e', domain: 'positive' }),
    U_t: input('± of the torque constant', 'N·m/A', { tex: 'U_t', domain: 'positive' }),
    t20: constant('reference temperature', '°C', '20 °C', 'definition of the constants at 20 °C', {
      tex: 't_{20}',
    }),
    K_plate: formula(
      'constant it would have at 20 °C',
      'V·s/rad',
      'K_stated / (1 + aB*(t - t20))',
      'derived: voltage in proportion to magnet strength',
      {
        tex: 'K_{plate}',
        domain: 'positive',
        says: 'What the plate would say of the motor as it lies on the bench.',
      },
    ),
    ratio_e: formula('share left by voltage', '%', 'Ke/K_plate', 'definition', {
      tex: 'q_e',
      says: 'Found over plate.',
    }),
    ratio_t: formula('share left by torque', '%', 'Kt/K_plate', 'definition', {
      tex: 'q_t',
      says: 'Found over plate.',
    }),
    En: formula(
      'difference over doubt',
      '1',
      'abs(Ke - Kt)/sqrt(U_e^2 + U_t^2)',
      'ISO/IEC 17043 (from memory): E_n of two results with their expanded uncertainties',
      { tex: 'E_n', says: 'Up to 1 the two agree.' },
    ),
    more_current: formula(
      'current for the same torque, against new',
      '%',
      '1/ratio_e',
      'derived: torque in proportion to magnet strength',
      { tex: 'q_I', says: 'Weaker magnets want more amperes.' },
    ),
    more_heat: formula(
      'more copper heat for the same torque',
      '%',
      '1/ratio_e^2 - 1',
      'derived: heat in proportion to current squared',
      { tex: '\\Delta q', says: 'A tenth of the magnet lost is nearly a quarter more heat.' },
    ),
  },
});
