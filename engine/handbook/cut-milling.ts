import { defineSheet, formula, input } from '../sheet/index.ts';
import { definition, efficiency, kienzle, motorPower, specificForce } from './cutting.ts';

const arc = 'derivation: mean chip over the arc in cut, side of the cutter in the work';

export const cutMilling = defineSheet({
  id: 'cut-milling',
  title: 'Milling: force, power and torque',
  about:
    'Face or side milling with the cut beginning at one side of the cutter. The chip grows and shrinks along the arc, so its mean thickness counts. A full slot has a width of cut equal to the diameter.',
  symbols: {
    D: input('diameter of the cutter', 'mm', { domain: 'positive' }),
    z: input('number of teeth', 'teeth', { domain: 'positive' }),
    fz: input('feed per tooth', 'mm', { domain: 'positive', tex: 'f_z' }),
    ae: input('width of cut', 'mm', { domain: 'positive', tex: 'a_e', note: 'Not more than the diameter.' }),
    ap: input('depth of cut', 'mm', { domain: 'positive', tex: 'a_p' }),
    vc: input('cutting speed', 'm/min', { domain: 'positive', tex: 'v_c' }),
    eta: efficiency,
    ...specificForce,
    phi: formula('angle in cut', '°', 'acos(1 - 2 * ae / D)', arc, { tex: '\\varphi' }),
    h: formula('mean thickness of the chip', 'mm', '2 * fz * ae / (D * phi)', arc, { tex: 'h_m' }),
    n: formula('spindle speed', 'r/min', '2 * vc / D', definition),
    vf: formula('feed speed', 'mm/min', 'fz * z * n / (2 * pi)', definition, { tex: 'v_f' }),
    Q: formula('metal removed', 'mm³/min', 'ap * ae * vf', definition),
    Pc: formula('power at the cut', 'kW', 'Q * kc', kienzle, { tex: 'P_c' }),
    Pm: motorPower,
    Mc: formula('torque at the spindle', 'N·m', 'Pc / n', definition, { tex: 'M_c' }),
    z_in: formula('teeth in cut', '1', 'max(1, z * phi / (2 * pi))', arc, { tex: 'z_e' }),
    h_max: formula('thickest chip', 'mm', 'ae > D / 2 ? fz : fz * 2 * sqrt(ae / D - (ae / D)^2)', arc, {
      tex: 'h_\\mathrm{max}',
    }),
    F_tooth: formula(
      'largest force of one tooth',
      'N',
      'k_w * kc11 * (h_max / h1)^(-mc) * ap * h_max',
      kienzle,
      {
        tex: 'F_\\mathrm{tooth}',
      },
    ),
    F_axis: formula(
      'force a feed axis may meet',
      'N',
      'F_tooth * z_in',
      'derivation: all teeth in cut push as hard as the one with the thickest chip; never less than the true force',
      {
        tex: 'F_\\mathrm{axis}',
        says: 'On the safe side: the direction turns with the teeth.',
      },
    ),
  },
});
