import { defineSheet, formula, input } from '../sheet/index.ts';

const COIL = 'derived: current of a coil against a constant voltage';

/** Release of a d.c. coil with a diode or a clamp across it. */
export const coilSuppression = defineSheet({
  id: 'coil-suppression',
  title: 'Release of a contactor coil',
  about:
    'A coil that is switched off makes a voltage spike; a plain diode swallows it but lets the contactor hang on for milliseconds and open slowly. A clamp of the coil’s own voltage or so releases it several times faster.',
  symbols: {
    V: input('coil voltage', 'V', { domain: 'positive' }),
    R: input('coil resistance', 'Ω', { domain: 'positive' }),
    L: input('coil inductance', 'H', { domain: 'positive' }),
    Vc: input('voltage of the clamp', 'V', {
      tex: 'V_c',
      domain: 'positive',
      note: '0.7 V for a plain diode.',
    }),
    drop: input('share of the current at which it lets go', '%', { tex: 'k', domain: 'fraction' }),
    Rs: input('resistor of a resistor-only snubber', 'Ω', { tex: 'R_s', domain: 'positive' }),
    I0: formula('coil current', 'A', 'V / R', 'Ohm’s law', {
      tex: 'I_0',
      says: 'Voltage divided by resistance.',
    }),
    t: formula('time until it lets go', 's', 'L/R * ln((I0 + Vc/R) / (drop*I0 + Vc/R))', COIL, {
      says: 'The higher the clamp, the faster the current dies. Armature travel comes on top.',
    }),
    E_coil: formula('energy in the coil', 'J', 'L * I0^2 / 2', 'definition of the energy of a coil', {
      tex: 'E_L',
      says: 'The clamp has to swallow about this each time.',
    }),
    V_spike: formula('spike with a resistor only', 'V', 'I0 * Rs', 'Ohm’s law', {
      tex: 'V_{spike}',
      says: 'The coil keeps its current flowing through that resistor at first.',
    }),
  },
});
