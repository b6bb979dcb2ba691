import { describe, expect, test } from 'vitest';
import * as iso from './iso-13849.ts';
import { drop, runDown } from './run-down.ts';

const close = (value: number, wanted: number, relative = 1e-6) =>
  expect(Math.abs(value / wanted - 1), `${value} against ${wanted}`).toBeLessThan(relative);

/** Steps far smaller than anything in the closed form, by the middle of each step. */
function stepped(speed: number, J: number, T: number, b: number): { time: number; angle: number } {
  const dt = 2e-6;
  let [w, time, angle] = [speed, 0, 0];
  for (;;) {
    const half = w - ((T + b * w) / J) * (dt / 2);
    const next = w - ((T + b * half) / J) * dt;
    if (next <= 0)
      return { time: time + (dt * w) / (w - next), angle: angle + (w * (dt * w)) / (w - next) / 2 };
    angle += ((w + next) / 2) * dt;
    w = next;
    time += dt;
  }
}

describe('running on', () => {
  const lead = 0.005 / (2 * Math.PI);
  const speed = 0.1 / lead;

  test('derived: 0.1 m/s, 50 ms until it obeys, 2 m/s²: 7.5 mm in 0.1 s', () => {
    const ran = runDown(speed, 1, [
      { lasts: 0.05, torque: 0, drag: 0, drives: true },
      { lasts: Number.POSITIVE_INFINITY, torque: 0, drag: 0, slows: 2 / lead },
    ]);
    close(ran.angle * lead, 0.0075);
    close(ran.time, 0.1);
  });

  test('derived: coasting by closed form against small steps, alone and with the armature shorted', () => {
    for (const [J, T, b] of [
      [8e-4, 0.12, 2e-4],
      [1.2e-3, 0.25, 0.0722],
      [0.12, 1.5, 0],
    ] as const) {
      const exact = runDown(speed, J, [{ lasts: Number.POSITIVE_INFINITY, torque: T, drag: b }]);
      const slow = stepped(speed, J, T, b);
      close(exact.time, slow.time, 1e-4);
      close(exact.angle, slow.angle, 1e-4);
    }
  });

  test('derived: axis of 120 kg on a 5 mm screw: 24.222753 mm coasting, 1.573873 mm with the armature shorted', () => {
    const J = 1.2e-3 + 120 * lead * lead;
    const coast = runDown(speed, J, [{ lasts: Number.POSITIVE_INFINITY, torque: 0.25, drag: 1e-3 }]);
    close(coast.time, 0.51962614);
    close(coast.angle * lead, 24.222753e-3);
    const shorted = runDown(speed, J, [
      { lasts: Number.POSITIVE_INFINITY, torque: 0.25, drag: 1e-3 + 0.35 ** 2 / 1.7 },
    ]);
    close(shorted.time, 0.063403758);
    close(shorted.angle * lead, 1.573873e-3);
  });

  test('derived: spindle at 1500 r/min, 0.12 kg·m², 1.5 N·m: 12.5663706 s', () => {
    const ran = runDown((1500 * 2 * Math.PI) / 60, 0.12, [
      { lasts: Number.POSITIVE_INFINITY, torque: 1.5, drag: 0 },
    ]);
    close(ran.time, 12.5663706);
  });

  test('derived: without friction it never stands, and that is said', () => {
    expect(runDown(1, 1, [{ lasts: Number.POSITIVE_INFINITY, torque: 0, drag: 0 }]).time).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  test('derived: stretches join: the same whether cut in two or not', () => {
    const whole = { torque: 0.12, drag: 2e-4 };
    const one = runDown(200, 8e-4, [{ lasts: Number.POSITIVE_INFINITY, ...whole }]);
    const two = runDown(200, 8e-4, [
      { lasts: 0.3, ...whole },
      { lasts: Number.POSITIVE_INFINITY, ...whole },
    ]);
    close(two.time, one.time, 1e-12);
    close(two.angle, one.angle, 1e-12);
  });

  test('derived: 90 kg on 5 mm lead falls 0.80035571 mm in 60 ms, 0.57244763 mm with 0.20 N·m of friction', () => {
    const J = 1.2e-3 + 90 * lead * lead;
    const torque = 90 * 9.80665 * lead;
    close(torque, 0.70234957);
    close(drop(0.06, torque, J, lead), 0.80035571e-3);
    close(drop(0.06, torque - 0.2, J, lead), 0.57244763e-3);
    const long = 0.02 / (2 * Math.PI);
    close(drop(0.06, 90 * 9.80665 * long - 0.2, 1.2e-3 + 90 * long * long, long), 7.0793205e-3);
  });
});

describe('ISO 13849-1', () => {
  test('published: MTTFd from B10 by ISO 13849-1 Annex C: 1e6 of which 73 % dangerous, once an hour: 1563.77 years (a drive maker’s application note)', () => {
    expect(Math.abs(iso.mttfdOf(1e6 / 0.73, 8760) - 1563.77)).toBeLessThan(0.01);
    expect(iso.operationsAYear(250, 8, 1800)).toBe(4000);
    close(iso.mttfdOf(1.3e6, 4000), 3250);
  });

  test('derived: channel of ISO 13849-1 D.1, two channels of D.2, coverage of E.1', () => {
    close(iso.channelMttfd([2000, 26_000]), 1857.1428571);
    close(iso.symmetric(100, 40), 74.2857142857);
    close(
      iso.averageCoverage([
        [0.99, 100],
        [0.6, 40],
        [0.9, 60],
      ]),
      0.772258065,
    );
    close(
      iso.averageCoverage([
        [0.9, 2000],
        [0.99, 26_000],
      ]),
      0.90642857,
    );
    close(
      iso.averageCoverage([
        [0, 2000],
        [0.99, 26_000],
      ]),
      0.070714286,
    );
  });

  // Recalled columns; tolerances are how far the model is known to stray from them.
  const K1 = [
    [3, 3.81e-5, 1.26e-5, 6.09e-6, undefined],
    [10, 1.14e-5, 3.21e-6, 1.36e-6, undefined],
    [15, 7.61e-6, 1.82e-6, 7.44e-7, undefined],
    [20, 5.71e-6, 1.22e-6, 4.85e-7, undefined],
    [30, 3.81e-6, 6.94e-7, 2.65e-7, 9.54e-8],
    [47, 2.43e-6, 3.35e-7, 1.34e-7, 5.76e-8],
    [68, 1.68e-6, 1.84e-7, 7.68e-8, 3.8e-8],
    [100, 1.14e-6, 1.01e-7, 4.29e-8, 2.47e-8],
  ] as const;
  test.each(K1)(
    'published: ISO 13849-1:2015 Table K.1 at %d years (recalled, from memory)',
    (years, b1, low, medium, four) => {
      close(iso.singleChannel(years), b1, 0.005);
      // The model stays on the safe side of the low column, by up to 26 % at 3 years.
      const model = iso.twoChannels(years, 0.6);
      expect(model / low).toBeGreaterThan(0.995);
      expect(model / low).toBeLessThan(1.26);
      close(iso.twoChannels(years, 0.9), medium, 0.03);
      if (four !== undefined) close(iso.twoChannels(years, 0.99), four, 0.013);
    },
  );

  test('derived: category 1 at 30 years 3.80518e-6 an hour; category 3 medium at 100 years 4.31094228e-8', () => {
    close(iso.singleChannel(30), 3.80518e-6, 1e-5);
    close(iso.twoChannels(100, 0.9), 4.31094228e-8);
    close(iso.twoChannels(2500, 0.99), 9.16741e-10, 1e-5);
  });

  test.each([
    ['1', 0, 50, 'c'],
    ['2', 0.95, 20, 'c'],
    ['3', 0.7, 20, 'c'],
    ['3', 0.95, 5, 'c'],
  ] as const)(
    'published: ISO 13849-1 Figure 5, category %s, coverage %d, %d years: %s (quoted in a component catalogue)',
    (category, dc, years, level) => {
      expect(iso.levelOf(category, dc, years)).toBe(level);
    },
  );

  test('frozen: the rest of the simplified chart of ISO 13849-1 Figure 5 (from memory)', () => {
    const rows = ([5, 20, 50] as const).map((years) =>
      (
        [
          ['B', 0],
          ['1', 0],
          ['2', 0.7],
          ['2', 0.95],
          ['3', 0.7],
          ['3', 0.95],
          ['4', 0.995],
        ] as const
      )
        .map(([category, dc]) => iso.levelOf(category, dc, years) ?? '-')
        .join(' '),
    );
    expect(rows).toEqual(['a - a b b c -', 'b - b c c d -', '- c c d d d e']);
    // Category 3 cannot be claimed without coverage.
    expect(iso.levelOf('3', 0.07, 100)).toBeUndefined();
  });

  test('published: ISO 13849-1:2015 Table 2, bands of failures an hour', () => {
    expect([5e-5, 5e-6, 2e-6, 5e-7, 5e-8].map(iso.levelOfRate)).toEqual(['a', 'b', 'c', 'd', 'e']);
    expect(iso.levelOfRate(1e-3)).toBeUndefined();
  });

  test('published: ISO 13849-1:2015, 6.2 and Table 10 (from memory): what each category asks for and where it ends', () => {
    const rows = Object.entries(iso.CATEGORY_ASKS).map(
      ([category, { coverage, mttfd, commonCause, wellTried, most }]) =>
        `${category} ${iso.coverageBand(coverage)} ${iso.mttfdBand(mttfd)} ${commonCause} ${wellTried} ${most}`,
    );
    expect(rows.sort()).toEqual([
      '1 none high 0 true c',
      '2 low low 65 false d',
      '3 low low 65 false d',
      '4 high high 65 false e',
      'B none low 0 false b',
    ]);
    // No cell of the chart goes beyond where its category ends.
    for (const [category, { most }] of Object.entries(iso.CATEGORY_ASKS))
      for (const dc of [0, 0.7, 0.95, 0.995])
        for (const years of [5, 20, 50])
          expect((iso.levelOf(category as iso.Category, dc, years) ?? 'a') <= most).toBe(true);
  });

  test('frozen: the points of Table F.1 come to 100 (from memory)', () => {
    expect(Object.values(iso.COMMON_CAUSE).reduce((sum, { points }) => sum + points, 0)).toBe(100);
  });
});
