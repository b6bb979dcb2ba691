import { defineSheet, formula, input } from '../sheet/index.ts';

const EVEN = 'derived: nothing happens for a while, then the spindle slows evenly';

/** The delay of a spindle drive from stops at several speeds. */
export const benchSpindleStop = defineSheet({
  id: 'bench-spindle-stop',
  title: 'Delay of a spindle drive from stops at several speeds',
  about:
    'From an order to stop until the spindle stands there pass first a delay, the same at every speed, and then the slowing, which takes the longer the faster it turned. Over the speed the times lie on a line; where it meets no speed at all only the delay is left.',
  symbols: {
    N: input('pictures from the order to where it stands', '1', { domain: 'positive' }),
    f: input('pictures a second', 'Hz', { domain: 'positive' }),
    t_0: input('time of a stop from no speed, by the line', 'ms'),
    t_lamp: input('how late the lamp shows the order', 'ms', { tex: 't_{lamp}', domain: 'not negative' }),
    s: input('time more for more speed', 's²/rad', { domain: 'positive' }),
    n: input('speed of the spindle', 'r/min', { domain: 'positive' }),
    n1: input('speed of the first stop', 'r/min', { tex: 'n_1', domain: 'positive' }),
    n2: input('speed of the second stop', 'r/min', { tex: 'n_2', domain: 'positive' }),
    t1: input('time of the first stop', 's', { tex: 't_1', domain: 'positive' }),
    t2: input('time of the second stop', 's', { tex: 't_2', domain: 'positive' }),
    t: formula('time of a stop', 's', 'N / f', 'definition', { says: 'Pictures over pictures a second.' }),
    t_d: formula('time from the order until it acts', 'ms', 't_0 + t_lamp', EVEN, {
      says: 'What is left at no speed, and what the lamp came late.',
    }),
    a: formula('slowing', 'rad/s²', '1 / s', EVEN, { says: 'Speed lost in a second.' }),
    t_two: formula('time left at no speed, from two stops', 'ms', '(n2*t1 - n1*t2) / (n2 - n1)', EVEN, {
      tex: 't_{two}',
      says: 'The line through two stops, followed down to no speed.',
    }),
    turned: formula('turns within the delay', 'rev', 'n * (t_0 + t_lamp)', 'definition', {
      tex: '\\theta_d',
      says: 'How far it goes on as if nothing had been said.',
    }),
  },
});
