import { defineSheet, formula, input } from '../sheet/index.ts';
import { definition, efficiency, kienzle, motorPower, specificForce } from './cutting.ts';

export const cutParting = defineSheet({
  id: 'cut-parting',
  title: 'Parting and grooving: force, power and torque',
  about: 'The whole width of the blade cuts at once, and the cross slide pushes it in.',
  symbols: {
    D: input('diameter being cut', 'mm', { domain: 'positive' }),
    w: input('width of the blade', 'mm', { domain: 'positive' }),
    f: input('feed per turn', 'mm', { domain: 'positive' }),
    vc: input('cutting speed', 'm/min', { domain: 'positive', tex: 'v_c' }),
    k_f: input('feed force as a share of the cutting force', '1', {
      domain: 'positive',
      tex: 'k_f',
      note: '0.4 to 0.6 sharp, up to 1 worn: from memory.',
    }),
    eta: efficiency,
    ...specificForce,
    h: formula('thickness of the chip', 'mm', 'f', kienzle),
    Fc: formula('cutting force', 'N', 'kc * w * h', kienzle, { tex: 'F_c' }),
    Ff: formula(
      'force that pushes the blade in',
      'N',
      'k_f * Fc',
      'common practice: a share of the cutting force',
      {
        tex: 'F_f',
        says: 'What the cross slide has to push.',
      },
    ),
    n: formula('spindle speed', 'r/min', '2 * vc / D', definition),
    Pc: formula('power at the cut', 'kW', 'Fc * vc', definition, { tex: 'P_c' }),
    Pm: motorPower,
    Mc: formula('torque at the spindle', 'N·m', 'Fc * D / 2', definition, { tex: 'M_c' }),
    vf: formula('feed speed', 'mm/min', 'f * n / (2 * pi)', definition, { tex: 'v_f' }),
  },
});
