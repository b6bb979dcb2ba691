/** Axial stiffness from loads and readings that are made up to have it. */
import { expect, test } from 'vitest';
import { levels, outcome, quantity, refusal } from './methods.fixture.ts';

const LOADS = [200, 400, 600, 800, 1000];

/** Readings in mm of something of `k` N/µm with `play` µm; each off by what `off` says, in µm. */
function readings(k: number, play: number, off: (at: number) => number = () => 0, ways = ['push', 'pull']) {
  const rows = ways.flatMap((way) => LOADS.map((force) => ({ way, force })));
  return {
    way: rows.map(({ way }) => way),
    force: rows.map(({ force }) => `${force} N`),
    reading: rows.map(({ way, force }, at) => {
      const give = (way === 'push' ? 1 : -1) * (force / k + play / 2);
      return `${((give + off(at)) / 1000).toFixed(6)} mm`;
    }),
  };
}

test('derived: a line each way gives the stiffness back, and its jump at no load the play', () => {
  const found = outcome('axial-stiffness', { what: 'housing' }, readings(150, 12));
  const stiffness = quantity(found, 'stiffness');
  expect(stiffness.value / 1e6).toBeCloseTo(150, 1);
  expect(stiffness.fact).toEqual({ place: 'slide', fact: 'housingStiffness' });
  expect(quantity(found, 'play').value * 1e6).toBeCloseTo(12, 2);
  expect(levels(found)).toContain('doubtful');
  expect(found.verdicts[0]!.sentence).toContain('jumps by');
});

test('derived: without play, and read on the screw, it is the bearings and nothing jumps', () => {
  const off = (at: number): number => [0.2, -0.3, 0.1, 0.2, -0.2][at % 5]!;
  const found = outcome('axial-stiffness', { what: 'bearings' }, readings(80, 0, off));
  const stiffness = quantity(found, 'stiffness');
  expect(stiffness.fact).toEqual({ place: 'screw', fact: 'bearingStiffness' });
  expect(Math.abs(stiffness.value / 1e6 - 80)).toBeLessThan(stiffness.expanded / 1e6);
  expect(found.verdicts.map(({ sentence }) => sentence).join(' ')).toContain('No play');
});

test('derived: a lever multiplies the stiffness by its ratio, and its doubt comes with it', () => {
  const plain = quantity(outcome('axial-stiffness', { what: 'housing' }, readings(15, 0)), 'stiffness');
  const lever = quantity(
    outcome('axial-stiffness', { what: 'housing', lever: '10 ± 0.4' }, readings(15, 0)),
    'stiffness',
  );
  expect(lever.value / plain.value).toBeCloseTo(10, 4);
  expect(lever.standard / lever.value).toBeGreaterThan(0.01);
});

test('derived: which way the indicator counts changes nothing', () => {
  const one = readings(150, 12);
  const other = {
    ...one,
    reading: one.reading.map((text) => (text.startsWith('-') ? text.slice(1) : `-${text}`)),
  };
  for (const key of ['stiffness', 'play'])
    expect(quantity(outcome('axial-stiffness', { what: 'housing' }, other), key).value).toBeCloseTo(
      quantity(outcome('axial-stiffness', { what: 'housing' }, one), key).value,
      9,
    );
});

test('derived: one way tells no play', () => {
  const found = outcome('axial-stiffness', { what: 'housing' }, readings(150, 12, undefined, ['push']));
  expect(quantity(found, 'stiffness').value / 1e6).toBeCloseTo(150, 1);
  expect(found.results.map(({ key }) => key)).not.toContain('play');
});

test('derived: what it gives less than the readings scatter is not recorded, only bounded', () => {
  const off = (at: number): number => [3, -2, -3, 2, 1][at % 5]!;
  const found = outcome('axial-stiffness', { what: 'housing' }, readings(3000, 0, off));
  expect(found.results.map(({ key }) => key)).not.toContain('stiffness');
  expect(found.verdicts[0]!.sentence).toContain('less than these readings can see: more than');
});

test('derived: readings without their signs are seen', () => {
  const one = readings(150, 0);
  const unsigned = { ...one, reading: one.reading.map((text) => text.replace('-', '')) };
  const found = outcome('axial-stiffness', { what: 'housing' }, unsigned);
  expect(found.results.map(({ key }) => key)).not.toContain('stiffness');
});

test('derived: too few loads are refused by name', () => {
  expect(
    refusal(
      'axial-stiffness',
      { what: 'housing' },
      {
        way: ['push', 'push', 'push'],
        force: ['200 N', '200 N', '400 N'],
        reading: ['0.001', '0.001', '0.002'],
      },
    ),
  ).toMatch(/three different forces/);
});
