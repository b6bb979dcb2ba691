import { defineSheet, formula, input } from '../sheet/index.ts';

const BALANCE = 'derived: d.c. machine with constant flux at steady speed';

/** Friction of a motor from the current it takes with nothing on its shaft. */
export const benchNoLoad = defineSheet({
  id: 'bench-no-load',
  title: 'Friction from the no-load current',
  about:
    'With nothing on its shaft a motor takes only what its own bearings, brushes and iron eat. At several speeds the steady rubbing is told apart from what grows with speed.',
  symbols: {
    Kt: input('torque constant', 'N·m/A', { tex: 'K_t', domain: 'positive' }),
    I0: input('no-load current', 'A', { tex: 'I_0', domain: 'positive' }),
    V: input('voltage at the terminals', 'V', { domain: 'positive' }),
    Vbr: input('voltage lost in the brushes', 'V', { tex: 'V_{br}', domain: 'not negative' }),
    R: input('winding resistance', 'Ω', { domain: 'positive' }),
    I_cont: input('continuous current', 'A', { tex: 'I_{cont}', domain: 'positive' }),
    T: formula('torque lost', 'N·m', 'Kt * I0', 'definition of the torque constant', {
      says: 'Current times torque constant.',
    }),
    w0: formula('no-load speed to expect', 'r/min', '(V - Vbr - I0*R) / Kt', BALANCE, {
      tex: '\\omega_0',
      says: 'What voltage is left after brushes and copper, divided by the constant.',
    }),
    share: formula('share of the continuous current', '%', 'I0 / I_cont', 'definition', {
      says: 'More than a fifth is a motor that drags.',
    }),
  },
});
