import { describe, expect, test } from 'vitest';
import { diodeOf, type Element, nearPoint, operatingPoint, type Point } from './index.ts';

const R = (id: string, a: string, b: string, ohms: number): Element => ({ kind: 'resistor', id, a, b, ohms });
const V = (id: string, plus: string, minus: string, volts: number, ohms: number): Element => ({
  kind: 'voltage',
  id,
  plus,
  minus,
  volts,
  ohms,
});
const led = (k: number) => diodeOf(`D${k}`, `m${k}`, '0', { volts: 1.2, amps: 5e-3, emission: 2 });
/** Cells with a resistor, an LED and a load each, on one supply. */
const cells: readonly Element[] = [
  V('G', 'p', '0', 24, 0.02),
  ...[0, 1, 2, 3, 4].flatMap((k) => [
    R(`r${k}`, 'p', `a${k}`, 2200),
    R(`s${k}`, `a${k}`, `m${k}`, 100),
    led(k),
    R(`l${k}`, `a${k}`, '0', 1e5),
  ]),
];
const solved = (elements: readonly Element[]): Point => {
  const answer = operatingPoint({ elements, references: ['0'] });
  if (!answer.ok) throw new Error(answer.trouble.sentence);
  return answer.point;
};

describe('a steady state with a few elements changed', () => {
  const base = solved(cells);
  test.each([
    ['an LED shorted out', [R('on', 'a2', '0', 1)], []],
    ['a source put in', [V('drives', 'a1', '0', 5, 50)], []],
    ['a source for another', [V('G', 'p', '0', 21.6, 0.02)], [cells[0]!]],
    ['the other way round', [V('G', 'p', '0', -24, 0.02)], [cells[0]!]],
    ['a load taken out', [], [cells.find(({ id }) => id === 'l3')!]],
  ] as const)('derived: %s: as solved from the start', (_, added, removed) => {
    const near = nearPoint(base, added, removed)!;
    const gone = new Set<Element>(removed);
    const whole = solved([...cells.filter((e) => !gone.has(e)), ...added]);
    for (const node of base.pieces[0]!.nodes) expect(near.volts(node)).toBeCloseTo(whole.volts(node)!, 8);
  });
  test('derived: what joins or parts pieces is not answered from nearby', () => {
    expect(nearPoint(base, [R('new', 'a1', 'elsewhere', 1)], [])).toBeUndefined();
    const parted = cells.filter(({ id }) => id === 'r0' || id === 'l0' || id === 'D0');
    expect(nearPoint(base, [], parted)).toBeUndefined();
    expect(nearPoint(base, [V('ideal', 'a1', '0', 5, 0)], [])).toBeUndefined();
  });
});
