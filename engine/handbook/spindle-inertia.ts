import { defineSheet, formula, input } from '../sheet/index.ts';

const SQUARE = 'derivation: kinetic energy, so a ratio counts squared';

export const spindleInertia = defineSheet({
  id: 'spindle-inertia',
  title: 'All that turns, seen from the spindle',
  about:
    'A ratio counts squared: in a slow range the small rotor of the motor can weigh more at the spindle than the chuck.',
  symbols: {
    J_sp: input('inertia of the spindle', 'kg·m²', { domain: 'not negative', tex: 'J_\\mathrm{sp}' }),
    J_ch: input('inertia of the chuck', 'kg·m²', { domain: 'not negative', tex: 'J_\\mathrm{ch}' }),
    J_w: input('inertia of work or tool', 'kg·m²', { domain: 'not negative', tex: 'J_w' }),
    J_b: input('inertia of the wheels on the spindle side', 'kg·m²', { domain: 'not negative', tex: 'J_b' }),
    J_m: input('inertia of the motor’s rotor', 'kg·m²', { domain: 'not negative', tex: 'J_m' }),
    J_p: input('inertia of the wheel on the motor', 'kg·m²', { domain: 'not negative', tex: 'J_p' }),
    i: input('motor turns for one spindle turn', '1', { domain: 'positive' }),
    J: formula('inertia at the spindle', 'kg·m²', 'J_sp + J_ch + J_w + J_b + (J_m + J_p) * i^2', SQUARE),
    J_mot: formula('inertia at the motor', 'kg·m²', 'J / i^2', SQUARE, { tex: 'J_\\mathrm{mot}' }),
  },
});
