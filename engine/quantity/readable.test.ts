/** One rule of figures for findings. */
import { describe, expect, test } from 'vitest';
import { formatQuantity, readable, unitToRead } from './index.ts';

describe('derived: rounded to the doubt, to four figures at most, without one to three', () => {
  test.each([
    [13155, 'kN', 6.4, '13.16 ± 0.01 kN'],
    [13155, 'kN', 640, '13.16 ± 0.64 kN'],
    [13155, 'kN', 640 * 3, '13 ± 2 kN'],
    [13155, 'kN', undefined, '13.2 kN'],
    [0.08824, 'W', undefined, '0.0882 W'],
    [0.0008824, 'W', undefined, '882 µW'],
    [94.904, 'V', 1.8, '94.9 ± 1.8 V'],
    [94.904, 'V', 0.0001, '94.90 ± 0.01 V'],
    [1.86e3, '1', undefined, '1860'],
    [16384, 'counts', undefined, '16384 counts'],
    [2.06e11, 'Pa', 5e9, '206 ± 5 GPa'],
    [0.0000034, 'm', undefined, '3.4 µm'],
    [0.0000034, 'mm', 0.0000002, '3.4 ± 0.2 µm'],
    [1234567, 'Ω', undefined, '1.23 MΩ'],
    [0, 'V', undefined, '0 V'],
    [0, 'V', 0.1, '0.0 ± 0.1 V'],
    [-0.0034, 'A', undefined, '-3.4 mA'],
  ])('%d in %s with %s', (value, unit, half, text) => {
    expect(readable(value, unit, half === undefined ? {} : { half })).toBe(text);
  });

  test('published: JCGM 100:2008, 7.2.6: 10.047 62 Ω with 27 mΩ is 10.048 Ω', () => {
    // The example rounds to the doubt; four figures at most would leave 10.05, so the keeping form is asked.
    expect(formatQuantity(10.04762, 'Ω', { half: 0.027 })).toBe('10.048 ± 0.027 Ω');
    expect(readable(10.04762, 'Ω', { half: 0.027 })).toBe('10.05 ± 0.03 Ω');
  });
});

test('derived: no power of ten between a thousandth and a million, in any unit that findings are read in', () => {
  for (const unit of ['V', 'A', 'W', 'N·m', 'mm', 's', 'r/min', 'kN', '1', 'Hz', 'J', '%', 'h', 'kg·m²'])
    for (let power = -3; power < 6; power++)
      for (const digits of [1.0001, 4.567, 9.9996]) {
        const text = formatQuantity(digits * 10 ** power, '1', { digits: 3 });
        expect(text).not.toMatch(/10[⁻⁰-⁹]|e/);
        expect(readable(digits * 10 ** power, unit)).not.toMatch(/\de[+-]/);
      }
});

test('derived: the unit changes only where a power of ten would be needed, and keeps the value', () => {
  expect(unitToRead(0.05e-3, 'mm')).toBe('mm');
  expect(unitToRead(0.005e-3, 'mm')).toBe('µm');
  expect(unitToRead(99_999, 'W')).toBe('W');
  expect(unitToRead(100_000, 'W')).toBe('kW');
  expect(unitToRead(1e30, 'W')).toBe('MW');
  expect(unitToRead(1e-30, 'V')).toBe('µV');
  expect(unitToRead(1e-9, 'r/min')).toBe('r/min');
  expect(unitToRead(Number.NaN, 'V')).toBe('V');
  expect(readable(Number.NaN, 'V')).toBe('no finite value');
});
