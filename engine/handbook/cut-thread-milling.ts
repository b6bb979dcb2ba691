import { defineSheet, formula, input } from '../sheet/index.ts';
import { definition, kienzle, specificForce } from './cutting.ts';

const circle = 'derivation: motion on a circle';
const wheel =
  'derivation: the cutter rolls on round the thread’s axis, so edge and middle turn by the same angle';
const arc = 'derivation: where the cutter’s circle crosses the surface before the cut';
const chip = 'derivation: mean chip over the arc in cut, laid on the slope of the flank';

export const cutThreadMilling = defineSheet({
  id: 'cut-thread-milling',
  title: 'Milling a thread: the circle, the climb, the torque',
  about:
    'A cutter smaller than the hole (or beside the bolt) goes once round while the axis along the thread climbs one lead. Three axes move together; the spindle need not be followed, for the climb goes with the circle and not with the spindle’s angle.',
  symbols: {
    s: input('side: 1 outside (bolt), −1 inside (nut)', '1', { note: 'Either 1 or −1.' }),
    d_w: input('diameter the teeth reach', 'mm', {
      domain: 'positive',
      note: 'Of a nut the outside of its groove, of a bolt its root.',
    }),
    d_b: input('diameter before the cut', 'mm', {
      domain: 'positive',
      note: 'Of a nut its bore, of a bolt its outside.',
    }),
    D_c: input('diameter of the cutter', 'mm', { domain: 'positive', tex: 'D_c' }),
    z: input('teeth of the cutter, counted round it', 'teeth', { domain: 'positive' }),
    f_z: input('feed per tooth at the work', 'mm', { domain: 'positive' }),
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    P_h: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    alpha: input('half the flank angle', '°', { domain: 'positive', tex: '\\alpha' }),
    m: input('grooves cut at once', '1', {
      domain: 'positive',
      note: 'Rows of teeth that are in the work: as many as the thread has turns, or 1 for a cutter with a single row.',
    }),
    ...specificForce,
    R: formula('radius of the circle of the cutter’s middle', 'mm', '(d_w + s * D_c) / 2', circle, {
      says: 'A cutter as large as the hole has no circle to go.',
    }),
    v_w: formula('feed at the work', 'mm/min', 'f_z * z * n / (2 * pi)', definition),
    v: formula('speed of the cutter’s middle', 'mm/min', 'v_w * 2 * R / d_w', wheel, {
      says: 'Slower than the edge inside a nut, faster outside a bolt: the control is given this one.',
    }),
    w: formula('turning round the thread’s axis', 'r/min', 'v / R', circle, { tex: '\\omega' }),
    a: formula('acceleration across the circle', 'm/s²', 'v^2 / R', circle, {
      says: 'Each of the two axes of the circle must give it, once forward and once back in every round.',
    }),
    v_z: formula('climb along the thread', 'mm/min', 'P_h * w / (2 * pi)', definition),
    t: formula('time of one round', 's', '2 * pi / w', definition),
    c: formula('cosine of the arc in cut', '1', 's * (R^2 + (D_c / 2)^2 - (d_b / 2)^2) / (R * D_c)', arc),
    phi: formula('arc in cut', '°', 'acos(max(-1, min(1, c)))', arc, { tex: '\\varphi' }),
    f_c: formula('feed per tooth of the cutter’s middle', 'mm', 'v * 2 * pi / (z * n)', definition),
    h: formula('mean thickness of the chip', 'mm', 'f_c * (1 - cos(phi)) / phi * sin(alpha)', chip, {
      tex: 'h_m',
    }),
    d_g: formula('depth of the groove', 'mm', 's * (d_b - d_w) / 2', definition),
    A: formula('area of the groove', 'mm²', 'd_g^2 * sin(alpha) / cos(alpha)', 'derivation: area of a V'),
    Q: formula(
      'metal removed',
      'mm³/min',
      'm * A * w * (d_b / 2 - s * d_g / 3)',
      'derivation: area times the way of its centre, which lies a third of the depth in',
    ),
    Pc: formula('power at the cut', 'kW', 'Q * kc', kienzle, { tex: 'P_c' }),
    Mc: formula('torque at the spindle', 'N·m', 'Pc / n', definition, { tex: 'M_c' }),
    F: formula(
      'force a feed axis may meet',
      'N',
      'Mc / (D_c / 2) * max(1, 2 * pi / (z * phi))',
      'derivation: mean force over the arc; with less than one tooth in cut all of it falls on the time one is',
      { says: 'Its direction turns as the cutter goes round: both axes of the circle meet it.' },
    ),
  },
});
