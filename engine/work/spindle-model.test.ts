import { expect, test } from 'vitest';
import { assess } from '../assess/index.ts';
import { FACTS, refitWith } from '../assess/spindle.fixture.ts';
import { blankRefit } from '../refit/blank.ts';
import type { Refit } from '../refit/index.ts';
import { spindleModel, spindleSetting } from './spindle-model.ts';
import type { SpindleModel, TorqueAtSpeed } from './types.ts';

const RPM = Math.PI / 30;
const whole = refitWith(FACTS);

function modelOf(refit: Refit): SpindleModel {
  const model = spindleModel(refit);
  if (!model.ok) throw new Error(model.problem.message);
  return model.value;
}

/** Straight between the points, as the readers of the model do it. */
function at(curve: readonly TorqueAtSpeed[], speed: number): number {
  const k = curve.findIndex((point) => point.speed >= speed);
  const [a, b] = [curve[k - 1], curve[k]!];
  if (!a) return b.torque;
  return a.torque + ((b.torque - a.torque) * (speed - a.speed)) / (b.speed - a.speed);
}

const known = modelOf(whole);
const [slow, fast] = known.ranges as [SpindleModel['ranges'][0], SpindleModel['ranges'][0]];
/** 2.2 kW at 1430 r/min. */
const RATED = 2200 / (1430 * RPM);

test('derived: ranges slowest first, with their ratio, speeds and inertia (worked by hand)', () => {
  expect([slow.ratio, fast.ratio]).toEqual([2, 0.75]);
  // 70 Hz: 2100 r/min less 70 of slip.
  expect(fast.highest / RPM).toBeCloseTo(2030 / 0.75, 6);
  expect(slow.highest / RPM).toBeCloseTo(2030 / 2, 6);
  expect(slow.lowest / RPM).toBeCloseTo((0.06 * 1430) / 2, 6);
  expect(slow.inertia).toBeCloseTo(0.02 + 0.03 + 0.01 + 0.01 + 0.008 * 4, 12);
  expect(fast.inertia).toBeCloseTo(0.07 + 0.008 * 0.5625, 12);
  expect(fast.drag).toBe(1);
});

test('derived: torque for hours and for seconds, at the fan’s knee, at the base speed and above it', () => {
  const level = RATED * 2 * 0.94;
  expect(at(slow.continuous, 400 * RPM)).toBeCloseTo(level, 6);
  // A quarter of 1430 r/min, behind 2 : 1.
  expect(at(slow.continuous, 170 * RPM)).toBeCloseTo(level / 2, 6);
  expect(at(slow.continuous, 180 * RPM)).toBeCloseTo(level, 6);
  // The drive gives 15 A for a minute, the motor takes 8.6 A.
  expect(at(slow.peak, 300 * RPM)).toBeCloseTo((level * 15) / 8.6, 6);
  const top = fast.highest;
  const left = 1430 / 2030;
  expect(at(fast.continuous, top)).toBeCloseTo(RATED * 0.75 * 0.94 * left, 6);
  expect(at(fast.peak, top)).toBeCloseTo(RATED * 0.75 * 0.94 * 0.75 * 2.5 * left ** 2, 6);
});

test('derived: straight lines between the points stay within two thousandths of the curve', () => {
  for (const range of known.ranges) {
    const base = (1430 / range.ratio) * RPM;
    for (let k = 1; k < 400; k++) {
      const speed = (range.highest * k) / 400;
      const left = Math.min(1, base / speed);
      const peak =
        Math.min(((RATED * 15) / 8.6) * left, RATED * 0.75 * 2.5 * left * left) * range.ratio * 0.94;
      expect(Math.abs(at(range.peak, speed) / peak - 1)).toBeLessThan(2e-3);
      const braking = Math.min(peak, 390 ** 2 / 60 / speed);
      expect(Math.abs(at(range.braking, speed) / braking - 1)).toBeLessThan(2e-3);
    }
  }
});

test('braking by kind of drive: whole, alone a tenth of the rated torque, across the mains nothing', () => {
  const alone = modelOf(refitWith({ 'S.spindle-drive.braking': 'none' }, whole));
  expect(at(alone.ranges[0]!.braking, 100 * RPM)).toBeCloseTo(0.1 * RATED * 2 * 0.94, 6);
  const line = modelOf(refitWith({ 'S.spindle-drive.type': 'line', 'site.lineVoltage': '230 V' }, whole));
  expect(line.ranges.every(({ braking }) => braking.every(({ torque }) => torque === 0))).toBe(true);
  expect(line.ranges.map(({ lowest, highest }) => lowest / highest)).toEqual([1, 1]);
});

