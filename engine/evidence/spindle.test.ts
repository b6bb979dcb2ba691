/** The delay of a spindle drive against its closed form: stops whose times are known. */
import { expect, test } from 'vitest';
import { seeded } from '../handbook/samples.ts';
import { levels, outcome, quantity, refusal } from './methods.fixture.ts';

const RPM = Math.PI / 30;
const SPEEDS = [100, 100, 200, 200, 400, 400, 600, 600];
/** Pictures of stops with a delay (s) and an even slowing (rad/s²). */
const pictures = (delay: number, slowing: number, rate: number, speeds = SPEEDS): number[] =>
  speeds.map((speed) => Math.round(rate * (delay + (speed * RPM) / slowing)));

test('derived: stops that slow evenly after 25 ms give 25 ms and the slowing back, within the pictures’ width', () => {
  // A thousand pictures a second, so that a picture is a millisecond.
  const found = outcome(
    'spindle-delay',
    { rate: '1000 Hz', told: '0', tachometer: '0 %' },
    { speed: SPEEDS, pictures: pictures(0.025, 60, 1000) },
  );
  const delay = quantity(found, 'delay');
  expect(Math.abs(delay.value - 0.025)).toBeLessThan(0.0005);
  expect(Math.abs(quantity(found, 'slowing').value / 60 - 1)).toBeLessThan(0.002);
  expect(delay.fact).toEqual({ place: 'spindle-drive', fact: 'orderDelay' });
  expect(levels(found)[0]).toBe('good');
});

test('derived: two stops by the line through two points, and a late lamp added', () => {
  const given = { rate: '500 Hz', lamp: '12 ms', told: '0', tachometer: '0 %' };
  const found = outcome('spindle-delay', given, { speed: [100, 300], pictures: [50, 120] });
  // (300 × 0.1 s − 100 × 0.24 s) ∕ 200 = 30 ms.
  expect(quantity(found, 'delay').value).toBeCloseTo(0.03 + 0.012, 12);
  expect(quantity(found, 'slowing').value).toBeCloseTo((200 * RPM) / 0.14, 9);
  expect(levels(found)).toContain('note');
});

test('derived: a count that is always wrong the same way moves the delay as far, and no more', () => {
  const readings = { speed: SPEEDS, pictures: pictures(0.05, 100, 240) };
  const standard = (told: string): number =>
    quantity(outcome('spindle-delay', { rate: '240 Hz', told, tachometer: '0 %' }, readings), 'delay')
      .standard;
  const without = standard('0');
  // Three pictures either way, evenly: 3 ∕ √3 pictures of 1 ∕ 240 s, whatever the speeds are.
  expect(Math.sqrt(standard('3') ** 2 - without ** 2)).toBeCloseTo(3 / Math.sqrt(3) / 240, 9);
});

test('derived: a speed shown wrong by a share of itself leaves the delay alone', () => {
  const readings = { speed: SPEEDS, pictures: pictures(0.05, 100, 240) };
  const of = (tachometer: string, key: string) =>
    quantity(outcome('spindle-delay', { rate: '240 Hz', told: '1', tachometer }, readings), key).standard;
  // The line meets no speed at the same place, however its other axis is stretched.
  expect(of('5 %', 'delay') / of('0 %', 'delay')).toBeLessThan(1.02);
  expect(of('5 %', 'slowing')).toBeGreaterThan(2 * of('0 %', 'slowing'));
});

test('derived: the ± holds the true delay about 95 times in a hundred', { timeout: 60_000 }, () => {
  const random = seeded(11);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const [truth, slowing, rate, benches] = [0.04, 90, 240, 1500];
  let held = 0;
  for (let bench = 0; bench < benches; bench++) {
    const always = 2 * (2 * random() - 1);
    const counted = SPEEDS.map((speed) =>
      Math.round(rate * (truth + (speed * RPM) / slowing) + always + normal()),
    );
    const found = outcome(
      'spindle-delay',
      { rate: `${rate} Hz`, told: '2', tachometer: '0 %' },
      { speed: SPEEDS, pictures: counted },
    );
    const { value, expanded } = quantity(found, 'delay');
    if (Math.abs(value - truth) <= expanded) held++;
  }
  expect(held / benches).toBeGreaterThan(0.93);
  expect(held / benches).toBeLessThan(0.99);
});

test('derived: a ramp of fixed time, a motor that weakens and one speed alone are told', () => {
  const at = (speed: number[], count: number[], rate = '240 Hz') =>
    outcome('spindle-delay', { rate }, { speed, pictures: count });
  expect(refusal('spindle-delay', {}, { speed: [100, 300], pictures: [120, 120] })).toMatch(/fixed time/);
  expect(refusal('spindle-delay', {}, { speed: [300, 300], pictures: [90, 91] })).toMatch(/same speed/);
  // Three times as long from twice the speed: the line meets no speed below nothing, and no fact is recorded.
  const weak = at([300, 600, 300, 600], [100, 300, 101, 299]);
  expect(levels(weak)[0]).toBe('bad');
  expect(quantity(weak, 'delay').fact).toBeUndefined();
  // Bent: above the rated speed the time grows with the square.
  const bent = at([100, 200, 400, 800, 1600], [40, 60, 100, 220, 700]);
  expect(bent.verdicts.map(({ sentence }) => sentence).join(' ')).toMatch(/do not lie on a line/);
});
