import { constant, defineSheet, formula, input } from '../sheet/index.ts';
import { copperConductivity } from './electrical-constants.ts';

const ADIABATIC = 'derived: all heat stays in the copper';

/** Copper heating before any heat has had time to escape. */
export const copperHeating = defineSheet({
  id: 'copper-heating',
  title: 'How fast copper heats',
  about:
    'For the first seconds no heat escapes from a winding, and its temperature rises with the square of the current density. This is why a locked motor burns before its housing is warm.',
  symbols: {
    J_cu: input('current density in the wire', 'A/mm²', {
      tex: 'J',
      domain: 'not negative',
      note: 'Current divided by the copper cross-section.',
    }),
    t: input('time', 's', { domain: 'not negative' }),
    gamma: copperConductivity,
    c: constant(
      'heat capacity of a volume of copper',
      'J/(m³·K)',
      '3449600 J/(m³·K)',
      '8960 kg/m³ times 385 J/(kg·K), from memory',
    ),
    rate: formula('rate of heating', 'K/s', 'J_cu^2 / (gamma * c)', ADIABATIC, {
      tex: '\\dot T',
      says: 'Heat made in each bit of copper, divided by the heat it takes to warm it by one kelvin.',
    }),
    dT: formula('rise after that time', 'K', 'rate * t', ADIABATIC, {
      tex: '\\Delta T',
      says: 'Rate times time; in truth a little more, since the resistance grows.',
    }),
  },
});