test('limits by name; an unmarked chuck has none, and one that is not there sets none', () => {
  const speeds = Object.fromEntries(known.limits.map(({ by, speed }) => [by, speed]));
  expect(speeds.chuck! / RPM).toBeCloseTo(3500, 6);
  expect(speeds.bearing! / RPM).toBeCloseTo(3000, 6);
  expect(speeds.pulley! / RPM).toBeCloseTo(4500, 6);
  expect(speeds.motor! / RPM).toBeCloseTo(4000, 6);
  expect(speeds.drive! / RPM).toBeCloseTo(2030 / 0.75, 6);
  expect(speeds.jaws! / RPM).toBeCloseTo(4968.453, 3);
  // 100 kHz over 1024 lines.
  expect(speeds.feedback! / RPM).toBeCloseTo((60 * 100e3) / 1024, 6);
  const unmarked = modelOf(refitWith({ 'S.chuck.topSpeed': 'unknown' }, whole));
  expect(unmarked.limits.find(({ by }) => by === 'chuck')).toEqual({ by: 'chuck', speed: null });
  const bare = modelOf(refitWith({ 'S.chuck': 'none', 'S.belts.type': 'direct' }, whole));
  expect(bare.limits.map(({ by }) => by)).toEqual(['bearing', 'motor', 'drive', 'feedback']);
  expect(bare.ranges).toHaveLength(1);
});

test('feedback as whole turns; what slips or only tells the speed is none', () => {
  expect(known.feedback).toEqual({
    lines: 1024,
    turns: { encoder: 1, spindle: 1 },
    index: true,
    highestFrequency: 100e3,
  });
  const feedback = (facts: Readonly<Record<string, string>>) => modelOf(refitWith(facts, whole)).feedback;
  expect(feedback({ 'S.spindle-feedback.encoderTeeth': '28 teeth' })?.turns).toEqual({
    encoder: 9,
    spindle: 7,
  });
  expect(feedback({ 'S.spindle-feedback.driven': 'v-belt' })).toBeNull();
  expect(feedback({ 'S.spindle-feedback.type': 'tacho' })).toBeNull();
  expect(feedback({ 'S.spindle-feedback': 'none' })).toBeNull();
  const pulse = feedback({
    'S.spindle-feedback.type': 'pulse',
    'S.spindle-feedback.driven': 'spindle',
    'S.spindle-feedback.lines': 'unknown',
  });
  expect(pulse).toMatchObject({ lines: 1, index: true });
  expect(feedback({ 'S.spindle-feedback.driven': 'motor' })).toMatchObject({
    index: false,
    turns: { encoder: 0.75, spindle: 1 },
  });
});

test('what is unknown is named; a refit without a spindle says so', () => {
  const blank = blankRefit({ id: 'b', name: 'b', machine: 'lathe', axes: ['X'], spindle: true });
  if (!blank.ok) throw new Error();
  const setting = spindleSetting(assess(blank.value));
  expect(setting.model).toBeNull();
  expect(setting.needs).toContain('S.spindle-motor.power');
  expect(setting.says).toContain('power on the plate of the spindle motor');
  const gone = spindleModel(refitWith({ 'S.belts.ratio2': 'unknown' }, whole));
  expect(gone.ok).toBe(false);
  if (!gone.ok) expect(gone.problem.message).toContain('second range');
  const none = blankRefit({ id: 'b', name: 'b', machine: 'lathe', axes: ['X'] });
  if (!none.ok) throw new Error();
  const without = spindleModel(none.value);
  expect(!without.ok && without.problem.message).toContain('no spindle yet');
  const other = spindleModel(whole, { chain: 'Q' });
  expect(!other.ok && other.problem.message).toContain('no spindle called “Q”');
});

test('hostile facts in a file never make a model of nonsense', () => {
  for (const text of ['0 r/min', '-5 r/min', '1e400 r/min', 'fast', '5 kg', ''.padEnd(200, '9')]) {
    const part = whole.parts['s-spindle-motor']!;
    const hostile: Refit = {
      ...whole,
      parts: {
        ...whole.parts,
        's-spindle-motor': {
          ...part,
          facts: { ...part.facts, speed: { value: { kind: 'quantity', text }, basis: 'plate' } },
        },
      },
    };
    const model = spindleModel(hostile);
    expect(model.ok, text).toBe(false);
    if (!model.ok) expect(model.problem.message).not.toMatch(/NaN|undefined|Infinity/);
  }
});
