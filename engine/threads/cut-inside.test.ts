import { expect, test } from 'vitest';
import { cutOf } from './cuts.ts';

const torque = (side: string, more: Readonly<Record<string, string>> = {}): number => {
  const cut = cutOf('threading', { material: 'c45', thread: 'M20', side, speed: '200 r/min', ...more });
  if (!cut.ok) throw new Error(cut.problem.message);
  return cut.value.found.find(({ key }) => key === 'Mc')!.value;
};

test('derived: a nut asks less torque than a bolt, by its shallower groove and its smaller bite', () => {
  // Depths 5/8 H and 17/24 H; the chip's area goes with the depth squared, its edge with the depth, Kienzle's m is 0.14.
  const force = (5 / 8 / (17 / 24)) ** (2 - 0.14);
  const P = 2.5;
  const bore = 20 - 1.25 * (Math.sqrt(3) / 2) * P;
  const first = ((5 / 8) * (Math.sqrt(3) / 2) * P) / Math.sqrt(12);
  expect(torque('internal') / torque('external')).toBeCloseTo((force * (bore + 2 * first)) / 20, 4);
});

test('derived: at the same infeed both sides have the same force, and the arms of their torque differ', () => {
  const pass = { depth: '0.4 mm', infeed: '0.4 mm' };
  const bore = 20 - 1.25 * (Math.sqrt(3) / 2) * 2.5;
  expect(torque('internal', pass) / torque('external', pass)).toBeCloseTo((bore + 0.8) / 20, 4);
});

test.each(['both', '', 'ınternal', 'x'.repeat(5000)])(
  'a side that is none is refused by its word',
  (side) => {
    const cut = cutOf('threading', { material: 'c45', thread: 'M20', side, speed: '200 r/min' });
    expect(cut.ok).toBe(false);
    if (!cut.ok) expect(cut.problem.message).toMatch(/side: there is external \(bolt\) and internal \(nut\)/);
  },
);
