import { defineSheet, formula, input } from '../sheet/index.ts';

const ENERGY = 'energy of a capacitor, C·V²/2: what comes in lifts it';

/** Where the energy of braking goes: into the capacitors, and what they do not take into the dump resistor. */
export const busBraking = defineSheet({
  id: 'bus-braking',
  title: 'Bus while axes brake',
  about:
    'A diode supply lets nothing back to the mains, and a switched-mode one switches off. What braking sends back stays in the capacitors and lifts their voltage, until a dump resistor, where there is one, burns it.',
  symbols: {
    E: input('energy sent back', 'J', {
      domain: 'not negative',
      note: 'Of all axes that brake at once: a stop of the machine stops them all.',
    }),
    C: input('bus capacitance', 'µF', {
      domain: 'positive',
      note: 'Large capacitors are seldom closer than ± 20 % to what is printed on them. The low end is the worst here.',
    }),
    V1: input('bus voltage before', 'V', {
      tex: 'V_1',
      domain: 'positive',
      note: 'Use the highest: mains high, nothing else moving.',
    }),
    V_on: input('voltage at which the dump switches in', 'V', { tex: 'V_\\mathrm{on}', domain: 'positive' }),
    R: input('dump resistor', 'Ω', { domain: 'positive' }),
    V2: formula('bus voltage after', 'V', 'sqrt(V1^2 + 2*E/C)', ENERGY, {
      tex: 'V_2',
      says: 'As if nothing else took from the bus meanwhile.',
    }),
    E_cap: formula(
      'energy the capacitors take before the dump switches in',
      'J',
      'C * max(0, V_on^2 - V1^2) / 2',
      ENERGY,
      {
        tex: 'E_C',
        says: 'From high mains up to the switching voltage.',
      },
    ),
    E_dump: formula('energy the dump resistor must take', 'J', 'max(0, E - E_cap)', ENERGY, {
      tex: 'E_\\mathrm{dump}',
      says: 'In one go: a stop lasts a fraction of a second, and no heat leaves a resistor so quickly.',
    }),
    P_dump: formula('power the dump resistor takes while it is on', 'W', 'V_on^2 / R', 'Ohm’s law', {
      tex: 'P_\\mathrm{dump}',
      says: 'If more comes in than this, the bus rises on though the dump is on.',
    }),
  },
});
