import { describe, expect, test } from 'vitest';
import {
  convert,
  describeDimension,
  dimension,
  divide,
  equal,
  formatNumber,
  formatQuantity,
  isBasis,
  multiply,
  plain,
  power,
  sameDimension,
  standardUncertainty,
  toSI,
  unitOf,
  weakest,
} from './index.ts';

describe('derived: numbers for reading', () => {
  test.each([
    [0, '0'],
    [-0, '0'],
    [2666.6667, '2667'],
    [16384, '16384'],
    [12345.6, '12346'],
    [0.000847386218, '0.0008474'],
    [1.5, '1.5'],
    [-1.5, '-1.5'],
    [9.9999, '10'],
    [99999.5, '100000'],
    [0.1 + 0.2, '0.3'],
    [1.234e-7, '1.234 × 10⁻⁷'],
    [2.06e11, '2.06 × 10¹¹'],
    [Number.NaN, 'no finite value'],
    [Number.POSITIVE_INFINITY, 'no finite value'],
  ])('%d is %s', (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });

  test.each([
    [100 * Math.PI * (2666.6667 / 3000), 'r/min', undefined, '2667 r/min'],
    [1.32, 'ohm', 0.06, '1.32 ± 0.06 Ω'],
    [1.3249, 'ohm', 0.06, '1.32 ± 0.06 Ω'],
    [1.3249, 'ohm', 0.14, '1.32 ± 0.14 Ω'],
    [1.3249, 'ohm', 0.2, '1.3 ± 0.2 Ω'],
    [1.3249, 'ohm', 20, '0 ± 20 Ω'],
    [230, 'V', 34.5, '230 ± 35 V'],
    [1250, 'V', 300, '1300 ± 300 V'],
    [0.9, '1', 0.045, '0.900 ± 0.045'],
    [293.15, '°C', 2, '20 ± 2 °C'],
    [293.15, '°F', 1, '68.0 ± 1.8 °F'],
    [2.06e11, 'Pa', 5e9, '(2.06 ± 0.05) × 10¹¹ Pa'],
    [2.06e11, 'GPa', 5e9, '206 ± 5 GPa'],
    [0.005, 'mm', 1e-30, '5 mm'],
    [5, 'm', 0, '5 m'],
  ])('%d in %s with doubt %s', (value, unit, half, text) => {
    expect(formatQuantity(value, unit, { half })).toBe(text);
  });

  test('an unknown unit is a slip in the program', () => {
    expect(() => formatQuantity(1, 'florps')).toThrow(RangeError);
  });

  test('converting there and back', () => {
    for (const unit of ['mm', '°F', 'V/krpm', 'oz-in-s²', 'kgf·m² GD²'])
      expect(convert(toSI(1.7, unit), unit)).toBeCloseTo(1.7, 12);
  });
});

describe('derived: basis', () => {
  test('the weakest stands last in the list of bases', () => {
    expect(weakest('measured', 'told', 'plate')).toBe('told');
    expect(weakest('measured')).toBe('measured');
    expect(isBasis('plate')).toBe(true);
    expect(isBasis('toString')).toBe(false);
    expect(isBasis(3)).toBe(false);
  });

  test('a limit is a rectangle: its standard deviation, summed numerically, is half/√3', () => {
    const n = 20001;
    let sum = 0;
    for (let i = 0; i < n; i++) sum += ((2 * i) / (n - 1) - 1) ** 2;
    expect(standardUncertainty({ half: 3 }, 'datasheet')).toBeCloseTo(3 * Math.sqrt(sum / n), 3);
    expect(standardUncertainty({ half: 3 }, 'measured')).toBe(1.5);
  });
});

describe('derived: dimensions', () => {
  const d = (text: string) => unitOf(text).dimension;

  test('arithmetic carries tallies', () => {
    expect(equal(multiply(d('N'), d('m')), d('J'))).toBe(true);
    expect(equal(divide(d('V'), d('r/min')), d('V/krpm'))).toBe(true);
    expect(equal(divide(d('lines'), d('rev')), d('lines/rev'))).toBe(true);
    expect(equal(multiply(d('lines/rev'), d('rev')), d('lines'))).toBe(true);
    expect(equal(power(d('m'), 2), d('mm²'))).toBe(true);
    expect(equal(power(power(d('kg'), 1 / 3), 3), d('kg'))).toBe(true);
    expect(equal(plain(d('V/krpm')), d('N·m/A'))).toBe(true);
    expect(equal(d('V/krpm'), d('N·m/A'))).toBe(false);
    expect(sameDimension(d('V/krpm'), d('N·m/A'), true)).toBe(true);
    expect(sameDimension(d('Hz'), d('r/min'))).toBe(false);
    expect(equal(divide(d('counts'), d('lines')), dimension({}))).toBe(true);
  });

  test.each([
    ['N·m', 'a torque or an energy'],
    ['kg·m²', 'an inertia'],
    ['V/krpm', 'a voltage per turning speed'],
    ['lines/rev', 'a number of lines per turn'],
    ['counts/mm', 'a number of counts per length'],
    ['steps/s', 'a number of steps per time'],
    ['mm/step', 'a length divided by steps'],
    ['kg²·m', 'a quantity in kg^2·m'],
    ['K/m²', 'a quantity in K/m^2'],
    ['1', 'a plain number'],
  ])('%s is %s', (unit, words) => {
    expect(describeDimension(d(unit))).toBe(words);
  });
});
