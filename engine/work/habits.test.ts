import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import { POLICY } from '../checks/policies.ts';
import type { Refit } from '../refit/types.ts';
import { judgeDrawn } from './drawn.ts';
import { HABITS, habitsOf } from './habits.ts';
import { runInStep } from './in-step.ts';
import { judgeOne } from './judge.ts';
import { workMachine, workMachineOf } from './machine.ts';
import { RPM, SPINDLE } from './spindle.fixture.ts';

const REFIT = { ...sample('carriage-works-lathe'), work: {} };
const machine = (policies: Readonly<Record<string, string>> = {}, spindle = SPINDLE) =>
  workMachine(assess({ ...REFIT, policies }), spindle);
const tap = (on: ReturnType<typeof machine>, settings: Readonly<Record<string, string>> = {}) => {
  const judged = judgeOne(on, {
    id: 'tap-1',
    kind: 'tap',
    name: '',
    settings: { thread: 'M8', depth: '16 mm', speed: '200 r/min', ...settings },
  });
  if (judged.detail?.kind !== 'tap') throw new Error('no tap');
  return { ...judged, detail: judged.detail };
};
const finding = (of: ReturnType<typeof tap>, check: string) =>
  of.findings.find((each) => each.check === check)!;

test('frozen: what is usual', () => {
  const { delay, bandwidth, look, rigid, worn, chips, count } = habitsOf({ ...REFIT, policies: {} });
  const found = [delay, bandwidth, look, rigid, worn, chips, count].map(({ value }) => value);
  for (const [at, value] of [0.02, 20, 1e-3, 0.1, 2, 1e-3, 10e-6].entries())
    expect(found[at]! / value).toBeCloseTo(1, 12);
  expect(delay.says).toBe(
    '20 ms (policy “time from an order to turn back until a spindle drive acts on it”, as usual)',
  );
});

test('derived: a drive that acts later lets the tap run on by speed times delay', () => {
  const before = tap(machine()).detail.reversal!;
  const after = tap(machine({ 'spindle-delay': '120 ms' })).detail.reversal!;
  expect(after.angle - before.angle).toBeCloseTo(0.1 * 200 * RPM, 9);
  expect(after.hole - before.hole).toBeCloseTo((0.1 * 200 * RPM * 1.25e-3) / (2 * Math.PI), 9);
});

test('derived: room for chips, what a rigid holder bears, a worn tap and the grain are as the refit says', () => {
  const usual = tap(machine());
  const own = tap(
    machine({ 'tap-chips': '3 mm', 'tap-rigid': '0.3', 'tap-worn': '1.5', 'thread-count': '20 µm' }),
  );
  expect(own.detail.reversal!.hole - usual.detail.reversal!.hole).toBeCloseTo(2e-3, 12);
  expect(finding(usual, 'in-step').there!.value).toBeCloseTo(0.1 * 1.25e-3, 12);
  expect(finding(own, 'in-step').there!.value).toBeCloseTo(0.3 * 1.25e-3, 12);
  expect(finding(usual, 'feedback').there!.value).toBeCloseTo(10e-6, 12);
  expect(finding(own, 'feedback').there!.value).toBeCloseTo(20e-6, 12);
  const { margin } = finding(usual, 'spindle-torque');
  const tight = tap(machine({ 'tap-worn': `${margin! * 1.01}` }));
  expect(finding(tight, 'spindle-torque').verdict).toBe('tight');
  expect(finding(tap(machine({ 'tap-worn': `${margin! * 0.99}` })), 'spindle-torque').verdict).toBe('fits');
});

test('derived: an axis trails longer by the time between looks', () => {
  const lag = (look: string) => machine({ 'control-look': look }).axes.get('Z')!.lag.value!;
  // It hears of an angle one look later, and holds it for a look.
  const more = lag('5 ms') - lag('1 ms');
  expect(more).toBeGreaterThan(0.9 * 4e-3);
  expect(more).toBeLessThan(2.1 * 4e-3);
});

test('a run in step says which policies it rests on, and which of them are the refit’s own', () => {
  const on = machine({ 'spindle-bandwidth': '5 1/s' });
  const answer = runInStep(on, tap(on));
  if ('says' in answer) throw new Error(answer.says);
  const said = answer.assumed.join(' ');
  for (const id of [HABITS.delay, HABITS.bandwidth, HABITS.look])
    expect(said).toContain(`policy “${POLICY.get(id)!.name}”`);
  expect(said).toContain(
    '5 1/s (policy “how quickly a spindle drive mends an error of its speed”, yours; usual is 20 1/s)',
  );
});

test.each(['', 'lots', '0', '-5 ms', '3 kg', '1e400 s', '__proto__'])(
  'what “%s” cannot be stays usual',
  (text) => {
    const { look } = habitsOf({ ...REFIT, policies: { 'control-look': text } });
    expect(look.value).toBe(1e-3);
    expect(look.says).toMatch(/as usual, for what you say cannot be/);
  },
);

test.each([
  ['control-look', '1e-9 s', 1e-4],
  ['control-look', '1000 s', 0.05],
  ['spindle-delay', '1e6 s', 2],
  ['spindle-bandwidth', '1e-6 1/s', 0.5],
  ['spindle-bandwidth', '1e9 1/s', 500],
])('%s of %s is beyond what can be reckoned with, and that is said', (policy, text, value) => {
  const on = machine({ [policy]: text });
  const [habit] = Object.values(on.habits).filter((each) => each.policy === policy);
  expect(habit!.value).toBe(value);
  expect(habit!.says).toMatch(/you say .* beyond/);
  const answer = runInStep(on, tap(on));
  if ('says' in answer) throw new Error(answer.says);
  expect(answer.of.run.trace.time.every(Number.isFinite)).toBe(true);
});

test('what is known of the spindle drive comes before habit, and its doubt is drawn', () => {
  const chain = REFIT.chains.find(({ kind }) => kind === 'spindle')!;
  const id = chain.places['spindle-drive']!.chosen!;
  const part = REFIT.parts[id]!;
  const quantity = (text: string) => ({ value: { kind: 'quantity', text }, basis: 'measured' }) as const;
  const refit: Refit = {
    ...REFIT,
    parts: {
      ...REFIT.parts,
      [id]: {
        ...part,
        facts: { ...part.facts, orderDelay: quantity('35 ± 10 ms'), speedLoop: quantity('8 1/s') },
      },
    },
    policies: { 'spindle-delay': '100 ms' },
  };
  const assessment = assess(refit);
  const on = workMachineOf(assessment);
  expect(on.habits.delay).toMatchObject({ value: 0.035, says: '35 ms (spindle drive, measured)' });
  expect(on.habits.bandwidth.says).toBe('8 1/s (spindle drive, measured)');
  const judged = tap(on);
  const [drawn] = judgeDrawn(assessment, on, [judged], { lanes: 50 });
  const overrun = drawn!.findings.find(({ check }) => check === 'spindle-stop')!;
  // Ten milliseconds at 200 r/min are a thirtieth of a turn.
  expect(overrun.marginRange![1] / overrun.marginRange![0]).toBeGreaterThan(1.01);
  const beyond = workMachineOf(
    assess({
      ...refit,
      parts: { ...refit.parts, [id]: { ...part, facts: { ...part.facts, orderDelay: quantity('9 s') } } },
    }),
  );
  expect(beyond.habits.delay.value).toBe(2);
  expect(beyond.habits.delay.says).toMatch(/beyond what can be reckoned with/);
});
