import { defineSheet, formula, input } from '../sheet/index.ts';
import { steelDensity, steelModulus } from './constants.ts';

const beam = 'Euler–Bernoulli beam; THK Ball Screw General Catalog 513-1E, page A15-32';

export const whirl = defineSheet({
  id: 'whirl',
  title: 'Whirling speed of a screw',
  about:
    'Turned fast enough, a long screw bows out like a skipping rope and beats itself to death. A solid round shaft without a support in between. Where the nut turns and the screw stands still, the screw does not whirl.',
  symbols: {
    lambda: input('end-fixing factor', '1', {
      domain: 'positive',
      tex: '\\lambda',
      note: 'From how the ends are held: 1.875 fixed and free, 3.142 both supported, 3.927 fixed and supported, 4.730 both fixed.',
    }),
    d1: input('root diameter', 'mm', {
      domain: 'positive',
      tex: 'd_1',
      note: 'The core under the thread, not the outside.',
    }),
    L: input('free length', 'mm', {
      domain: 'positive',
      note: 'The longest stretch without a support that can occur.',
    }),
    k_allow: input('share of the whirling speed allowed', '1', {
      domain: 'fraction',
      tex: 'k',
      note: '0.8 is what catalogues use: THK 513-1E, page A15-32.',
    }),
    E: steelModulus,
    rho: { ...steelDensity, tex: '\\rho' },
    I: formula('second moment of the core', 'mm⁴', 'pi * d1^4 / 64', 'derivation: solid round section'),
    A: formula('area of the core', 'mm²', 'pi * d1^2 / 4', 'derivation: solid round section'),
    n_c: formula('whirling speed', 'r/min', 'lambda^2 / L^2 * sqrt(E * I / (rho * A))', beam, {
      says: 'Thicker helps in proportion; twice the length makes it four times worse.',
    }),
    n_allow: formula('allowed screw speed', 'r/min', 'k_allow * n_c', beam, {
      tex: 'n_\\mathrm{allow}',
      says: 'Some room is kept below the whirling speed.',
    }),
  },
});
