import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import type { Work } from '../refit/types.ts';
import { chartFor } from './chart.ts';
import { runInStep } from './in-step.ts';
import { judgeOne } from './judge.ts';
import { workMachine } from './machine.ts';
import { newWorkId } from './new.ts';
import { RPM, SPINDLE } from './spindle.fixture.ts';

const REFIT = { ...sample('carriage-works-lathe'), work: {} };
const MACHINE = workMachine(assess(REFIT), SPINDLE);
const judged = (kind: Work['kind'], settings: Readonly<Record<string, string>>) =>
  judgeOne(MACHINE, { id: `${kind}-1`, kind, name: '', settings });

test('derived: the run-in by formula is about what the whole axis of the lathe needs', () => {
  const thread = judged('thread', { thread: 'M20', length: '20 mm', speed: '300 r/min' });
  const answer = runInStep(MACHINE, thread);
  if (typeof answer === 'string' || answer.of.kind !== 'thread') throw new Error(String(answer));
  const { run, runIn } = answer.of;
  expect(run.faults).toEqual([]);
  // The formula takes the worst gain of three trials at other speeds: it may ask for more room, not for much less.
  expect(run.settledAt!).toBeLessThan(1.1 * runIn);
  expect(run.settledAt!).toBeGreaterThan(0.3 * runIn);
  expect(run.trace.time.length).toBeLessThan(1000);
});

test('derived: a stepper settles within the run-in of its trials too', () => {
  const mill = workMachine(assess({ ...sample('boatyard-mill'), work: {} }), SPINDLE);
  const thread = judgeOne(mill, {
    id: 't',
    kind: 'thread',
    name: '',
    settings: { thread: 'M20x1.5', length: '8 mm', speed: '400 r/min' },
  });
  const answer = runInStep(mill, thread);
  if (typeof answer === 'string' || answer.of.kind !== 'thread') throw new Error(String(answer));
  expect(answer.of.run.settledAt!).toBeLessThan(1.1 * answer.of.runIn);
});

test('derived: the overrun in time is that of the closed form, less what the tap itself brakes', () => {
  const tap = judged('tap', { thread: 'M8', depth: '30 mm', speed: '200 r/min' });
  const answer = runInStep(MACHINE, tap);
  if (typeof answer === 'string' || answer.of.kind !== 'tap') throw new Error(String(answer));
  if (tap.detail?.kind !== 'tap') throw new Error('no tap');
  const { run } = answer.of;
  expect(run.reached / RPM).toBeCloseTo(200, 0);
  expect(run.overTurn).toBeLessThan(tap.detail.reversal!.angle * 1.02);
  expect(run.overTurn).toBeGreaterThan(tap.detail.reversal!.angle * 0.7);
});

test('what cannot be simulated says why', () => {
  const thread = judged('thread', { thread: 'M20' });
  expect(runInStep({ ...MACHINE, spindle: null }, thread)).toMatch(/spindle/);
  expect(runInStep(MACHINE, judged('thread', {}))).toMatch(/settings/);
  expect(
    runInStep(
      MACHINE,
      judged('cut', { operation: 'tapping', material: 'c45', thread: 'M8', speed: '100 r/min' }),
    ),
  ).toMatch(/cut/);
  expect(runInStep(MACHINE, judged('thread', { thread: 'M20', speed: '5 r/min' }))).toMatch(/No range/);
});

test('derived: the chart falls with the lead once the axis limits it, and holds every wanted thread', () => {
  const all = [judged('thread', { thread: 'M20' }), judged('tap', { thread: 'M8' })];
  const chart = chartFor(MACHINE, all)!;
  const speeds = chart.rows.map(({ speed }) => speed!);
  expect(speeds).toEqual([...speeds].sort((a, b) => b - a));
  const coarse = chart.rows.at(-1)!;
  expect(coarse.by).toMatch(/axis/);
  expect(coarse.speed! / RPM).toBeCloseTo((0.9 * 8000) / 24, 3);
  expect(chart.points.map(({ name }) => name)).toEqual(['M20', 'M8']);
  expect(chartFor(MACHINE, all, 'Q')).toBeNull();
});

test('ids of new work are never given twice', () => {
  const work = { 'tap-1': { id: 'tap-1', kind: 'tap', name: '', settings: {} } } as const;
  expect(newWorkId({ work }, 'tap')).toBe('tap-2');
  expect(newWorkId({ work }, 'cut')).toBe('cut-1');
});
