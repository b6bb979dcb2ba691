import { defineSheet, formula, input } from '../sheet/index.ts';

export const stepperDraw = defineSheet({
  id: 'stepper-draw',
  title: 'Bus current of a stepper axis',
  about:
    'A stepper’s drive holds the current in both phases all the time: the winding is heated even at rest, and the shaft power comes on top.',
  symbols: {
    T: input('torque at the shaft', 'N·m'),
    w: input('speed', 'r/min', { domain: 'not negative', tex: '\\omega' }),
    I: input('peak of the phase current as set', 'A', { domain: 'positive' }),
    R: input('resistance of one phase', 'Ω', { domain: 'positive' }),
    Vb: input('bus voltage', 'V', { domain: 'positive', tex: 'V_b' }),
    eta: input('efficiency of the drive', '%', { domain: 'positive', tex: '\\eta' }),
    P_cu: formula(
      'heat in both windings',
      'W',
      'I^2 * R',
      'derivation: two phases, sine and cosine of the same peak: I²/2 · R each',
      {
        tex: 'P_\\mathrm{cu}',
        says: 'Both phases together, whatever the rotor’s place.',
      },
    ),
    P: formula('power into the motor', 'W', 'max(0, T * w) + P_cu', 'derivation: power balance'),
    I_bus: formula('current from the bus', 'A', 'P / (Vb * eta)', 'derivation: power balance', {
      tex: 'I_\\mathrm{bus}',
    }),
  },
});
