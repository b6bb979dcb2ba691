import { defineSheet, formula, input } from '../sheet/index.ts';
import { diodeDropLight, diodeDropLoaded } from './electrical-constants.ts';

const WORST = 'derived: switched on at the peak of the mains, capacitor empty, inductance ignored';

/** Current when the supply is switched on. */
export const inrush = defineSheet({
  id: 'inrush',
  title: 'Current at switching on',
  about:
    'An empty capacitor is a short circuit for a moment, and a transformer may saturate in its first half cycle. Both trip breakers and wear contacts; a resistor in the mains for the first second tames them.',
  symbols: {
    Vsec: input('secondary voltage at rated load', 'V', { tex: 'V_{sec}', domain: 'positive' }),
    reg: input('rise of the secondary without load', '%', { domain: 'fraction' }),
    Rs: input('resistance of transformer and leads seen from the bridge', 'Ω', {
      tex: 'R_s',
      domain: 'positive',
    }),
    C: input('bus capacitance', 'µF', { domain: 'positive' }),
    V_line: input('mains voltage', 'V', { tex: 'V_{line}', domain: 'positive' }),
    I_allowed: input('peak current allowed from the mains', 'A', { tex: 'I_{max}', domain: 'positive' }),
    S: input('rating of the transformer', 'VA', { domain: 'positive' }),
    k_mag: input('magnetising inrush as a multiple of the rated current', '1', {
      tex: 'k_{mag}',
      domain: 'positive',
      note: '10 to 15 for stacked cores, more for toroids (recalled; ask the maker).',
    }),
    Vd0: diodeDropLight,
    Vd: diodeDropLoaded,
    I_charge: formula(
      'peak current into the empty capacitor',
      'A',
      '(sqrt(2)*Vsec*(1 + reg) - 2*Vd) / Rs',
      WORST,
      {
        tex: 'I_{charge}',
        says: 'Only the resistance of transformer and leads holds it back. The bridge must stand it.',
      },
    ),
    V_no_load: formula('bus voltage once charged', 'V', 'sqrt(2)*Vsec*(1 + reg) - 2*Vd0', WORST, {
      tex: 'V_0',
      says: 'Peak of the unloaded secondary less two diodes.',
    }),
    E_cap: formula(
      'energy in the charged capacitor',
      'J',
      'C * V_no_load^2 / 2',
      'definition of the energy of a capacitor',
      {
        tex: 'E_C',
        says: 'About as much is turned into heat in the soft-start resistor each time.',
      },
    ),
    R_soft: formula('soft-start resistor in the mains, at least', 'Ω', 'sqrt(2)*V_line / I_allowed', WORST, {
      tex: 'R_{soft}',
      says: 'Peak of the mains divided by the current allowed.',
    }),
    R_seen: formula(
      'that resistor as the bus sees it',
      'Ω',
      'R_soft * (Vsec*(1 + reg)/V_line)^2',
      'derived: ratio of turns squared',
      {
        tex: "R'_{soft}",
        says: 'The transformer makes it look smaller.',
      },
    ),
    t_bypass: formula(
      'time before it may be bridged, at least',
      's',
      '5 * (R_seen + Rs) * C',
      'derived: five time constants; the bridge conducts only part of each cycle, so it takes longer',
      {
        tex: 't_{bypass}',
        says: 'Better: bridge it when the bus has passed 80 % of its voltage.',
      },
    ),
    I_mag: formula(
      'peak of the magnetising inrush',
      'A',
      'k_mag * sqrt(2) * S / V_line',
      'definition of the multiple',
      {
        tex: 'I_{mag}',
        says: 'Comes in the first half cycle, at its worst when switched on as the mains passes zero.',
      },
    ),
  },
});
