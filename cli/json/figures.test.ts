import { expect, test } from 'vitest';
import { WiringLook } from '../../engine/circuit/whole/index.ts';
import { toSI } from '../../engine/quantity/index.ts';
import { sample } from '../../samples/read.fixture.ts';
import { siUnit } from './figures.ts';
import { wiringJson } from './wiring.ts';

test.each([
  ['µF', 'F'],
  ['mA', 'A'],
  ['kHz', 'Hz'],
  ['mm²', 'm²'],
  ['ms', 's'],
  ['µs', 's'],
  ['mm', 'm'],
  ['VA', 'VA'],
  ['Ω', 'Ω'],
  ['°C', 'K'],
  ['%', '1'],
])('derived: a value in SI of what is read in %s is in %s', (read, si) => {
  expect(siUnit(read)).toBe(si);
});

test('derived: every figure and size of the lathe: its unit is that of its value, and the sentence says the same', () => {
  const looked = new WiringLook().look(sample('carriage-works-lathe'), {
    busPeakAmps: 20,
    busOneAmps: 17,
    busSteadyAmps: 9,
    busHigh: 88,
    busLow: 80,
  });
  const { findings, sizes } = wiringJson(looked, []);
  const figures = [...findings.flatMap((each) => each.figures), ...sizes];
  expect(figures.length).toBeGreaterThan(100);
  for (const { unit } of figures) expect(toSI(1, unit)).toBe(1);
  const stored = findings.find(({ id }) => id === 'stored-charge:G2.plus')!;
  expect(stored.figures.find(({ name }) => name === 'capacitors together')).toEqual({
    name: 'capacitors together',
    value: 0.03,
    unit: 'F',
    readIn: 'µF',
  });
  const capacitor = sizes.find(({ what }) => what === 'capacitor')!;
  expect(capacitor).toMatchObject({ unit: 'F', readIn: 'µF' });
  expect(capacitor.sentence).toMatch(new RegExp(`^${Math.ceil((capacitor.value * 1e6) / 100) * 100} µF`));
});
