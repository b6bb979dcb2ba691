import { defineSheet, formula, input } from '../sheet/index.ts';
import { definition, efficiency, kienzle, motorPower, specificForce } from './cutting.ts';

const lips = 'derivation: two lips, each cutting half the feed over half the diameter';

export const cutDrilling = defineSheet({
  id: 'cut-drilling',
  title: 'Drilling into the solid: thrust, torque and power',
  about:
    'Both lips cut; the middle of the drill only squeezes. A drill asks more push of its axis than any other tool. Sharp point, holes to about three diameters deep.',
  symbols: {
    D: input('diameter of the drill', 'mm', { domain: 'positive' }),
    f: input('feed per turn', 'mm', { domain: 'positive' }),
    vc: input('cutting speed at the rim', 'm/min', { domain: 'positive', tex: 'v_c' }),
    sigma: input('point angle', '°', {
      domain: 'positive',
      tex: '\\sigma',
      note: '118° is usual, 135° for hard steel.',
    }),
    eta: efficiency,
    ...specificForce,
    h: formula('thickness of the chip', 'mm', 'f / 2 * sin(sigma / 2)', lips),
    Mc: formula('torque', 'N·m', 'kc * f * D^2 / 8', lips, { tex: 'M_c' }),
    n: formula('spindle speed', 'r/min', '2 * vc / D', definition),
    Pc: formula('power at the cut', 'kW', 'Mc * n', definition, { tex: 'P_c' }),
    Pm: motorPower,
    F_lips: formula('thrust of the lips alone', 'N', '0.5 * kc * D / 2 * f * sin(sigma / 2)', kienzle, {
      tex: 'F_\\mathrm{lips}',
      says: 'With a pilot hole that clears the middle.',
    }),
    Ff: formula(
      'thrust into the solid',
      'N',
      '0.7 * kc * D / 2 * f',
      'a published sheet of common drilling formulas',
      {
        tex: 'F_f',
        says: 'What the axis has to push, the squeezing middle included.',
      },
    ),
    vf: formula('feed speed', 'mm/min', 'f * n / (2 * pi)', definition, { tex: 'v_f' }),
  },
});
