import { defineSheet, formula, input } from '../sheet/index.ts';
import { definition, efficiency, motorPower, shares, specificForce, turningChip } from './cutting.ts';

export const cutTurning = defineSheet({
  id: 'cut-turning',
  title: 'Turning: force, power and torque',
  about: 'What a turning cut asks of the spindle and of both slides.',
  symbols: {
    D: input('diameter being cut', 'mm', { domain: 'positive' }),
    vc: input('cutting speed', 'm/min', { domain: 'positive', tex: 'v_c' }),
    eta: efficiency,
    ...specificForce,
    ...turningChip,
    ...shares,
    n: formula('spindle speed', 'r/min', '2 * vc / D', definition),
    Pc: formula('power at the cut', 'kW', 'Fc * vc', definition, { tex: 'P_c' }),
    Pm: motorPower,
    Mc: formula('torque at the spindle', 'N·m', 'Fc * D / 2', definition, { tex: 'M_c' }),
    vf: formula('feed speed', 'mm/min', 'f * n / (2 * pi)', definition, { tex: 'v_f' }),
    Q: formula('metal removed', 'mm³/min', 'ap * f * vc', definition),
  },
});
