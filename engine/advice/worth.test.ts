import { describe, expect, test } from 'vitest';
import type { Refit } from '../refit/types.ts';
import { having, sample, unpriced } from './advice.fixture.ts';
import { triangle } from './sum-of-ranges.ts';
import { COST_ITEMS } from './usual-costs.ts';
import { worthOf } from './worth.ts';

const lathe = unpriced(sample('carriage-works-lathe'));

/** Everything entered at the same price, nothing left to guess. */
const priced = (each: string, more: Readonly<Record<string, string>> = {}): Refit =>
  having(lathe, {
    ...Object.fromEntries(COST_ITEMS.map(({ id }) => [`job.${id}`, each])),
    'job.weight': '1800 kg',
    'job.width': '1.3 m',
    'job.phases': 'three',
    'job.power': '5 kW',
    'job.ways': 'good',
    'job.spindle': 'good',
    'site.floor': '5 t',
    'site.lift': '3 t',
    'site.door': '2.4 m',
    'site.available': '15 kW',
    'site.phases': 'three',
    'job.asked': '0',
    ...more,
  });
const n = COST_ITEMS.length;

describe('derived: sums of ranges', () => {
  test('the triangle’s quantiles: ends, corner, and the share below the corner', () => {
    const money = { low: 10, likely: 20, high: 50 };
    expect(triangle(money, 0)).toBe(10);
    expect(triangle(money, 1)).toBe(50);
    expect(triangle(money, 0.25)).toBeCloseTo(20, 12);
    // F(x) = 1 − (high − x)² / ((high − low)(high − likely))
    const x = triangle(money, 0.7);
    expect(1 - (50 - x) ** 2 / (40 * 30)).toBeCloseTo(0.7, 12);
  });

  test('middle of the total: n (low + likely + high) / 3 and its spread, by the sums of mean and variance', () => {
    const worth = worthOf(having(priced('100–130–220 EUR'), { 'job.worth': '9000 EUR' }));
    const [a, m, b] = [100, 130, 220];
    const mean = (1.2 * n * (a + m + b)) / 3;
    const deviation = 1.2 * Math.sqrt((n * (a * a + m * m + b * b - a * m - a * b - m * b)) / 18);
    expect(Math.abs(worth.total!.middle - mean)).toBeLessThan(0.15 * deviation);
    // A sum of sixteen is near enough normal: one in ten lies 1.2816 deviations below.
    expect(Math.abs(worth.total!.low - (mean - 1.2816 * deviation))).toBeLessThan(0.15 * deviation);
    expect(Math.abs(worth.total!.high - (mean + 1.2816 * deviation))).toBeLessThan(0.15 * deviation);
    expect(worth.guessed).toBe(0);
    expect(worth.answer).toBe('worth');
    expect(worth.chance).toBe(1);
  });

  test('prices without ranges add up exactly, with the contingency the person set', () => {
    const worth = worthOf({
      ...priced('100 EUR', { 'job.worth': '2000 EUR' }),
      policies: { contingency: '10 %' },
    });
    expect(worth.total!.low).toBeCloseTo(n * 110, 9);
    expect(worth.total!.high).toBeCloseTo(n * 110, 9);
  });

  test.each([
    ['1000 EUR', 'not-worth'],
    ['3000 EUR', 'worth'],
    ['1950 EUR', 'close'],
  ])('worth %s: %s', (worth, answer) => {
    expect(worthOf(priced('80–90–140 EUR', { 'job.worth': worth })).answer).toBe(answer);
  });
});

