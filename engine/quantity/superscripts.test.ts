import { expect, test } from 'vitest';
import { parseQuantity } from './index.ts';
import { raisePowers } from './superscripts.ts';

test.each([
  ['1.0e-4 kg·m^2', '1.0e-4 kg·m²'],
  ['1.5 m/s^2', '1.5 m/s²'],
  ['3 m·s^-2', '3 m·s⁻²'],
  ['10^3 ohm', '10^3 ohm'],
  ['2 m^0.5', '2 m^0.5'],
  ['m^123', 'm^123'],
  ['', ''],
])('derived: %s is shown as %s', (typed, shown) => {
  expect(raisePowers(typed)).toBe(shown);
});

test('derived: what is shown still reads as what was typed', () => {
  for (const typed of ['1.0e-4 kg·m^2', '1.5 m/s^2']) {
    const [one, other] = [parseQuantity(typed), parseQuantity(raisePowers(typed))];
    expect(one.ok && other.ok && one.value.value === other.value.value).toBe(true);
  }
});
