import { defineSheet, formula, input } from '../sheet/index.ts';

const ODE = 'derived: J dω/dt = −(T_c + b ω), solved in closed form';
const TWO = 'derived: same friction, two inertias';

/** Inertia from the time a spun shaft takes to stop. */
export const benchCoastDown = defineSheet({
  id: 'bench-coast-down',
  title: 'Inertia from a coast-down',
  about:
    'What spins stops by its friction, the later the heavier it is. With the friction known, or with a disc of known weight added for a second run, the time tells the inertia.',
  symbols: {
    w0: input('speed at the beginning', 'r/min', { tex: '\\omega_0', domain: 'positive' }),
    w1: input('speed at the end of the timing', 'r/min', {
      tex: '\\omega_1',
      domain: 'not negative',
      note: '0 when timed to a stop.',
    }),
    t: input('time between the two', 's', { domain: 'positive' }),
    Tc: input('steady friction', 'N·m', { tex: 'T_c', domain: 'positive' }),
    b: input('friction that grows with speed', 'N·m·s/rad', { domain: 'positive' }),
    J_known: input('inertia, where it is known', 'kg·m²', { tex: 'J_{known}', domain: 'positive' }),
    m: input('mass of the disc', 'kg', { domain: 'positive' }),
    r: input('radius of the disc', 'mm', { domain: 'positive' }),
    J_a: input('inertia added', 'kg·m²', { tex: 'J_a', domain: 'positive' }),
    t1: input('time without the disc', 's', { tex: 't_1', domain: 'positive' }),
    t2: input('time with the disc, over the same speeds', 's', { tex: 't_2', domain: 'positive' }),
    a1: input('slowing without the disc', 'rad/s²', { tex: 'a_1', domain: 'positive' }),
    a2: input('slowing with the disc, at the same speed', 'rad/s²', { tex: 'a_2', domain: 'positive' }),
    J: formula('inertia', 'kg·m²', 'b*t / ln((Tc + b*w0) / (Tc + b*w1))', ODE, {
      domain: 'positive',
      says: 'Both kinds of friction known.',
    }),
    J_steady: formula('inertia, steady friction alone', 'kg·m²', 'Tc*t / (w0 - w1)', ODE, {
      tex: 'J_{steady}',
      domain: 'positive',
      says: 'Where nothing grows with speed the shaft slows evenly.',
    }),
    t_stop: formula('time to a stop', 's', 'J_known/b * ln(1 + b*w0/Tc)', ODE, {
      tex: 't_{stop}',
      says: 'How long it should take.',
    }),
    theta: formula('angle turned until it stops', 'rev', 'J_known/b * (w0 - Tc/b*ln(1 + b*w0/Tc))', ODE, {
      tex: '\\theta',
      says: 'How far it should turn.',
    }),
    J_disc: formula('inertia of a plain disc', 'kg·m²', 'm*r^2/2', 'derived: uniform disc', {
      tex: 'J_{disc}',
      says: 'Mass times half the radius squared.',
    }),
    J_times: formula('inertia from two times', 'kg·m²', 'J_a*t1 / (t2 - t1)', TWO, {
      tex: 'J_{times}',
      domain: 'positive',
      says: 'The disc makes it coast longer in proportion; the friction falls out.',
    }),
    J_slows: formula('inertia from two rates of slowing', 'kg·m²', 'J_a*a2 / (a1 - a2)', TWO, {
      tex: 'J_{slows}',
      domain: 'positive',
      says: 'The same from rates instead of times.',
    }),
  },
});
