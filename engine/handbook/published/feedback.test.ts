import { expect, test } from 'vitest';
import { encoder } from '../encoder.ts';
import { indexCount } from '../index-count.ts';
import { lineDriver } from '../line-driver.ts';
import { quantisation } from '../quantisation.ts';
import { resolution } from '../resolution.ts';
import { resolverConverter } from '../resolver-converter.ts';
import { check, holds } from './expect.ts';

const COUNT = 'four edges to a line';

holds('derived', 'an encoder of 1000 lines at 2000 r/min on a 5 mm screw', COUNT, {
  sheet: encoder,
  given: { PPR: '1000 lines', ratio: '1', lead: '5 mm', n: '2000 r/min', phase_err: '0 °' },
  expected: {
    cpr: '4000 counts',
    f_ch: '33.3333333 kHz',
    f_edge: '133.333333 kHz',
    t_edge_min: '7.5 µs',
    counts_per_mm: '800 counts/mm',
    q: '1.25 µm',
  },
});

holds('derived', 'the same with 30° of phase error', COUNT, {
  sheet: encoder,
  given: { PPR: '1000 lines', n: '2000 r/min', phase_err: '30 °' },
  expected: { t_edge_min: '5.0 µs', f_poll: '200.0 kHz' },
});

holds('derived', '2500 lines, belt 2:1, inch screw of 5.08 mm', COUNT, {
  sheet: encoder,
  given: { PPR: '2500 lines', ratio: '2', lead: '5.08 mm', f_max: '500 kHz' },
  expected: { counts_per_mm: '3937.007874 counts/mm', q: '0.254 µm', n_max: '12000 r/min' },
});

holds('derived', '3997 counts where 4000 belong', 'one index pulse a turn', {
  sheet: indexCount,
  given: { N_rev: '3997 counts', PPR: '1000 lines', ratio: '1', lead: '5 mm' },
  expected: { dN: '-3 counts', error: '-0.00375 mm' },
});

const CURVE = 'TIA/EIA-422-B length against rate: end points published, between them the product of both';
const SQUARE = [
  ['10 m', '5000000 Hz'],
  ['30 m', '2000000 Hz'],
  ['100 m', '600000 Hz'],
] as const;

for (const [L, f] of SQUARE) {
  holds('published', `highest line rate on ${L} of twisted pair`, CURVE, {
    sheet: lineDriver,
    given: { L },
    expected: { f_square_max: f },
  });
}

test(`published: 100 kbit/s go 1200 m, 10 Mbit/s about 12 m (${CURVE})`, () => {
  check({ sheet: lineDriver, given: { f: '50 kHz' }, expected: { L_max: '1200 m' } });
  check({ sheet: lineDriver, given: { f: '5 MHz' }, expected: { L_max: '12 m' } });
  check({ sheet: lineDriver, given: { f: '5.1 MHz' }, expected: { L_max: '0 m' } });
  check({ sheet: lineDriver, given: { L: '1201 m' }, expected: { f_square_max: '0 Hz' } });
});

const CHARGE = 'charging a cable through a resistor';

holds('derived', '1 kΩ on 5 m of cable', CHARGE, {
  sheet: lineDriver,
  given: { R: '1 kΩ', C_m: '100 pF/m', L: '5 m' },
  expected: { t_r: '1.1 µs', f_rc: '90909.091 Hz' },
});

holds('derived', '470 Ω on the same', CHARGE, {
  sheet: lineDriver,
  given: { R: '470 Ω', C_m: '100 pF/m', L: '5 m' },
  expected: { t_r: '0.517 µs' },
});

holds('published', 'an encoder at the end of 10 m of 0.14 mm²', 'IEC 60028, 58 m/(Ω·mm²)', {
  sheet: lineDriver,
  given: { L: '10 m', A: '0.14 mm²', I: '150 mA', V_sup: '5 V', V_enc_min: '4.75 V' },
  expected: {
    R_loop: '2.4630542 Ω',
    dV: '0.36945813 V',
    V_enc: '4.6305419 V',
    A_min: '0.2068966 mm²',
  },
});

holds('derived', 'one count a cycle as speed', 'error spread evenly over one count', {
  sheet: quantisation,
  given: { q: '1.25 µm', Ts: '1 ms', v: '100 mm/min' },
  expected: { dv: '1.25 mm/s', sd: '0.51031036 mm/s', share: '75.0 %' },
});

holds('derived', '1.25 µm against a tolerance of 12.5 µm', 'ten steps inside the tolerance; policy', {
  sheet: resolution,
  given: { res: '1.25 µm', tol: '12.5 µm', k_dia: '1' },
  expected: { ratio: '10.0', u: '0.36084392 µm' },
});

holds('derived', 'the same on a diameter', 'a diameter shows each step twice', {
  sheet: resolution,
  given: { res: '1.25 µm', tol: '12.5 µm', k_dia: '2' },
  expected: { ratio: '5.00', res_part: '2.50 µm' },
});

holds('derived', 'a resolver behind 12 bits', 'definition of a binary converter', {
  sheet: resolverConverter,
  given: { n_bits: '12', p: '1', ecc: '0.02 mm', r_code: '20 mm' },
  expected: { res: '5.2734375 arcmin', counts: '4096 counts', err_ecc: '0.001 rad' },
});

test('derived: the shortest edge time at the phase error of a quarter line is nothing (limit case)', () => {
  const at = check({
    sheet: encoder,
    given: { PPR: '1000 lines', n: '2000 r/min', phase_err: '90 °' },
    expected: {},
  });
  expect(at('t_edge_min')).toBeCloseTo(0, 15);
});
