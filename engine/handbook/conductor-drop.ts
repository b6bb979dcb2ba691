import { constant, defineSheet, formula, input } from '../sheet/index.ts';
import { copperConductivity } from './electrical-constants.ts';

const OHM = 'Ohm’s law, there and back';

/** Volts lost along a wire. */
export const conductorDrop = defineSheet({
  id: 'conductor-drop',
  title: 'Volts lost along a wire',
  about:
    'Every metre of copper costs some volts, on the way there and again on the way back. The control standard allows five parts in a hundred from the supply to the load.',
  symbols: {
    l: input('length of the wire, one way', 'm', { domain: 'positive' }),
    A: input('area of its copper', 'mm²', { domain: 'positive' }),
    I: input('current', 'A', { domain: 'not negative' }),
    t: input('temperature of the copper', '°C', { note: '70 °C fully loaded.' }),
    extra: input('resistance over that of solid copper of the same area', '1', {
      tex: 'k_s',
      domain: 'positive',
      note: '1.10 to 1.16 for flexible wire (IEC 60228, class 5).',
    }),
    V: input('voltage it is fed with', 'V', { domain: 'positive' }),
    pf: input('power factor', '1', { tex: '\\cos\\varphi', domain: 'fraction' }),
    gamma: copperConductivity,
    rise: constant(
      'rise of copper’s resistance per kelvin at 20 °C',
      '1/K',
      '0.00393 1/K',
      'IEC 60028 (1925)',
      {
        tex: '\\alpha_{20}',
      },
    ),
    t20: constant('temperature those hold for', '°C', '20 °C', 'IEC 60028 (1925)', { tex: 't_{20}' }),
    R: formula(
      'resistance of the wire, one way',
      'Ω',
      'extra * l/(gamma*A) * (1 + rise*(t - t20))',
      'IEC 60028 (1925)',
      {
        says: 'Longer and thinner resists more, and warm copper more than cold.',
      },
    ),
    dV: formula('volts lost, d.c. or one phase', 'V', '2*R*I', OHM, {
      tex: '\\Delta V',
      says: 'Twice, since the current comes back.',
    }),
    share: formula('share lost, d.c. or one phase', '%', 'dV/V', 'definition of a share', {
      tex: '\\Delta V/V',
      says: 'Of the volts it is fed with.',
    }),
    dV_three: formula(
      'volts lost, three phases',
      'V',
      'sqrt(3)*R*I*pf',
      'phasor sum of balanced lines, reactance left out',
      {
        tex: '\\Delta V_3',
        says: 'Between lines; below 16 mm² the reactance is next to nothing.',
      },
    ),
    P: formula('heat in both wires', 'W', '2*R*I^2', 'Joule’s law', {
      says: 'Heat in wires and cabinet.',
    }),
  },
});
