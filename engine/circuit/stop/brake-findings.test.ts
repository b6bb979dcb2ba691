import { describe, expect, test } from 'vitest';
import { analyseStop } from './analyse.ts';
import type { Offers } from './motion-numbers.ts';
import { PATTERNS } from './patterns/index.ts';

const make = (settings: Readonly<Record<string, string>>) =>
  PATTERNS.find(({ id }) => id === 'vertical-axis')!.make([
    { id: 'Z', kind: 'axis', name: 'head', settings: { vertical: 'yes', ...settings } },
  ]);
const brakeOf = (settings: Readonly<Record<string, string>>, offers: Offers = {}) => {
  const found = analyseStop(make(settings), offers);
  if (!found.ok) throw new Error(found.problem.message);
  return found.value.findings.find(({ id }) => id === 'stop.Z.brake')!;
};

describe('a brake that closes in time is judged by its strength too', () => {
  test.each([
    ['1.5 N·m', 'fits', /needs 1.5 N·m \(1.5 times the load\) with its reserve and has 1.5 N·m/],
    ['1.49 N·m', 'fails', /too little in hand/],
    ['0.9 N·m', 'fails', /too weak for its load/],
  ])('derived: %s over a load of 1 N·m, once and a half asked for: %s', (torque, verdict, says) => {
    const found = brakeOf({ weight: '1 N·m', 'brake-torque': torque });
    expect(found.verdict).toBe(verdict);
    expect(found.sentence).toMatch(says);
  });

  test('derived: what is asked for follows the policy of the refit; what is not known is said with what to do', () => {
    const typed = { weight: '1 N·m', 'brake-torque': '1.8 N·m' };
    expect(brakeOf(typed).verdict).toBe('fits');
    const strict = { Z: { 'brake-margin': { value: 2, from: 'the policy' } } };
    expect(brakeOf(typed, strict).verdict).toBe('fails');
    const open = brakeOf({ weight: '1 N·m' });
    expect(open.verdict).toBe('unknown');
    expect(open.sentence).toMatch(/torque of the brake.*type it into the stop circuit/);
  });
});
