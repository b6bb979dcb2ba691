import { constant, defineSheet, formula, input } from '../sheet/index.ts';
import { copperConductivity } from './electrical-constants.ts';

/** A circuit breaker against what is switched on behind it, and against a short circuit at the far end. */
export const breaker = defineSheet({
  id: 'breaker',
  title: 'Circuit breaker',
  about:
    'A breaker must let pass what happens when things are switched on, and must go at once in a short circuit at the far end of the wire. A more patient one needs a better mains to be quick enough: that is for an electrician to measure.',
  symbols: {
    I_n: input('rated current', 'A', { tex: 'I_n', domain: 'positive' }),
    m_never: input('multiple at which it never trips at once', '1', {
      tex: 'm_{min}',
      domain: 'positive',
      note: '3 for B, 5 for C, 10 for D (IEC 60898-1).',
    }),
    m_surely: input('multiple at which it surely trips at once', '1', {
      tex: 'm_{max}',
      domain: 'positive',
      note: '5 for B, 10 for C, 20 for D (IEC 60898-1).',
    }),
    I_inrush: input('peak of the current at switching on', 'A', { tex: 'I_{in}', domain: 'positive' }),
    U0: input('voltage against earth', 'V', { tex: 'U_0', domain: 'positive' }),
    A: input('area of the wire’s copper', 'mm²', { domain: 'positive' }),
    rise: constant(
      'rise of copper’s resistance per kelvin at 20 °C',
      '1/K',
      '0.00393 1/K',
      'IEC 60028 (1925)',
      {
        tex: '\\alpha_{20}',
      },
    ),
    hot: constant(
      'how much warmer the copper is in a fault',
      'K',
      '50 K',
      'common practice: 70 °C against 20 °C',
    ),
    left: constant('share of the voltage left at the breaker', '1', '0.8', 'common practice, no source', {
      tex: 'c',
    }),
    gamma: copperConductivity,
    I_stays: formula('highest peak it lets pass', 'A', 'm_never*sqrt(2)*I_n', 'IEC 60898-1', {
      tex: '\\hat I_{stays}',
      says: 'Multiples are of the effective value; the peak is 1.414 times as high.',
    }),
    m: formula('what it lets pass over what comes', '1', 'I_stays/I_inrush', 'definition of a margin', {
      says: 'Below one it may trip when the machine is switched on.',
    }),
    Z_s: formula(
      'highest resistance of the fault’s whole way',
      'Ω',
      'U0/(m_surely*I_n)',
      'IEC 60364-4-41, 411.4.4',
      {
        tex: 'Z_s',
        says: 'An electrician measures it.',
      },
    ),
    l_max: formula(
      'longest wire that still trips it',
      'm',
      'left*U0*A*gamma / (2*(1 + rise*hot)*m_surely*I_n)',
      'common practice: conventional method, protective conductor of the same area',
      { tex: 'l_{max}', says: 'With a good mains; a weak one shortens it.' },
    ),
  },
});
