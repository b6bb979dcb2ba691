import { defineSheet, formula, input } from '../sheet/index.ts';

export const stepperTurn = defineSheet({
  id: 'stepper-turn',
  title: 'Torque of a stepper that may be used',
  about:
    'A stepper asked for more than its pull-out torque stalls and loses its place without a word, so only a share of the worked torque is used.',
  symbols: {
    T_po: input('pull-out torque at the speed', 'N·m', { domain: 'not negative', tex: 'T_\\mathrm{po}' }),
    k: input('share that may be used', '1', { domain: 'fraction' }),
    T_use: formula('torque that may be used', 'N·m', 'k * T_po', 'common practice, no source', {
      tex: 'T_\\mathrm{use}',
    }),
  },
});
