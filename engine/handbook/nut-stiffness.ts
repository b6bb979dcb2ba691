import { defineSheet, formula, input } from '../sheet/index.ts';

const catalogue =
  'ball-screw catalogue rigidity pages (80 %, 30 % and 10 % of the load rating); the cube root from memory, as for Hertz contact of balls';

export const nutStiffness = defineSheet({
  id: 'nut-stiffness',
  title: 'Stiffness of a ball nut',
  about: 'From the value tabled in the maker’s catalogue to the value at the load or preload there is.',
  symbols: {
    Kcat: input('stiffness tabled by the maker', 'N/µm', { domain: 'positive', tex: 'K_\\mathrm{cat}' }),
    Ca: input('dynamic load rating', 'kN', { domain: 'positive', tex: 'C_a' }),
    Fa: input('axial load', 'N', { domain: 'positive', tex: 'F_a' }),
    Fpr: input('preload', 'N', { domain: 'positive', tex: 'F_\\mathrm{pr}' }),
    Kn: formula('stiffness of a nut with play', 'N/µm', '0.8 * Kcat * (Fa / (0.3 * Ca))^(1/3)', catalogue, {
      tex: 'K_n',
      says: 'Tabled at three tenths of the load rating. Balls flatten less and less as they are pressed, so more load means stiffer.',
    }),
    Kn_pr: formula(
      'stiffness of a preloaded nut',
      'N/µm',
      '0.8 * Kcat * (Fpr / (0.1 * Ca))^(1/3)',
      catalogue,
      {
        tex: 'K_{n,\\mathrm{pr}}',
        says: 'Tabled at a tenth of the load rating.',
      },
    ),
  },
});
