import { expect, test } from 'vitest';
import { sayDay, sayTime } from './day.ts';

test('derived: a day has its month by name, a time its day', () => {
  expect(sayDay('2026-11-25T12:00:00')).toBe('25 Nov 2026');
  expect(sayTime('2026-09-05T09:03:00')).toBe('5 Sep 2026, 09:03');
});

test('derived: what is no date stays as it came', () => {
  expect(sayDay('yesterday')).toBe('yesterday');
  expect(sayTime('')).toBe('');
});
