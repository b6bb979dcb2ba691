import { defineSheet, formula, input } from '../sheet/index.ts';

export const torqueCurrent = defineSheet({
  id: 'torque-current',
  title: 'Current for a torque',
  about: 'In a permanent-magnet motor current and torque go together.',
  symbols: {
    T: input('torque', 'N·m'),
    Kt: input('torque constant', 'N·m/A', { domain: 'positive', tex: 'K_t' }),
    I: formula('current', 'A', 'abs(T) / Kt', 'definition of the torque constant', {
      says: 'Twice the torque takes twice the current.',
    }),
  },
});
