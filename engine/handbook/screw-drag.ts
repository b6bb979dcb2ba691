import { defineSheet, formula, input } from '../sheet/index.ts';

export const screwDrag = defineSheet({
  id: 'screw-drag',
  title: 'Drag of nut, seals and end bearings together',
  about: 'What it takes to turn the screw with nothing to push. A measured value beats this sum.',
  symbols: {
    T_nut: input('drag of the preloaded nut', 'N·m', { domain: 'not negative' }),
    T_end: input('drag of seals and end bearings', 'N·m', { domain: 'not negative' }),
    T_d: formula('drag together', 'N·m', 'T_nut + T_end', 'derivation: both act on one shaft'),
  },
});
