import { defineSheet, formula, input } from '../sheet/index.ts';

/** Inductance from an a.c. reading; a brake's coil. */
export const benchInductance = defineSheet({
  id: 'bench-inductance',
  title: 'Inductance from volts and amperes of a.c.',
  about: 'On a.c. a coil holds current back by more than its resistance; what is more is its inductance.',
  symbols: {
    V: input('a.c. voltage at the winding', 'V', { domain: 'positive' }),
    I: input('a.c. current', 'A', { domain: 'positive' }),
    f: input('frequency', 'Hz', { domain: 'positive' }),
    R: input('winding resistance on d.c.', 'Ω', { domain: 'positive' }),
    Z: formula('impedance', 'Ω', 'V/I', 'definition', { says: 'Volts for each ampere, on a.c.' }),
    L: formula(
      'inductance',
      'mH',
      'sqrt(Z^2 - R^2)/(2*pi*f)',
      'derived: impedance of resistance and inductance in a row',
      { domain: 'positive', says: 'What the resistance does not explain.' },
    ),
  },
});
