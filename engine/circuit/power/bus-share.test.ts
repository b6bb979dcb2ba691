/** One current for good on the drives' bus: everything in its way goes by the same number. */
import { describe, expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { readWiring, WiringChecker } from '../wiring/index.ts';
import { sharesOf } from './bus-share.ts';
import { cabinetWith } from './cabinet.fixture.ts';
import { edited, seeded } from './edits.fixture.ts';
import { judgeSupply, SupplyChecker } from './index.ts';

describe('sharesOf', () => {
  test('derived: shares add up to what was worked out, as what has been said of each', () => {
    const shares = sharesOf(
      [
        { id: 'a', amps: 3 },
        { id: 'b', amps: 4 },
      ],
      8.75,
    );
    expect(shares.get('a')! / shares.get('b')!).toBeCloseTo(3 / 4, 12);
    expect(shares.get('a')! + shares.get('b')!).toBeCloseTo(8.75, 12);
  });

  test('derived: what has been said stands where it is more; who has said nothing takes the rest', () => {
    const said = [
      { id: 'a', amps: 3 },
      { id: 'b', amps: undefined },
      { id: 'c', amps: undefined },
    ];
    expect([...sharesOf(said, 8)]).toEqual([
      ['b', 2.5],
      ['c', 2.5],
    ]);
    expect(sharesOf(said, 3).size).toBe(0);
    expect(sharesOf(said, undefined).size).toBe(0);
    expect(sharesOf([], 8).size).toBe(0);
    expect([...sharesOf([{ id: 'a', amps: 0 }], 8)]).toEqual([['a', 8]]);
  });
});

const STEADY = 8.62;

describe('a cabinet whose axes have been worked out', () => {
  const drawn = { busPeakAmps: 14.4, busOneAmps: 12, busSteadyAmps: STEADY };
  const { refit, wiring } = cabinetWith();
  const { context, findings } = judgeSupply(refit, wiring, drawn);
  const figure = (id: string, name: string) =>
    findings.find((each) => each.id === id)!.figures.find((each) => each.name === name)!.value;

  test('derived: fuse, bridge, transformer and wires go by the same current for good', () => {
    expect(context.flow.gives.get('G2.plus')!.amps).toBeCloseTo(STEADY, 6);
    expect(figure('fuse-load:F2.1', 'current it carries for good')).toBeCloseTo(STEADY, 6);
    expect(figure('supply-load:G2.plus', 'current it gives for good')).toBeCloseTo(STEADY, 6);
    // 1.8 times the mean heats the secondary.
    expect(figure('supply-load:T1.3', 'current it gives for good')).toBeCloseTo(1.8 * STEADY, 5);
    expect(figure('fuse-load:F4.1', 'current it carries for good')).toBeCloseTo(1.8 * STEADY, 5);
    for (const { id, source } of findings)
      if (/^(fuse-load|supply-load|socket):/.test(id)) expect(source).toMatch(/current for good/);
  });

  test('derived: less than has been said of the drives changes nothing', () => {
    const less = judgeSupply(refit, wiring, { ...drawn, busSteadyAmps: 5 });
    expect(less.context.flow.gives.get('G2.plus')!.amps).toBeCloseTo(7, 9);
  });

  test('derived: a drive of which nothing has been said takes the rest, and nobody waits for it', () => {
    const gap = cabinetWith({}, { T3: { 'supply-current': null } });
    const answer = judgeSupply(gap.refit, gap.wiring, drawn);
    expect(answer.context.flow.gives.get('G2.plus')).toMatchObject({ needs: [] });
    expect(answer.context.flow.gives.get('G2.plus')!.amps).toBeCloseTo(STEADY, 6);
  });

  test('derived: edits and other axes: the same as asked from the start', () => {
    const random = seeded(7);
    let now = sample('carriage-works-lathe');
    const joined = new WiringChecker(now.wiring, now);
    const supply = new SupplyChecker(now);
    for (let at = 0; at < 60; at++) {
      const told = { busSteadyAmps: [undefined, 5, 8.62, 12][Math.floor(random() * 4)] };
      const drives = told.busSteadyAmps === undefined ? {} : { busSteadyAmps: told.busSteadyAmps };
      now = { ...now, wiring: edited(now.wiring, random, at) };
      joined.update(now.wiring);
      supply.update(now, joined.drawing, joined.news(), drives);
      if (at % 5 !== 4) continue;
      const whole = judgeSupply(now, readWiring(now.wiring, now), drives);
      expect(supply.findings()).toEqual(whole.findings);
      expect(supply.sizes()).toEqual(whole.sizes);
    }
  }, 120_000);
});
