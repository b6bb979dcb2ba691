import { defineSheet, formula, input } from '../sheet/index.ts';

const POLES = 'derived: current and speed of a d.c. motor at constant voltage';

/** Electrical and mechanical time constant, and how the motor answers a step of voltage. */
export const motorTimeConstants = defineSheet({
  id: 'motor-time-constants',
  title: 'How quickly a motor answers',
  about:
    'Two times say how a motor answers a step of voltage: how quickly the current builds up, and how quickly the speed follows. If the second is less than four times the first, the speed swings before it settles.',
  symbols: {
    R: input('winding resistance', 'Ω', { domain: 'positive' }),
    L: input('winding inductance', 'mH', { domain: 'positive' }),
    J: input('inertia', 'kg·m²', {
      domain: 'positive',
      note: 'With all that turns with the motor; the catalogue gives the motor alone.',
    }),
    Kt: input('torque constant', 'N·m/A', { tex: 'K_t', domain: 'positive' }),
    te: formula('electrical time constant', 's', 'L / R', POLES, {
      tex: 't_e',
      says: 'After this time the current has reached 63 % of where it is going.',
    }),
    tm: formula('mechanical time constant', 's', 'R*J / Kt^2', POLES, {
      tex: 't_m',
      says: 'After this time the speed has reached 63 % of where it is going.',
    }),
    zeta: formula('damping', '1', 'sqrt(tm/te) / 2', POLES, {
      tex: '\\zeta',
      says: 'Below 1 the speed swings about its end value; above 1 it creeps up to it.',
    }),
    disc: formula('what decides between swinging and creeping', '1', '1 - 4*te/tm', POLES, {
      says: 'Negative: it swings.',
    }),
    p_slow: formula(
      'slow pole, real part',
      '1/s',
      'disc >= 0 ? -2/(tm*(1 + sqrt(max(disc, 0)))) : -1/(2*te)',
      POLES,
      {
        tex: 'p_{slow}',
        says: 'How quickly the slower part of the answer dies away.',
      },
    ),
    p_fast: formula('fast pole, real part', '1/s', '-(1 + sqrt(max(disc, 0))) / (2*te)', POLES, {
      tex: 'p_{fast}',
      says: 'How quickly the faster part of the answer dies away.',
    }),
    w_osc: formula('swing of both poles', 'rad/s', 'sqrt(max(-disc, 0)) / (2*te)', POLES, {
      tex: '\\omega_{osc}',
      says: 'How fast it swings; zero if it does not.',
    }),
  },
});
