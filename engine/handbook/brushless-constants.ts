import { defineSheet, formula, input } from '../sheet/index.ts';

const BALANCE =
  'derived from the power balance; J. R. Hendershot and T. J. E. Miller, Design of Brushless Permanent-Magnet Machines (from memory)';

/** Conventions of brushless motors: line-line r.m.s. EMF to torque constants in peak and r.m.s. amperes. */
export const brushlessConstants = defineSheet({
  id: 'brushless-constants',
  title: 'Constants of a brushless motor',
  about:
    'Makers state the same motor in several ways: r.m.s. or peak, between two leads or from a lead to the middle. Mixing them is worth a factor of 1.4 to 1.7. This turns one into the others.',
  symbols: {
    Ke_ll_rms: input('back-EMF constant, r.m.s. between two leads', 'V·s/rad', {
      tex: 'K_{e,ll,rms}',
      domain: 'positive',
      note: 'What a meter on a.c. reads between two leads, divided by the speed.',
    }),
    I_rms: input('current, r.m.s. of one phase', 'A', { tex: 'I_{rms}', domain: 'not negative' }),
    f: input('frequency of the back-EMF', 'Hz', { domain: 'positive' }),
    w: input('speed at which it was measured', 'r/min', { tex: '\\omega', domain: 'positive' }),
    Ke_ll_pk: formula(
      'back-EMF constant, peak between two leads',
      'V·s/rad',
      'sqrt(2) * Ke_ll_rms',
      'definition of r.m.s. of a sine',
      {
        tex: 'K_{e,ll,pk}',
        says: 'The top of the wave an oscilloscope shows.',
      },
    ),
    Kt_rms: formula('torque for each r.m.s. ampere', 'N·m/A', 'sqrt(3) * Ke_ll_rms', BALANCE, {
      tex: 'K_{t,rms}',
      says: 'Sine motor on a sine drive whose current is stated in r.m.s.',
    }),
    Kt_pk: formula('torque for each peak ampere', 'N·m/A', 'sqrt(3)/2 * Ke_ll_pk', BALANCE, {
      tex: 'K_{t,pk}',
      says: 'Sine motor on a sine drive whose current is stated in peak.',
    }),
    Kt_trap: formula('torque for each ampere, trapezoidal motor in six steps', 'N·m/A', 'Ke_ll_pk', BALANCE, {
      tex: 'K_{t,trap}',
      says: 'Motor and drive both made for six-step current; the motor then behaves as a d.c. motor.',
    }),
    Kt_six: formula(
      'mean torque for each ampere, sine motor in six steps',
      'N·m/A',
      '3/pi * Ke_ll_pk',
      BALANCE,
      {
        tex: 'K_{t,six}',
        says: 'A sine motor on a six-step drive: a little less in the mean, with dips.',
      },
    ),
    dip: formula('deepest dip of that torque', '%', '1 - cos(pi/6)', BALANCE, {
      says: 'How far the torque falls six times in each electrical turn.',
    }),
    I_pk: formula('current, peak of one phase', 'A', 'sqrt(2) * I_rms', 'definition of r.m.s. of a sine', {
      tex: 'I_{pk}',
      says: 'What a drive that states peak amperes would call the same current.',
    }),
    T: formula('torque of that current', 'N·m', 'Kt_rms * I_rms', BALANCE, {
      says: 'Torque constant times current.',
    }),
    p: formula('pole pairs', '1', '2*pi*f / w', 'definition of pole pairs', {
      says: 'Electrical turns for each turn of the shaft. Should come out as a whole number.',
    }),
  },
});
