import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const catalogue = 'ball-screw catalogue practice; THK Ball Screw General Catalog 513-1E, page A15-32';

export const dnLimit = defineSheet({
  id: 'dn-limit',
  title: 'Speed limit of the balls',
  about:
    'The balls of a nut must not run round faster than their return parts bear. Use the maker’s own value with the maker’s own diameter, and never above the top speed the maker prints. A second-hand screw: halve it until you have heard it run.',
  symbols: {
    DN: input('DN rating of the nut', '1', {
      domain: 'positive',
      note: 'Diameter in millimetres times speed in r/min: 50 000 older with return tubes, 70 000 precision (from memory); 160 000 to 210 000 modern caged (THK 513-1E, page A15-32).',
    }),
    D: input('ball-circle diameter', 'mm', { domain: 'positive' }),
    c: constant('unit of the DN rating', 'mm·r/min', '1 mm·r/min', catalogue),
    n_DN: formula('speed limit of the balls', 'r/min', 'DN * c / D', catalogue, {
      tex: 'n_\\mathrm{DN}',
      says: 'The thicker the screw, the slower it may turn.',
    }),
  },
});
