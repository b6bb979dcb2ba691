import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import type { Work } from '../refit/types.ts';
import { chartFor } from './chart.ts';
import { runInStep } from './in-step.ts';
import { inStepRows } from './in-step-rows.ts';
import { judgeOne } from './judge.ts';
import { workMachine, workMachineOf } from './machine.ts';
import { newWorkId } from './new.ts';
import { RPM, SPINDLE } from './spindle.fixture.ts';

const REFIT = { ...sample('carriage-works-lathe'), work: {} };
const MACHINE = workMachine(assess(REFIT), SPINDLE);
const judged = (kind: Work['kind'], settings: Readonly<Record<string, string>>) =>
  judgeOne(MACHINE, { id: `${kind}-1`, kind, name: '', settings });

test('derived: the run-in by formula is about what the whole axis of the lathe needs', () => {
  const thread = judged('thread', { thread: 'M20', length: '20 mm', speed: '300 r/min' });
  const answer = runInStep(MACHINE, thread);
  if ('says' in answer || answer.of.kind !== 'thread') throw new Error(JSON.stringify(answer));
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
  if ('says' in answer || answer.of.kind !== 'thread') throw new Error(JSON.stringify(answer));
  expect(answer.of.run.settledAt!).toBeLessThan(1.1 * answer.of.runIn);
});

test('derived: the overrun in time is that of the closed form, less what the tap itself brakes', () => {
  const tap = judged('tap', { thread: 'M8', depth: '30 mm', speed: '200 r/min' });
  const answer = runInStep(MACHINE, tap);
  if ('says' in answer || answer.of.kind !== 'tap') throw new Error(JSON.stringify(answer));
  if (tap.detail?.kind !== 'tap') throw new Error('no tap');
  const { run } = answer.of;
  expect(run.reached / RPM).toBeCloseTo(200, 0);
  expect(run.overTurn).toBeLessThan(tap.detail.reversal!.angle * 1.02);
  expect(run.overTurn).toBeGreaterThan(tap.detail.reversal!.angle * 0.7);
});

test('what cannot be simulated says why', () => {
  const thread = judged('thread', { thread: 'M20' });
  const why = (...of: Parameters<typeof runInStep>) => {
    const answer = runInStep(...of);
    return 'says' in answer ? answer.says : undefined;
  };
  expect(why({ ...MACHINE, spindle: null }, thread)).toMatch(/spindle/);
  expect(why(MACHINE, judged('thread', {}))).toMatch(/settings/);
  expect(
    why(MACHINE, judged('cut', { operation: 'tapping', material: 'c45', thread: 'M8', speed: '100 r/min' })),
  ).toMatch(/cut/);
  expect(why(MACHINE, judged('thread', { thread: 'M20', speed: '5 r/min' }))).toMatch(/No range/);
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

const withoutChuck = () =>
  assess({
    ...REFIT,
    chains: REFIT.chains.map((chain) =>
      chain.kind === 'spindle'
        ? { ...chain, places: { ...chain.places, chuck: { ...chain.places.chuck!, chosen: null } } }
        : chain,
    ),
  });

test('while the chuck is unknown no row of the chart has a speed, and the known limits are said all the same', () => {
  const machine = workMachineOf(withoutChuck());
  const tap = judgeOne(machine, {
    id: 'tap-1',
    kind: 'tap',
    name: '',
    settings: { thread: 'M8', speed: '9000 r/min' },
  });
  const thread = judgeOne(machine, { id: 't', kind: 'thread', name: '', settings: { thread: 'M8' } });
  const chart = chartFor(machine, [tap, thread])!;
  expect(chart.noPermission).toBe('no permission: the chuck’s limit is unknown');
  for (const { speed } of [...chart.rows, ...chart.points]) expect(speed).toBeNull();
  expect(chart.known.map(({ speed }) => Math.round(speed / RPM)).slice(0, 3)).toEqual([2170, 2292, 2500]);
  // What is known to be passed is passed, whatever the chuck allows.
  expect(tap.findings.find(({ check }) => check === 'speed')?.verdict).toBe('fails');
  expect(runInStep(machine, tap)).toMatchObject({
    needs: ['S.chuck'],
    says: expect.stringMatching(/S\.chuck/),
  });
});

test('derived: off its groove counts in the cut alone, and is at most what the run says', () => {
  const answer = runInStep(MACHINE, judged('thread', { thread: 'M20', length: '20 mm', speed: '300 r/min' }));
  if ('says' in answer || answer.of.kind !== 'thread') throw new Error(JSON.stringify(answer));
  const { runIn, run, length } = answer.of;
  const rows = inStepRows(answer);
  const counted = rows.filter(({ off }) => off !== null);
  expect(counted.length).toBeGreaterThan(100);
  expect(rows[0]!.off).toBeNull();
  expect(rows.at(-1)!.off).toBeNull();
  for (const { off, place } of counted) {
    expect(place).toBeGreaterThanOrEqual(runIn);
    expect(place).toBeLessThanOrEqual(runIn + length);
    expect(Math.abs(off!)).toBeLessThanOrEqual(run.worstPlace * (1 + 1e-9));
  }
});

test('ids of new work are never given twice', () => {
  const work = { 'tap-1': { id: 'tap-1', kind: 'tap', name: '', settings: {} } } as const;
  expect(newWorkId({ work }, 'tap')).toBe('tap-2');
  expect(newWorkId({ work }, 'cut')).toBe('cut-1');
});
