import { defineSheet, formula, input } from '../sheet/index.ts';

const BAND = 'definition of a tolerance either way';

export const voltsBand = defineSheet({
  id: 'volts-band',
  title: 'Band of voltage that will do',
  about: 'Motors and drives work a little above and below the volts on their plates.',
  symbols: {
    U: input('voltage on the plate', 'V', { domain: 'positive' }),
    k: input('share that it may be off', '%', { domain: 'fraction' }),
    U_low: formula('least voltage', 'V', 'U * (1 - k)', BAND, { tex: 'U_\\mathrm{low}' }),
    U_high: formula('highest voltage', 'V', 'U * (1 + k)', BAND, { tex: 'U_\\mathrm{high}' }),
  },
});
