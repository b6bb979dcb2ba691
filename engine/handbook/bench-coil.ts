import { defineSheet, formula, input } from '../sheet/index.ts';

const OHM = 'derived: Ohm’s law';

/** Coil of a holding brake, and what the brake holds. */
export const benchCoil = defineSheet({
  id: 'bench-coil',
  title: 'Coil and grip of a holding brake',
  about:
    'A holding brake grips by springs and is let go by its coil. The coil has to let go with less than its full voltage, and the springs have to hold more than the load.',
  symbols: {
    V: input('rated voltage of the coil', 'V', { domain: 'positive' }),
    R: input('resistance of the coil', 'Ω', { domain: 'positive' }),
    V_release: input('voltage at which it lets go', 'V', { tex: 'V_{release}', domain: 'positive' }),
    F: input('pull at which it slips', 'N', { domain: 'positive' }),
    r: input('length of the lever', 'mm', { domain: 'positive' }),
    T_load: input('torque of the load it has to hold', 'N·m', { tex: 'T_{load}', domain: 'positive' }),
    I: formula('current of the coil', 'A', 'V/R', OHM, {
      says: 'What the supply and the relay have to carry.',
    }),
    P: formula('heat of the coil', 'W', 'V^2/R', OHM, { says: 'It is warm to the touch in use.' }),
    release: formula('share of the rated voltage that lets it go', '%', 'V_release/V', 'definition', {
      says: 'Under 90 % leaves room for a long cable and a warm coil.',
    }),
    T: formula('holding torque', 'N·m', 'F*r', 'derived: statics', {
      says: 'Pull times lever at the moment it slips.',
    }),
    hold: formula('holding torque over load', '1', 'T/T_load', 'definition', {
      says: 'How much more it holds than it has to.',
    }),
  },
});
