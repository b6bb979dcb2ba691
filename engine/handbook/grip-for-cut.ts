import { defineSheet, formula, input } from '../sheet/index.ts';

export const gripForCut = defineSheet({
  id: 'grip-for-cut',
  title: 'Grip that a cut needs',
  about:
    'The jaws hold the work against the torque of the cut by friction only. A thin bar in smooth jaws needs the most.',
  symbols: {
    P: input('power of the cut', 'kW', { domain: 'positive' }),
    n: input('its spindle speed', 'r/min', { domain: 'positive' }),
    D: input('diameter that is gripped', 'mm', { domain: 'positive' }),
    mu: input('friction between jaws and work', '1', {
      domain: 'positive',
      tex: '\\mu',
      note: '0.1 smooth, 0.25 serrated (from memory).',
    }),
    T: formula('torque of the cut', 'N·m', 'P / n', 'power is torque times speed'),
    F_z: formula(
      'grip that the cut needs',
      'N',
      '2 * T / (mu * D)',
      'derivation: friction at half the diameter',
      {
        tex: 'F_z',
        says: 'All jaws together, before any safety.',
      },
    ),
  },
});
