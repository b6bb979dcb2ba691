/** Margins in words. */
import { expect, test } from 'vitest';
import { marginText } from './say-margin.ts';

test.each([
  [0.8412, '0.84'],
  [1, '1.00'],
  [1.00098, '1.00'],
  [0.9999, '0.9999'],
  [0.996, '0.996'],
  [1 - 1e-14, '1, less a trifle'],
  [1.2345, '1.23'],
  [9.996, '10'],
  [12.34, '12.3'],
  [236.4, '236'],
  [0.032, '0.032'],
  [0.00321, '0.0032'],
  [0, '0'],
] as const)('derived: %d is %s', (margin, text) => {
  expect(marginText(margin)).toBe(text);
});
