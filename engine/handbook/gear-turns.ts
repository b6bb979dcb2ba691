import { defineSheet, formula, input } from '../sheet/index.ts';

export const gearTurns = defineSheet({
  id: 'gear-turns',
  title: 'Turns of an encoder that is geared to the spindle',
  about: 'Teeth meet one for one, so the smaller wheel turns more often.',
  symbols: {
    z_s: input('teeth on the spindle', 'teeth', { domain: 'positive' }),
    z_e: input('teeth on the encoder', 'teeth', { domain: 'positive' }),
    u: formula('encoder turns for one spindle turn', '1', 'z_s / z_e', 'derivation: teeth meet one for one'),
  },
});
