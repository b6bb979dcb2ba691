import { constant, defineSheet, formula, input } from '../sheet/index.ts';

/** Insulation resistance taken to 40 °C. */
export const benchInsulation = defineSheet({
  id: 'bench-insulation',
  title: 'Insulation resistance at 40 °C',
  about:
    'Cold insulation resists several times better than warm. To be compared with a limit, a reading is taken to 40 °C.',
  symbols: {
    R: input('insulation resistance read after one minute', 'MΩ', { domain: 'positive' }),
    t: input('temperature of the winding', '°C'),
    t40: constant('reference temperature', '°C', '40 °C', 'IEEE 43 (rule from memory)', { tex: 't_{40}' }),
    half: constant('warming that halves it', 'K', '10 K', 'IEEE 43, older editions (from memory)', {
      tex: '\\Delta_{1/2}',
    }),
    R40: formula(
      'insulation resistance at 40 °C',
      'MΩ',
      'R * 0.5^((t40 - t)/half)',
      'IEEE 43, older editions (from memory): it halves with each 10 K',
      { tex: 'R_{40}', says: 'A cold reading flatters.' },
    ),
  },
});
