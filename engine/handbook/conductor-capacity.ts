import { defineSheet, formula, input } from '../sheet/index.ts';

/** Current a wire may carry for good, where it lies. */
export const conductorCapacity = defineSheet({
  id: 'conductor-capacity',
  title: 'Current a wire may carry',
  about:
    'A wire warms up by its current. How warm depends on how well it can give off its heat: a hot cabinet and a full duct take a third or more of what the table promises.',
  symbols: {
    I_table: input('current of the table for its area and how it is laid', 'A', {
      tex: 'I_{table}',
      domain: 'positive',
      note: 'IEC 60204-1, Table 6: PVC, copper, 40 °C.',
    }),
    k_t: input('factor for the temperature around it', '1', {
      tex: 'k_t',
      domain: 'positive',
      note: 'IEC 60204-1, Table D.1.',
    }),
    k_g: input('factor for the circuits that lie together', '1', {
      tex: 'k_g',
      domain: 'positive',
      note: 'IEC 60204-1, Tables D.2 and D.3.',
    }),
    I_load: input('current it has to carry for good', 'A', { tex: 'I_b', domain: 'positive' }),
    I_fuse: input('rated current of the fuse or breaker before it', 'A', { tex: 'I_n', domain: 'positive' }),
    I_z: formula(
      'current it may carry for good',
      'A',
      'I_table * k_t * k_g',
      'IEC 60204-1, 12.4 and annex D',
      {
        tex: 'I_z',
        says: 'What the table says, less for heat and company.',
      },
    ),
    m_load: formula('what it may carry over what it has to', '1', 'I_z / I_load', 'definition of a margin', {
      tex: 'm_b',
      says: 'Below one it gets too hot.',
    }),
    m_fuse: formula(
      'what it may carry over what its fuse lets pass',
      '1',
      'I_z / I_fuse',
      'IEC 60364-4-43, 433.1: load ≤ fuse ≤ wire',
      { tex: 'm_n', says: 'Below one the wire burns before the fuse goes.' },
    ),
  },
});
