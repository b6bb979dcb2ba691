/** Numbers of ISO 13849-1 against what is printed of them, and its formulas against second ways. */
import { describe, expect, test } from 'vitest';
import * as iso from './iso-13849.ts';

const close = (value: number, wanted: number, relative = 1e-6) =>
  expect(Math.abs(value / wanted - 1), `${value} against ${wanted}`).toBeLessThan(relative);

describe('ISO 13849-1', () => {
  test('published: MTTFd from B10 by ISO 13849-1 Annex C: 1e6 of which 73 % dangerous, once an hour: 1563.77 years (a drive maker’s application note)', () => {
    expect(Math.abs(iso.mttfdOf(1e6 / 0.73, 8760) - 1563.77)).toBeLessThan(0.01);
    expect(iso.operationsAYear(250, 8, 1800)).toBe(4000);
    close(iso.mttfdOf(1.3e6, 4000), 3250);
  });

  // NTI AG, installation guide of a linear motor drive, page 18; it names EN ISO 13849-1:2008, Table C.1.
  test('published: relay at small load 20 000 000 operations by Table C.1, every 20 s day and night: 1 577 880 a year, 126.75 years, counted as 100 (a linear motor maker’s installation guide)', () => {
    const operations = iso.operationsAYear(365.25, 24, 20);
    close(operations, 1_577_880, 1e-12);
    const years = iso.mttfdOf(iso.USUAL_B10D['small load'], operations);
    expect(Math.abs(years - 126.75)).toBeLessThan(0.005);
    expect(iso.capped(years, '3')).toBe(100);
    // The same guide counts half of all failures as dangerous: B10 10 000 000.
    expect(iso.USUAL_B10D['small load']).toBe(2 * 10_000_000);
  });

  // Siemens AG, application document for functional safety STO, SS1, 09/2016, pages 48 and 56.
  test('published: emergency stop with 100 000 operations, 20 % dangerous, once a day: 13 698.63 years, counted as 2500 in category 4: 9.06e-10 an hour, level e (a drive maker’s application note)', () => {
    const years = iso.mttfdOf(100_000 / 0.2, iso.operationsAYear(365, 24, 24 * 3600));
    expect(Math.abs(years - 13_698.63)).toBeLessThan(0.005);
    expect(iso.capped(years, '4')).toBe(2500);
    // Table K.1 is made by a model of its own; ours strays from it by 1.2 % here, on the safe side.
    const rate = iso.twoChannels(iso.capped(years, '4'), 0.99);
    expect(rate / 9.06e-10).toBeGreaterThan(1);
    expect(rate / 9.06e-10).toBeLessThan(1.013);
    expect(iso.levelOf('4', 0.99, 2500)).toBe('e');
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

  // Festo, manual of a handheld terminal, 2020-08, Tab. 4, which names EN ISO 13849-1:2015.
  test('published: ISO 13849-1:2015 Table 2, both ends of every band (quoted in a handheld terminal’s manual)', () => {
    for (const [level, least, below] of [
      ['a', 1e-5, 1e-4],
      ['b', 3e-6, 1e-5],
      ['c', 1e-6, 3e-6],
      ['d', 1e-7, 1e-6],
      ['e', 1e-8, 1e-7],
    ] as const) {
      expect(iso.levelOfRate(least), `${least}`).toBe(level);
      expect(iso.levelOfRate(below * (1 - 1e-12)), `just below ${below}`).toBe(level);
    }
  });

  // Comitronic-BTI, assessment of ISO 13849-1 parameters; ISO/DIS 13849-1:2021 annex F as put up by charger.com.tw.
  test('published: ISO 13849-1 Annex F: 15 points for separation (a switch maker’s form), at least 65 asked for and a share of 2 % (the annex of the draft of 2021)', () => {
    expect(iso.COMMON_CAUSE['ccf-separation']!.points).toBe(15);
    for (const category of ['2', '3', '4'] as const) expect(iso.CATEGORY_ASKS[category].commonCause).toBe(65);
    // With every fault found at once only the common cause is left.
    close(iso.twoChannels(100, 1), 0.02 * iso.singleChannel(100));
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
