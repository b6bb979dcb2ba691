import { defineSheet, formula, input } from '../sheet/index.ts';

const POWER = 'derivation: power over volts, losses and what the mains do not see as work';

export const driveInput = defineSheet({
  id: 'drive-input',
  title: 'Current a spindle drive takes from the mains',
  about:
    'A drive takes its current in short gulps at the top of each wave. On one phase that makes nearly twice the amperes that its power alone would need: look at the breaker before you buy the drive.',
  symbols: {
    P: input('power at the spindle', 'kW', { domain: 'positive' }),
    eta_g: input('efficiency of belts and gears', '%', { domain: 'fraction', tex: '\\eta_g' }),
    eta_m: input('efficiency of the motor', '%', { domain: 'fraction', tex: '\\eta_m' }),
    eta_d: input('efficiency of the drive', '%', { domain: 'fraction', tex: '\\eta_d' }),
    k: input('power factor of the drive’s input', '1', { domain: 'fraction' }),
    U: input('mains voltage', 'V', { domain: 'positive' }),
    P_1: formula('power from the mains', 'kW', 'P / (eta_g * eta_m * eta_d)', POWER, { tex: 'P_1' }),
    I_1: formula('current on one phase', 'A', 'P_1 / (k * U)', POWER, { tex: 'I_1' }),
    I_3: formula('current on three phases', 'A', 'P_1 / (sqrt(3) * k * U)', POWER, { tex: 'I_3' }),
  },
});
