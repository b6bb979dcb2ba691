import { describe, expect, test } from 'vitest';
import { act, actsOf, started } from './acts.ts';
import { compileStop } from './compile.ts';
import { networkOf } from './network.ts';
import { PATTERNS } from './patterns/index.ts';
import { pictureOf, standingsOf } from './picture.ts';
import { Simulation } from './simulate.ts';

const MOTIONS = [
  { id: 'X', kind: 'axis' as const, name: 'X' },
  { id: 'Z', kind: 'axis' as const, name: 'Z' },
];

describe.each(PATTERNS)('$id', ({ make }) => {
  const made = compileStop(make(MOTIONS));
  if (!made.ok) throw new Error(made.problem.message);
  const model = made.value;
  const flows = pictureOf(model);

  test('derived: streams of one column do not overlap, pools have heights of their own, ends meet', () => {
    for (const { streams, pools, columns } of flows) {
      for (const [n, one] of streams.entries()) {
        expect(one.top).toBeLessThan(one.bottom);
        expect(one.column).toBeLessThan(columns);
        for (const two of streams.slice(n + 1))
          if (one.column === two.column)
            expect(one.bottom <= two.top || two.bottom <= one.top, `${one.id} ${two.id}`).toBe(true);
        for (const end of [one.from, one.to]) {
          const pool = pools.find(({ net }) => net === end)!;
          expect(pool.left <= one.column && one.column <= pool.right).toBe(true);
        }
      }
      expect(new Set(pools.map(({ row }) => row)).size).toBe(pools.length);
    }
  });

  test('derived: current flows to the coils that are held while it runs, and nowhere without power', () => {
    const simulation = new Simulation(networkOf(model));
    const state = started(simulation);
    const check = () => {
      for (const flow of flows)
        for (const [stream, standing] of standingsOf(flow, simulation, state))
          if (stream.kind === 'coil') expect(standing === 'flows', stream.id).toBe(state.at[stream.at] === 1);
    };
    check();
    const off = actsOf(model).find(({ mover, to }) => mover < 0 && to === 0)!;
    act(simulation, state, off);
    check();
    for (const flow of flows)
      for (const [, standing] of standingsOf(flow, simulation, state))
        expect(['open', 'closed']).toContain(standing);
  });
});
