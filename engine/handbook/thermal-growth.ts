import { defineSheet, formula, input } from '../sheet/index.ts';
import { steelExpansion, steelModulus } from './constants.ts';

export const thermalGrowth = defineSheet({
  id: 'thermal-growth',
  title: 'Growth of a screw by warmth, and stretching it',
  about:
    'A running screw warms up and grows. Held by thrust bearings at both ends it can be stretched cold by the same amount, so that warming only eases the pull (usual: 2 to 5 K, from memory). A screw with one loose end cannot be stretched: that end just moves.',
  symbols: {
    L: input('length', 'mm', { domain: 'positive' }),
    dT: input('rise in temperature', 'K', { tex: '\\Delta T' }),
    d1: input('root diameter', 'mm', { domain: 'positive', tex: 'd_1' }),
    alpha: steelExpansion,
    E: steelModulus,
    dL: formula(
      'growth, and the stretch that cancels it',
      'µm',
      'alpha * L * dT',
      'derivation: definition of the coefficient of expansion',
      {
        tex: '\\Delta L',
        says: 'About 12 µm for each metre and kelvin.',
      },
    ),
    A: formula('area of the core', 'mm²', 'pi * d1^2 / 4', 'derivation: solid round section'),
    F_t: formula('pull that cancels it', 'N', 'alpha * dT * E * A', 'derivation: Hooke’s law', {
      says: 'What the thrust bearings must bear on top of the cutting force. It does not depend on the length.',
    }),
  },
});
