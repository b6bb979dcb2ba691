import { defineSheet, formula, input } from '../sheet/index.ts';

const OHM = 'derived: Ohm’s law';

/** Winding resistance and brush drop on the bench. */
export const benchResistance = defineSheet({
  id: 'bench-resistance',
  title: 'Winding resistance from volts and amperes',
  about:
    'A meter on ohms reads the film under the brushes; some amperes through the winding read the copper. Two currents at one place tell the drop of the brushes apart from it.',
  symbols: {
    V: input('voltage at the motor’s terminals', 'V', { domain: 'positive' }),
    I: input('current', 'A', { domain: 'positive' }),
    R_read: input('resistance as an ohm meter shows it', 'Ω', { tex: 'R_{read}', domain: 'positive' }),
    R_probe: input('resistance of the probes touched together', 'Ω', {
      tex: 'R_{probe}',
      domain: 'not negative',
    }),
    V1: input('voltage at the small current', 'V', { tex: 'V_1', domain: 'positive' }),
    I1: input('small current', 'A', { tex: 'I_1', domain: 'positive' }),
    V2: input('voltage at the large current', 'V', { tex: 'V_2', domain: 'positive' }),
    I2: input('large current', 'A', { tex: 'I_2', domain: 'positive' }),
    R_most: input('largest resistance of all places', 'Ω', { tex: 'R_{most}', domain: 'positive' }),
    R_least: input('smallest resistance of all places', 'Ω', { tex: 'R_{least}', domain: 'positive' }),
    R_mean: input('mean resistance of all places', 'Ω', { tex: 'R_{mean}', domain: 'positive' }),
    R: formula('resistance', 'Ω', 'V/I - R_probe', OHM, {
      domain: 'positive',
      says: 'Volts for each ampere, less the leads that are not the motor’s.',
    }),
    R_m: formula('resistance less probes', 'Ω', 'R_read - R_probe', OHM, {
      tex: 'R_m',
      domain: 'positive',
      says: 'What the meter shows less what it shows with its probes touched together.',
    }),
    R12: formula('resistance without brushes', 'Ω', '(V2 - V1) / (I2 - I1)', OHM, {
      tex: 'R_{12}',
      domain: 'positive',
      says: 'The brushes drop nearly the same at both currents, so that they fall out of the difference.',
    }),
    Vbr: formula('voltage lost in the brushes', 'V', 'V1 - I1*R12', OHM, {
      tex: 'V_{br}',
      says: 'What is left when the copper’s share is taken off.',
    }),
    spread: formula('spread over the places', '%', '(R_most - R_least) / R_mean', 'definition', {
      says: 'How unlike the places of the commutator are.',
    }),
  },
});
