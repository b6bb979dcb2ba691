import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import { rankedPatterns, whatMoves } from '../../../advice/stop-offers.ts';
import { assess } from '../../../assess/index.ts';
import { PATTERNS } from './index.ts';
import { rankPatterns, type Traits, torqueOffOf, traitsOf } from './rank.ts';

const PLAIN: Traits = { drops: [], long: [], notKnown: [] };
const order = (traits: Traits, torqueOff?: boolean) =>
  rankPatterns(traits, torqueOff).map(({ pattern }) => pattern.id);

describe('derived: ways to stop in the order that suits the machine', () => {
  test.each<[string, Traits, string]>([
    ['nothing drops and nothing goes on turning', PLAIN, 'safety-relay'],
    ['an axis drops', { ...PLAIN, drops: ['Z axis'] }, 'vertical-axis'],
    ['a spindle goes on turning', { ...PLAIN, long: [{ name: 'spindle', seconds: 26 }] }, 'locked-door'],
    ['both', { ...PLAIN, drops: ['Z'], long: [{ name: 'spindle', seconds: 26 }] }, 'vertical-axis'],
    ['nothing is known', { ...PLAIN, notKnown: ['spindle'] }, 'safety-relay'],
  ])('%s', (_title, traits, first) => {
    const ids = order(traits);
    expect(ids[0]).toBe(first);
    expect([...ids].sort()).toEqual(PATTERNS.map(({ id }) => id).sort());
    // Whatever is known, what must not be built stands last, and one channel just before it.
    expect(ids.slice(-2)).toEqual(['one-contactor', 'asks-the-control']);
    for (const { pattern, why } of rankPatterns(traits)) {
      expect(why, pattern.id).toMatch(/^[A-Z\d][^\n]*\.$/);
      expect(why).not.toMatch(/undefined|NaN|Infinity/);
    }
  });

  test('every pattern is ranked by a reason of its own; the input for safe torque off is named where it is known', () => {
    const whys = rankPatterns(PLAIN, true).map(({ why }) => why);
    expect(new Set(whys).size).toBe(PATTERNS.length);
    expect(whys.some((why) => /safe torque off/.test(why))).toBe(true);
    expect(rankPatterns(PLAIN).some(({ why }) => /safe torque off/.test(why))).toBe(false);
  });
});

test('derived: traits from numbers: J·ω/T of a spindle, an axis that drops, what cannot be read', () => {
  const spindle = (friction: string) => ({
    id: 'S',
    kind: 'spindle' as const,
    name: 'spindle',
    settings: { speed: '600 r/min', inertia: '0.1 kg·m²', friction },
  });
  const axis = (vertical: string) => ({
    id: 'Z',
    kind: 'axis' as const,
    name: 'head',
    settings: { vertical },
  });
  const { drops, long } = traitsOf([spindle('1 N·m'), axis('yes')], {});
  expect(drops).toEqual(['head']);
  expect(long[0]!.seconds).toBeCloseTo(0.1 * 2 * Math.PI * 10, 9);
  expect(traitsOf([spindle('10 N·m'), axis('no')], {})).toEqual(PLAIN);
  expect(traitsOf([spindle('much')], {}).notKnown).toEqual(['spindle']);
  expect(traitsOf([spindle('')], {}).notKnown).toEqual(['spindle']);
  // From the rest of the refit just so.
  expect(traitsOf([axis('')], { Z: { vertical: { value: 1, from: '' } } }).drops).toEqual(['head']);
});

test('derived: the lathe: its cross slide drops and its chuck turns on, so the brake comes first, and why is said', () => {
  const lathe = { ...sample('carriage-works-lathe'), stop: null };
  const [first] = rankedPatterns(assess(lathe));
  expect(first!.pattern.id).toBe('vertical-axis');
  expect(first!.why).toMatch(/^X axis drops when nothing holds it: here its brake closes before the drive/);
  const locked = rankedPatterns(assess(lathe)).find(({ pattern }) => pattern.id === 'locked-door')!;
  expect(locked.why).toMatch(/goes on turning for \d+ s once its power is gone.*It has no brake/);
});

test('derived: what is laid out for a machine has a brake on the axes that drop and on no others', () => {
  for (const [name, brakes] of [
    ['carriage-works-lathe', 'X'],
    ['boatyard-mill', 'Z'],
  ] as const) {
    const moves = whatMoves(assess({ ...sample(name), stop: null }));
    expect(moves.filter(({ drops }) => drops).map(({ id }) => id)).toEqual([brakes]);
    for (const id of ['vertical-axis', 'limits-with-brake']) {
      const { motions } = PATTERNS.find((each) => each.id === id)!.make(moves);
      expect(Object.values(motions).flatMap((each) => (each.brake ? [each.id] : []))).toEqual([brakes]);
    }
  }
});

test('derived: safe torque off is there only where every drive that says so has it', () => {
  const refit = sample('boatyard-mill');
  const withDrives = (...channels: readonly string[]) =>
    torqueOffOf({
      ...refit,
      wiring: { ...refit.wiring, devices: {} },
      stop: {
        ...refit.stop!,
        elements: Object.fromEntries(
          channels.map((sto, n) => [`T${n}`, { id: `T${n}`, kind: 'drive', name: '', settings: { sto } }]),
        ),
      },
    });
  expect(withDrives('1', '2')).toBe(true);
  expect(withDrives('1', '0')).toBe(false);
  expect(withDrives()).toBeUndefined();
});
