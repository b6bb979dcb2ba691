import { defineSheet, formula, input } from '../sheet/index.ts';
import { definition, efficiency, kienzle, motorPower, shares, specificForce } from './cutting.ts';

const groove = 'derivation: area between two depths of a V groove, spread over the edge in cut';

export const cutThreading = defineSheet({
  id: 'cut-threading',
  title: 'One threading pass: force, power and torque',
  about:
    'A pass of a single-point tool in a V groove. The tool cuts on both flanks, or on one when it is fed in along a flank.',
  symbols: {
    d: input('diameter it cuts at', 'mm', {
      domain: 'positive',
      note: 'Of a bolt its outside; of a nut, which is cut from the bore outwards, the bore and twice the depth of the pass.',
    }),
    a: input('depth after the pass', 'mm', { domain: 'positive' }),
    da: input('infeed of the pass', 'mm', { domain: 'positive', tex: '\\Delta a' }),
    alpha: input('half the flank angle', '°', { domain: 'positive', tex: '\\alpha' }),
    q: input('flanks cut', '1', { domain: 'positive', note: '2 straight in, 1 along a flank.' }),
    vc: input('cutting speed', 'm/min', { domain: 'positive', tex: 'v_c' }),
    eta: efficiency,
    ...specificForce,
    A: formula('chip area', 'mm²', 'da * (2 * a - da) * sin(alpha) / cos(alpha)', groove),
    b: formula('length of edge in cut', 'mm', 'q * a / cos(alpha)', groove),
    h: formula('thickness of the chip', 'mm', 'A / b', groove),
    Fc: formula('cutting force', 'N', 'kc * A', kienzle, { tex: 'F_c' }),
    ...shares,
    Pc: formula('power at the cut', 'kW', 'Fc * vc', definition, { tex: 'P_c' }),
    Pm: motorPower,
    Mc: formula('torque at the spindle', 'N·m', 'Fc * d / 2', definition, { tex: 'M_c' }),
    n: formula('spindle speed', 'r/min', '2 * vc / d', definition),
  },
});
