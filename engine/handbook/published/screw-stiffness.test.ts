import { expect, test } from 'vitest';
import { axialResonance } from '../axial-resonance.ts';
import { nutStiffness } from '../nut-stiffness.ts';
import { screwStiffness } from '../screw-stiffness.ts';
import { thermalGrowth } from '../thermal-growth.ts';
import { holds, work } from './expect.ts';

holds(
  'derived',
  '17.5 mm core, one end or both ends fixed, with nut, bearing and housing',
  'springs in series, second calculation',
  {
    sheet: screwStiffness,
    given: {
      d1: '17.5 mm',
      x: '0.8 m',
      L: '1.1 m',
      a: '0.3 m',
      Ph: '40 mm',
      Kn: '250 N/µm',
      Kb: '180 N/µm',
      Kh: '700 N/µm',
    },
    expected: {
      Ks: '61.936008 N/µm',
      Ks_both: '227.098697 N/µm',
      Ks_min: '180.177479 N/µm',
      K: '36.859805 N/µm',
      K_tor: '22.520345 N/µm',
    },
  },
);

holds('derived', 'a nut at the load at which its stiffness is tabled has eight tenths of it', 'limit case', {
  sheet: nutStiffness,
  given: { Kcat: '500 N/µm', Ca: '10 kN', Fa: '3 kN', Fpr: '1 kN' },
  expected: { Kn: '400.00000 N/µm', Kn_pr: '400.00000 N/µm' },
});

holds('derived', 'an eighth of that load leaves half', 'cube root', {
  sheet: nutStiffness,
  given: { Kcat: '500 N/µm', Ca: '10 kN', Fa: '375 N', Fpr: '125 N' },
  expected: { Kn: '200.00000 N/µm', Kn_pr: '200.00000 N/µm' },
});

holds('derived', '80 kg on 36.859805 N/µm', 'one mass on a spring, second calculation', {
  sheet: axialResonance,
  given: { K: '36.859805 N/µm', m: '80 kg', m_s: '0 kg', k_Kv: '0.25' },
  expected: { f1: '108.03181 Hz', Kv_max: '169.69597 1/s' },
});

holds('derived', 'a third of the screw swings along', 'a 9 kg screw equals 3 kg more slide', {
  sheet: axialResonance,
  given: { K: '36.859805 N/µm', m: '77 kg', m_s: '9 kg', k_Kv: '0.25' },
  expected: { f1: '108.03181 Hz' },
});

holds(
  'derived',
  'a metre of steel, 5 K warmer',
  'coefficient of expansion 11.7 millionths per kelvin (from memory)',
  {
    sheet: thermalGrowth,
    given: { L: '1 m', dT: '5 K' },
    expected: { dL: '58.5000 µm' },
  },
);

holds('derived', 'stretching a 17.5 mm core of 1.1 m for 3 K', 'Hooke’s law, second calculation', {
  sheet: thermalGrowth,
  given: { L: '1.1 m', dT: '3 K', d1: '17.5 mm' },
  expected: { dL: '38.6100 µm', F_t: '1739.1631 N' },
});

test('derived: springs in series give way together as the sum of what each gives', () => {
  const r = work(screwStiffness, {
    d1: '17.5 mm',
    x: '0.8 m',
    L: '1.1 m',
    a: '0.55 m',
    Ph: '40 mm',
    Kn: '250 N/µm',
    Kb: '180 N/µm',
    Kh: '700 N/µm',
  });
  const rest = 1 / 250e6 + 1 / 180e6 + 1 / 700e6;
  expect(1 / r('K_both') / (1 / r('Ks_both') + rest)).toBeCloseTo(1, 12);
  // A nut at mid-length is where both ends fixed are softest.
  expect(r('K_both') / r('K_min')).toBeCloseTo(1, 12);
  expect(1 / r('K_twist') / (1 / r('K') + 1 / r('K_tor'))).toBeCloseTo(1, 12);
});