describe('never a verdict from defaults', () => {
  test('usual values alone leave it open, and say that they are guesses', () => {
    const worth = worthOf(having(lathe, { 'job.worth': '90000 EUR', 'job.asked': '100 EUR' }));
    expect(worth.answer).toBe('open');
    expect(worth.guessed).toBeGreaterThan(0.25);
    expect(worth.doubt.join(' ')).toContain('Only guessed');
    expect(worth.sentence).toContain('guessed');
  });

  test('a currency without usual values shows nothing rather than a number of another', () => {
    const worth = worthOf(having(lathe, { 'job.worth': '90000 CZK' }));
    expect(worth.lines.every(({ money }) => !money || money.currency === null)).toBe(true);
    expect(worth.answer).toBe('open');
  });

  test('currencies are not mixed', () => {
    expect(worthOf(having(priced('100 EUR'), { 'job.worth': '5000 GBP' })).sentence).toContain(
      'different currencies',
    );
  });

  test('entered as a guess counts as a guess', () => {
    const refit = priced('100 EUR', { 'job.worth': '9000 EUR' });
    const part = refit.parts.job ?? Object.values(refit.parts).find(({ kind }) => kind === 'job')!;
    const facts = Object.fromEntries(
      Object.entries(part.facts).map(([id, fact]) => [id, { ...fact, basis: 'guess' as const }]),
    );
    expect(worthOf({ ...refit, parts: { ...refit.parts, [part.id]: { ...part, facts } } }).answer).toBe(
      'open',
    );
  });

  test('what is known for certain is enough for a no', () => {
    const worth = worthOf(
      having(lathe, { 'job.worth': '1000 EUR', 'job.asked': '600 EUR', 'job.transport': '700 EUR' }),
    );
    expect(worth.answer).toBe('not-worth');
  });
});

describe('common practice, no source: what stops it comes first', () => {
  test.each([
    [{ 'site.floor': '1500 kg' }, 'weight on the floor'],
    [{ 'site.lift': '1 t' }, 'weight on the lifting gear'],
    [{ 'site.door': '1.1 m' }, 'way in'],
    [{ 'site.phases': 'single' }, 'phases'],
    [{ 'site.available': '3 kW' }, 'power from the mains'],
    [{ 'job.ways': 'beyond' }, 'ways'],
    [{ 'job.spindle': 'beyond' }, 'spindle'],
  ])('%o', (facts, title) => {
    const worth = worthOf(
      priced('10 EUR', { 'job.worth': '90000 EUR', ...(facts as Record<string, string>) }),
    );
    expect(worth.answer).toBe('stop');
    expect(worth.sentence).toContain(title);
  });

  test('a converter answers the phases, and one phase needs none', () => {
    for (const facts of [{ 'site.phases': 'converter' }, { 'job.phases': 'single', 'site.phases': 'single' }])
      expect(worthOf(priced('10 EUR', { 'job.worth': '9000 EUR', ...facts })).answer).toBe('worth');
  });

  test('weight and door of the survey count where no fact says otherwise', () => {
    const access = {
      id: 'access',
      state: 'works' as const,
      note: '',
      photos: [],
      answers: { weight: '2.4 t', door: '1.9 m' },
    };
    const refit = having(lathe, {
      'site.floor': '2 t',
      'site.door': 'unknown',
      'site.lift': 'unknown',
      'job.width': '2 m',
    });
    const stops = worthOf({ ...refit, survey: { ...refit.survey, access } }).stoppers.filter(
      ({ level }) => level === 'stops',
    );
    expect(stops.map(({ title }) => title)).toEqual(['Weight on the floor', 'Way in']);
  });

  test('what nobody knows is asked for before a yes', () => {
    const refit = priced('10 EUR', { 'job.worth': '90000 EUR', 'site.floor': 'unknown' });
    expect(worthOf(refit).answer).toBe('open');
    expect(worthOf(refit).stoppers[0]).toMatchObject({ level: 'unknown', paths: ['site.floor'] });
  });
});

test('derived: prices of parts count where the job has none', () => {
  const refit = having(lathe, { 'X.drive.price': '200 EUR', 'Z.drive.price': '250 EUR' });
  const line = worthOf(refit).lines.find(({ id }) => id === 'drives')!;
  expect(line).toMatchObject({ from: 'parts', money: { likely: 450 } });
  expect(JSON.stringify(worthOf(sample('boatyard-mill')))).not.toMatch(/NaN|Infinity/);
});
