import { defineSheet, formula, input } from '../sheet/index.ts';
import { steelModulus } from './constants.ts';
import { definition, efficiency, motorPower, shares, specificForce, turningChip } from './cutting.ts';

const bar = 'derivation: round bar held at one end, force at the tip';

export const cutBoring = defineSheet({
  id: 'cut-boring',
  title: 'Boring: force, power and how the bar bends',
  about:
    'As turning, inside. The bar is the weak part: twice the length bends eight times as much. Steel bars chatter beyond about four diameters.',
  symbols: {
    D: input('diameter being cut', 'mm', { domain: 'positive' }),
    vc: input('cutting speed', 'm/min', { domain: 'positive', tex: 'v_c' }),
    d_b: input('diameter of the bar', 'mm', { domain: 'positive', tex: 'd_b' }),
    L: input('length the bar stands out', 'mm', { domain: 'positive' }),
    eta: efficiency,
    E: steelModulus,
    ...specificForce,
    ...turningChip,
    ...shares,
    n: formula('spindle speed', 'r/min', '2 * vc / D', definition),
    Pc: formula('power at the cut', 'kW', 'Fc * vc', definition, { tex: 'P_c' }),
    Pm: motorPower,
    Mc: formula('torque at the spindle', 'N·m', 'Fc * D / 2', definition, { tex: 'M_c' }),
    vf: formula('feed speed', 'mm/min', 'f * n / (2 * pi)', definition, { tex: 'v_f' }),
    I: formula('second moment of the bar', 'mm⁴', 'pi * d_b^4 / 64', bar),
    sag: formula('the bar bends down by', 'µm', 'Fc * L^3 / (3 * E * I)', bar),
    push: formula('and away from the wall by', 'µm', 'Fp * L^3 / (3 * E * I)', bar, {
      says: 'The bore comes out smaller by twice this.',
    }),
    slender: formula('length over diameter of the bar', '1', 'L / d_b', bar),
  },
});
