import { constant, defineSheet, formula, input } from '../sheet/index.ts';
import { copperConductivity } from './electrical-constants.ts';

/** Protective conductors in a fault, and what a bonding test should read. */
export const conductorProtective = defineSheet({
  id: 'conductor-protective',
  title: 'Protective conductor',
  about:
    'When a live wire touches metal, the protective conductor carries the fault until the fuse goes. It must stand that, and it must be there: its resistance is measured, wire by wire, before power is ever put on.',
  symbols: {
    I: input('fault current', 'A', { domain: 'positive' }),
    t: input('time until it is cut off', 's', { domain: 'positive' }),
    k2: input('what its kind stands, squared', 'A²·s/mm⁴', {
      tex: 'k^2',
      domain: 'positive',
      note: '115² as a core in a PVC cable, 143² lying apart (IEC 60364-5-54).',
    }),
    A: input('area of its copper', 'mm²', { domain: 'positive' }),
    l: input('its length', 'm', { domain: 'positive' }),
    I_test: input('current of the test', 'A', { tex: 'I_{test}', domain: 'positive' }),
    contacts: constant('resistance of leads and contacts', 'Ω', '0.05 Ω', 'common practice, no source', {
      tex: 'R_c',
    }),
    gamma: copperConductivity,
    A_need: formula(
      'least area for the fault',
      'mm²',
      'sqrt(I^2*t/k2)',
      'IEC 60364-5-54, 543.1.2: no heat leaves in so short a time',
      {
        tex: 'A_{min}',
        says: 'All the heat stays in the copper.',
      },
    ),
    let_through: formula('what an area withstands', 'A²·s', 'k2*A^2', 'IEC 60364-5-54, 543.1.2', {
      tex: 'I^2t',
      says: 'The fuse must let less through.',
    }),
    R: formula('resistance to expect', 'Ω', 'l/(gamma*A)', 'IEC 60028 (1925)', {
      says: 'At 20 °C, without contacts.',
    }),
    V_test: formula('voltage along it in the test', 'V', 'R*I_test', 'Ohm’s law', {
      tex: 'V_{test}',
      says: 'What a meter sees between the two ends.',
    }),
    R_pass: formula('highest reading to accept', 'Ω', '1.5*R + contacts', 'common practice, no source', {
      tex: 'R_{pass}',
      says: 'Half as much again, and a twentieth of an ohm for leads and contacts.',
    }),
  },
});
