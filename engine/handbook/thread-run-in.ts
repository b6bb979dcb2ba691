import { defineSheet, formula, input } from '../sheet/index.ts';

const lag = 'derivation: position loop as a first-order lag, spindle at steady speed';

export const threadRunIn = defineSheet({
  id: 'thread-run-in',
  title: 'Run-in before a thread',
  about:
    'The slide starts from rest while the spindle already turns, so the first stretch has a wrong lead. Begin that far before the work. The slide then trails by a constant distance that depends on speed: never change the spindle speed between roughing and finishing passes.',
  symbols: {
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    Kv: input('gain of the position loop', '1/s', {
      domain: 'positive',
      tex: 'K_v',
      note: 'Speed over trailing distance. 1 m/min for 1 mm is 16.7 1/s; old machines have 15 to 40 1/s.',
    }),
    a: input('acceleration', 'm/s²', { domain: 'positive' }),
    e: input('lead error allowed', '%', { domain: 'fraction', note: '1 % for fits, 0.1 % for gauges.' }),
    V: formula('speed of the slide', 'mm/min', 'Ph * n / (2 * pi)', 'definition of lead'),
    tau: formula('time by which the slide trails', 'ms', '1 / Kv', lag, { tex: '\\tau' }),
    t_step: formula('time to settle, speed asked at once', 's', 'tau * ln(1 / e)', lag, {
      tex: 't_\\mathrm{step}',
    }),
    L_step: formula('run-in, speed asked at once', 'mm', 'V * tau * (ln(1 / e) - 1 + e)', lag, {
      tex: 'L_\\mathrm{step}',
    }),
    ta: formula('time to gain speed', 's', 'V / a', 'derivation: kinematics', { tex: 't_a' }),
    r: formula('lead error when full speed is first asked', '1', 'a * tau * (1 - exp(-ta / tau)) / V', lag),
    e_s: formula('lead error at the end of the run-in', '1', 'min(e, r)', lag, { tex: 'e_s' }),
    t_s: formula('time to settle', 's', 'ta + tau * ln(r / e_s)', lag, { tex: 't_s' }),
    L_in: formula('run-in needed', 'mm', 'V * t_s - V * ta / 2 - tau * V * (1 - e_s)', lag, {
      tex: 'L_\\mathrm{in}',
      says: 'Start the tool at least this far before the thread.',
    }),
    x_lag: formula('constant trailing distance', 'mm', 'V * tau', lag, { tex: 'x_\\mathrm{lag}' }),
    L_out: formula('run-out needed', 'mm', 'V * tau + V^2 / (2 * a)', lag, {
      tex: 'L_\\mathrm{out}',
      says: 'Relief groove or free length behind the thread.',
    }),
    d_n: formula('shift of the groove per 1 % change of spindle speed', 'µm', '0.01 * V * tau', lag, {
      tex: '\\Delta z',
    }),
  },
});
