import { test } from 'vitest';
import { lanes, evaluate, defineSheet, input, formula } from '../sheet/index.ts';
import { screwStiffness } from './screw-stiffness.ts';
import { samplePoints } from './samples.ts';
test('x', () => {
  const f = (x: number) => Float64Array.from([x, x * 2, x*3]);
  for (const e of ['2*pi*a','2*a','a*a','pi*a','a/b','a*b','2*a/b','2*pi*b*a/b', 'a + b']) {
    const s = defineSheet({ id: 'q', title: '', about: '', symbols: { a: input('a','1'), b: input('b','1'), c: formula('c','1',e,'x') } });
    console.log(e, lanes(s as any, { a: f(1), b: f(3) }, 3).values);
  }
  const { points, never } = samplePoints(screwStiffness as any, 5);
  console.log(points.length, never, points.slice(0, 3).map((p) => JSON.stringify(p.outcomes.K_both)+JSON.stringify(p.outcomes.Ks_both)));
});
