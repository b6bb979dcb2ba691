import { defineSheet, formula, input } from '../sheet/index.ts';

const STATICS = 'derived: statics and the definition of the torque constant';

/** Locked rotor: current and torque constant by lever and scale. */
export const benchLever = defineSheet({
  id: 'bench-lever',
  title: 'Torque constant by lever and scale',
  about:
    'A held rotor pulls with torque constant times current. A lever and a scale read it, independently of the spin test.',
  symbols: {
    F: input('mean of loading and unloading', 'N', {
      domain: 'positive',
      note: 'Friction helps one way and hinders the other; the mean is free of it.',
    }),
    r: input('length of the lever', 'mm', { domain: 'positive' }),
    I: input('current', 'A', { domain: 'positive' }),
    V: input('voltage of the supply', 'V', { domain: 'positive' }),
    Vbr: input('voltage lost in the brushes', 'V', { tex: 'V_{br}', domain: 'not negative' }),
    R: input('winding resistance', 'Ω', { domain: 'positive' }),
    R_lead: input('resistance of the leads', 'Ω', { tex: 'R_{lead}', domain: 'not negative' }),
    Kt: formula('torque constant', 'N·m/A', 'F*r/I', STATICS, {
      tex: 'K_t',
      says: 'Torque for each ampere.',
    }),
    I_locked: formula(
      'current to expect with the rotor held',
      'A',
      '(V - Vbr)/(R + R_lead)',
      'derived: Ohm’s law',
      { tex: 'I_{locked}', domain: 'positive', says: 'Only copper and leads hold it back: it is large.' },
    ),
  },
});
