import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const catalogue = 'THK Ball Screw General Catalog 513-1E, page A15-32';

export const whirlShortcut = defineSheet({
  id: 'whirl-shortcut',
  title: 'Whirling speed, catalogue shortcut',
  about:
    'The short form printed in catalogues for steel screws. Eight tenths of the whirling speed is already in its factor.',
  symbols: {
    f: input('catalogue factor of the mounting', '1', {
      domain: 'positive',
      note: '3.4 fixed and free, 9.7 both supported, 15.1 fixed and supported, 21.9 both fixed.',
    }),
    d1: input('root diameter', 'mm', { domain: 'positive', tex: 'd_1' }),
    L: input('free length', 'mm', { domain: 'positive' }),
    c: constant('scale of the catalogue factor', 'mm·r/min', '10000000 mm·r/min', catalogue),
    n_allow: formula('allowed screw speed', 'r/min', 'f * c * d1 / L^2', catalogue, {
      tex: 'n_\\mathrm{allow}',
      says: 'With millimetres: factor times root diameter over length squared, times ten million.',
    }),
  },
});
