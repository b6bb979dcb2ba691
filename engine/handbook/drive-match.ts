import { defineSheet, formula, input } from '../sheet/index.ts';

const POWER = 'derivation: power is torque times speed';
const SHARE = 'first order: torque goes with current, speed with volts';

export const driveMatch = defineSheet({
  id: 'drive-match',
  title: 'What a drive leaves of a motor’s plate',
  about:
    'A drive with fewer volts than the motor wants runs out of them at a lower speed; one with fewer amperes gives less torque. What is more than the plate asks is not used.',
  symbols: {
    Pr: input('power on the plate', 'kW', { domain: 'positive', tex: 'P_r' }),
    n_r: input('speed on the plate', 'r/min', { domain: 'positive' }),
    U_m: input('volts the motor wants at that speed', 'V', { domain: 'positive', tex: 'U_m' }),
    U_d: input('volts the drive gives', 'V', { domain: 'positive', tex: 'U_d' }),
    I_m: input('current of the motor', 'A', { domain: 'positive', tex: 'I_m' }),
    I_d: input('current of the drive for hours', 'A', { domain: 'positive', tex: 'I_d' }),
    I_p: input('current of the drive for a minute', 'A', { domain: 'positive', tex: 'I_p' }),
    T_r: formula('rated torque', 'N·m', 'Pr / n_r', POWER, { tex: 'T_r' }),
    k_U: formula('share of the volts that are there', '1', 'min(1, U_d / U_m)', SHARE, { tex: 'k_U' }),
    n_b: formula('speed at which the volts run out', 'r/min', 'n_r * k_U', SHARE, {
      says: 'Below it the torque is constant, above it the power.',
    }),
    k_c: formula('share of the torque for hours', '1', 'min(1, I_d / I_m)', SHARE, { tex: 'k_c' }),
    k_p: formula('share of the torque for a minute', '1', 'I_p / I_m', SHARE, { tex: 'k_p' }),
  },
});
