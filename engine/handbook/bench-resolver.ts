import { defineSheet, formula, input } from '../sheet/index.ts';

const FORMAT = 'Analog Devices AD2S1205 data sheet: resolver format';

/** Ratio and angle of a resolver fed with a sine. */
export const benchResolver = defineSheet({
  id: 'bench-resolver',
  title: 'Ratio and angle of a resolver',
  about:
    'A resolver is a turning transformer. The two output voltages together stay the same whatever the angle; their ratio is the angle.',
  symbols: {
    Ve: input('excitation', 'V', { tex: 'V_e', domain: 'positive' }),
    Vs: input('sine winding, negative when against the excitation', 'V', { tex: 'V_s' }),
    Vc: input('cosine winding, negative when against the excitation', 'V', { tex: 'V_c' }),
    delta: input('how unlike the two amplitudes are', '%', { tex: '\\delta', domain: 'not negative' }),
    TR: formula('transformation ratio', '1', 'sqrt(Vs^2 + Vc^2)/Ve', FORMAT, {
      says: 'Should not change as the shaft turns.',
    }),
    theta: formula('angle', '°', 'atan2(Vs, Vc)', FORMAT, {
      tex: '\\theta',
      says: 'Where the shaft stands.',
    }),
    error: formula(
      'largest error of the angle by unlike amplitudes',
      '°',
      'delta/2',
      'derived: δ/2 · sin 2θ at its top',
      { says: 'Twice in each turn one way, twice the other.' },
    ),
  },
});
