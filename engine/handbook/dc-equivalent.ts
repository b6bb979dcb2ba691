import { defineSheet, formula, input } from '../sheet/index.ts';

const BALANCE =
  'derivation: power balance; J. R. Hendershot and T. J. E. Miller, Design of Brushless Permanent-Magnet Machines (from memory)';

export const dcEquivalent = defineSheet({
  id: 'dc-equivalent',
  title: 'A motor and its drive in direct-current terms',
  about:
    'Brings the several ways of stating a motor to one: the back-EMF as a DC motor would show it, and currents as DC amperes. For a brushless motor the DC-like current is the one that makes the same torque with the peak back-EMF between two leads.',
  symbols: {
    Ke_s: input('back-EMF constant as stated', 'V/krpm', { domain: 'positive' }),
    c_e: input('factor of the way it is stated', '1', {
      domain: 'positive',
      note: 'DC or peak between two leads 1, r.m.s. between two leads √2.',
    }),
    I_dp: input('peak current of the drive as stated', 'A', { domain: 'positive' }),
    I_dc: input('continuous current of the drive as stated', 'A', { domain: 'positive' }),
    c_d: input('factor of the drive’s amperes', '1', {
      domain: 'positive',
      note: 'DC 1, peak of the phase √3/2, r.m.s. of the phase √(3/2).',
    }),
    I_mp: input('largest current of the motor as stated', 'A', { domain: 'positive' }),
    I_mc: input('continuous current of the motor as stated', 'A', { domain: 'positive' }),
    c_m: input('factor of the motor’s amperes', '1', { domain: 'positive', note: 'As for the drive.' }),
    Kt: formula('torque constant', 'N·m/A', 'c_e * Ke_s', BALANCE, {
      tex: 'K_t',
      says: 'In SI the torque for each ampere is the same number as the volts for each radian a second.',
    }),
    I_drive_peak: formula('peak current of the drive', 'A', 'c_d * I_dp', BALANCE),
    I_drive: formula('continuous current of the drive', 'A', 'c_d * I_dc', BALANCE),
    I_motor_peak: formula('largest current of the motor', 'A', 'c_m * I_mp', BALANCE),
    I_motor: formula('continuous current of the motor', 'A', 'c_m * I_mc', BALANCE),
    T_drive_peak: formula('torque at the drive’s peak current', 'N·m', 'Kt * I_drive_peak', BALANCE),
    T_drive: formula('torque at the drive’s continuous current', 'N·m', 'Kt * I_drive', BALANCE),
    T_motor_peak: formula('torque at the motor’s largest current', 'N·m', 'Kt * I_motor_peak', BALANCE),
    T_motor: formula('torque at the motor’s continuous current', 'N·m', 'Kt * I_motor', BALANCE),
  },
});
