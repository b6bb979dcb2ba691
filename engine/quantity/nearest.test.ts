import { describe, expect, test } from 'vitest';
import { nearest } from './nearest.ts';

describe('nearest', () => {
  test.each([
    ['A1.inn1', ['A1.in1', 'A1.out1'], 'A1.in1'],
    ['K1.supressor', ['K1.suppressor', 'K1.volts'], 'K1.suppressor'],
    ['lenght', ['length', 'number'], 'length'],
    ['thre', ['one', 'three'], 'three'],
    ['chekc', ['check', 'cut'], 'check'],
    ['W12', ['w12', 'w120'], 'w12'],
    ['A1.x-stpe', ['A1.x-step', 'A1.x-dir'], 'A1.x-step'],
    ['X.screw.roots', ['X.screw.root'], 'X.screw.root'],
    ['w121', ['w12', 'w239'], 'w12'],
  ])('derived: %s is a slip of the hand', (typed, there, meant) => {
    expect(nearest(typed, there)).toBe(meant);
  });

  test.each([
    ['A1.nope', ['A1.PE', 'A1.in1', 'A1.com']],
    ['w9999', ['w99', 'w199', 'w1']],
    ['A9.in7', ['A1.in1', 'B2.in1']],
    ['xyz', ['abc', 'x']],
    ['ab', ['xy']],
    ['', ['a']],
  ])('derived: nothing is near %s', (typed, there) => {
    expect(nearest(typed, there)).toBeUndefined();
  });
});
