import { expect, test } from 'vitest';
import { PREFERRED_INCH, preferred } from './prefer.ts';
import { parseUnit } from './unit.ts';

test('derived: every inch unit measures the same dimension as the metric one it stands for', () => {
  for (const [metric, inch] of Object.entries(PREFERRED_INCH)) {
    const [a, b] = [parseUnit(metric), parseUnit(inch)];
    if (!a.ok || !b.ok) throw new Error(`${metric} or ${inch} is no unit`);
    expect(b.value.dimension, `${metric} → ${inch}`).toEqual(a.value.dimension);
  }
});

test('only a choice of inches changes a unit, and only one that has an inch form', () => {
  expect(preferred('mm', 'mm')).toBe('mm');
  expect(preferred('mm', 'in')).toBe('in');
  expect(preferred('N·m', 'in')).toBe('N·m');
});
