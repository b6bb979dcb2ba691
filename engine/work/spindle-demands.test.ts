import { expect, test } from 'vitest';
import { assess } from '../assess/index.ts';
import { FACTS, refitWith } from '../assess/spindle.fixture.ts';
import type { Work } from '../refit/types.ts';
import { spindleDemands } from './spindle-demands.ts';

const cut = (settings: Work['settings']): Work => ({ id: 'cut-1', kind: 'cut', name: 'Roughing', settings });

test('derived: a cut asks the torque of its power at its speed; what cannot be read asks nothing', () => {
  const whole = refitWith(FACTS);
  const turning = {
    operation: 'turning',
    material: 'steel',
    diameter: '60 mm',
    speed: '120 m/min',
    depth: '1 mm',
    feed: '0.15 mm/rev',
  };
  const [demand] = spindleDemands(assess({ ...whole, work: { 'cut-1': cut(turning) } }));
  expect(demand?.name).toBe('Roughing');
  // 120 m/min on 60 mm.
  expect(demand!.speed).toBeCloseTo(2 / 0.03, 6);
  expect(demand!.torque).toBeGreaterThan(0);
  for (const work of [cut({}), cut({ ...turning, speed: 'fast' }), cut({ ...turning, diameter: '0 mm' })])
    expect(spindleDemands(assess({ ...whole, work: { 'cut-1': work } }))).toEqual([]);
});
