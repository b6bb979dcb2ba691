/** From a fact to the bench tests that would settle it. */
import { expect, test } from 'vitest';
import { factSpec } from '../parts/index.ts';
import { METHODS } from './index.ts';
import { methodsFor } from './methods-for.ts';

test('every fact that a method says it settles exists and leads back to the method', () => {
  for (const method of METHODS)
    for (const { place, fact } of method.settles) {
      expect(factSpec(place, fact), `${method.id}: ${place}.${fact}`).toBeDefined();
      expect(methodsFor(`X.${place}.${fact}`)).toContain(method);
    }
});

test('a fact that no method settles has none', () => {
  expect(methodsFor('X.drive.command')).toEqual([]);
  expect(methodsFor('')).toEqual([]);
});
