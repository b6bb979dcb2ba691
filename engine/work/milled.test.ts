import { describe, expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import { needsOf } from '../control/needs.ts';
import { cutThreadMilling } from '../handbook/cut-thread-milling.ts';
import type { Work } from '../refit/types.ts';
import { work as evaluated } from '../threads/dimensions.ts';
import { runInStep } from './in-step.ts';
import { judgeOne } from './judge.ts';
import { type WorkMachine, workMachine } from './machine.ts';
import { RPM, SPINDLE } from './spindle.fixture.ts';

const MILL = { ...sample('boatyard-mill'), work: {} };
const MACHINE = workMachine(assess(MILL), SPINDLE);
const judged = (settings: Readonly<Record<string, string>>, on: WorkMachine = MACHINE) => {
  const work: Work = { id: 'w', kind: 'thread', name: '', settings: { way: 'mill', ...settings } };
  return judgeOne(on, work);
};
const finding = (of: ReturnType<typeof judged>, check: string) =>
  of.findings.find((each) => each.check === check);

const GIVEN = {
  s: -1,
  d_w: 42e-3,
  d_b: 39.835e-3,
  D_c: 16e-3,
  z: 3,
  f_z: 0.05e-3,
  n: 1200 * RPM,
  P_h: 2e-3,
  alpha: Math.PI / 6,
  m: 1,
  kc11: 1.16e9,
  mc: 0.26,
  k_w: 1,
};

describe('the circle', () => {
  test('derived: the metal taken away in one round is the volume of the groove', () => {
    const { Q, t, A } = evaluated(cutThreadMilling, GIVEN);
    // Pappus: the area of the V times the way of its centre, which lies a third of the depth outside the bore.
    const depth = (42e-3 - 39.835e-3) / 2;
    expect(A).toBeCloseTo(depth ** 2 * Math.tan(Math.PI / 6), 15);
    expect(Q * t).toBeCloseTo(A * 2 * Math.PI * (39.835e-3 / 2 + depth / 3), 15);
  });

  test('derived: the chips of one round add up to the way of the teeth', () => {
    const { f_c, phi, h, R } = evaluated(cutThreadMilling, GIVEN);
    // By adding up: the chip at each angle of the arc is the feed times its sine, laid on the flank.
    let sum = 0;
    const steps = 20_000;
    for (let k = 0; k < steps; k++) sum += f_c * Math.sin((phi * (k + 0.5)) / steps);
    expect(h / ((sum / steps) * Math.sin(Math.PI / 6))).toBeCloseTo(1, 6);
    // At the end of the arc the cutter's circle meets the bore.
    const [x, y] = [R + 8e-3 * Math.cos(phi), 8e-3 * Math.sin(phi)];
    expect(Math.hypot(x, y)).toBeCloseTo(39.835e-3 / 2, 12);
  });

  test('derived: the climb of one round is the lead, and speed squared over radius the acceleration', () => {
    const { v_z, t, v, R, a } = evaluated(cutThreadMilling, GIVEN);
    expect(v_z * t).toBeCloseTo(2e-3, 12);
    expect(v * t).toBeCloseTo(2 * Math.PI * 13e-3, 12);
    expect(a).toBeCloseTo((4 * Math.PI ** 2 * R) / t ** 2, 12);
    // The edge goes round the groove in the time the middle goes round its circle.
    expect(0.05e-3 * 3 * 20 * t).toBeCloseTo(Math.PI * 42e-3, 9);
  });

  test('derived: outside the middle goes farther than the edge', () => {
    const { R, v, v_w } = evaluated(cutThreadMilling, { ...GIVEN, s: 1, d_w: 39.546e-3, d_b: 42e-3 });
    expect(R).toBeCloseTo((39.546e-3 + 16e-3) / 2, 12);
    expect(v / v_w).toBeCloseTo((39.546 + 16) / 39.546, 9);
  });
});

test('a thread that no spindle has to be followed for fits on a mill whose control follows none', () => {
  const one = judged({
    thread: 'M42x2',
    side: 'internal',
    length: '25 mm',
    material: 'grey-iron',
    cutter: '16 mm',
  });
  expect(finding(one, 'helix')!.verdict).toBe('fits');
  expect(one.findings.some(({ check }) => check.startsWith('threading'))).toBe(false);
  expect(one.findings.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
  expect(one.detail?.kind).toBe('milled');
  expect(runInStep(MACHINE, one)).toMatchObject({ says: expect.stringMatching(/does not run in step/) });
});

test('derived: twice the feed asks twice the speed and four times the acceleration of both axes', () => {
  const settings = {
    thread: 'M42x2',
    side: 'internal',
    material: 'brass',
    cutter: '16 mm',
    speed: '1000 r/min',
  };
  const [slow, fast] = [judged({ ...settings, feed: '0.02 mm' }), judged({ ...settings, feed: '0.04 mm' })];
  for (const axis of ['x', 'y']) {
    const asked = (of: typeof slow, check: string) => finding(of, `${check}-${axis}`)!.asked!.value;
    expect(asked(fast, 'circle-speed') / asked(slow, 'circle-speed')).toBeCloseTo(2, 9);
    expect(asked(fast, 'circle-acceleration') / asked(slow, 'circle-acceleration')).toBeCloseTo(4, 9);
  }
  // A single row takes a groove at a time: so many times less torque as there are rows.
  const single = judged({ ...settings, length: '20 mm', rows: '1' });
  const whole = judged({ ...settings, length: '20 mm' });
  const torque = (of: typeof slow) => finding(of, 'spindle-torque')!.asked!.value;
  expect(torque(whole) / torque(single)).toBeCloseTo(10, 6);
});

test.each([
  ['a cutter as large as the bore', { thread: 'M20', side: 'internal', cutter: '20 mm' }, 'cutter', 'fails'],
  ['a cutter nearly as large', { thread: 'M20', side: 'internal', cutter: '15 mm' }, 'cutter', 'tight'],
  ['no speed', { thread: 'M20', side: 'internal', speed: '0 r/min' }, 'standing', 'fails'],
  ['a taper', { thread: 'R 1/2', side: 'external' }, 'milled-taper', 'unknown'],
  [
    'far too fast',
    { thread: 'M42x2', side: 'internal', feed: '2 mm', speed: '2000 r/min' },
    'circle-acceleration-x',
    'fails',
  ],
] as const)('%s', (_, settings, check, verdict) => {
  expect(finding(judged(settings), check)!.verdict).toBe(verdict);
});

test('a lathe has no third axis, and what the control can nobody knows is unknown', () => {
  const lathe = workMachine(assess({ ...sample('carriage-works-lathe'), work: {} }), SPINDLE);
  const one = judged({ thread: 'M42x2', side: 'internal' }, lathe);
  expect(finding(one, 'axis-y')!.sentence).toMatch(/three axes; this machine has no Y/);
  expect(finding(one, 'helix')!.verdict).toBe('fails');
  const open = judged(
    { thread: 'M42x2', side: 'internal' },
    { ...MACHINE, coordinated: { value: null, needs: ['control.coordinated-axes'] } },
  );
  expect(finding(open, 'helix')).toMatchObject({ verdict: 'unknown', needs: ['control.coordinated-axes'] });
});

test('a milled thread asks the control for no spindle to be followed', () => {
  const thread = (settings: Readonly<Record<string, string>>) => ({
    't-1': { id: 't-1', kind: 'thread', name: '', settings: { thread: 'M42x2', ...settings } } as const,
  });
  const asks = (settings: Readonly<Record<string, string>>) =>
    needsOf(assess({ ...MILL, work: thread(settings) })).needs.some(({ id }) => id === 'threading-straight');
  expect(asks({})).toBe(true);
  expect(asks({ way: 'mill' })).toBe(false);
});

test('derived: a holder with float gives for the slip of a spindle that nothing reports', () => {
  const refit = { ...MILL, policies: { ...MILL.policies, 'spindle-slip': '10 %' } };
  const tap = (on: WorkMachine) => {
    const { detail } = judgeOne(on, {
      id: 't',
      kind: 'tap',
      name: '',
      settings: { thread: 'M6', depth: '12 mm', holder: 'floating', speed: '300 r/min' },
    });
    if (detail?.kind !== 'tap') throw new Error('no tap');
    return detail.reversal!;
  };
  const [none, some] = [
    tap(workMachine(assess({ ...refit, policies: { 'spindle-slip': '0' } }), SPINDLE)),
    tap(workMachine(assess(refit), SPINDLE)),
  ];
  expect(some.float - none.float).toBeCloseTo(0.1 * (12e-3 + some.overrun), 12);
});
