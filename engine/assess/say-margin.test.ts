/** Margins in words. */
import { expect, test } from 'vitest';
import { marginText } from './say-margin.ts';

test.each([
  [0.8412, undefined, '0.841'],
  [1, undefined, '1'],
  [0.9999, undefined, '0.9999'],
  [1.2345, [1.19, 1.28], '1.23'],
  [1.2345, [0.8, 1.7], '1.2'],
  [0.97, [0.6, 1.4], '0.97'],
  [12.34, [8, 17], '12'],
  [3.6, [0.2, 40], '4'],
] as const)('%d within %s is %s', (margin, range, text) => {
  expect(marginText(margin, range)).toBe(text);
});
