import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess, drawScopes, withFact } from '../assess/index.ts';
import { resolve } from '../assess/resolve.ts';
import { fact } from '../checks/refs.ts';
import { type FactId, factSpec, type PlaceId } from '../parts/index.ts';
import { parseQuantity } from '../quantity/index.ts';
import type { Refit } from '../refit/types.ts';
import { judgeDrawn } from './drawn.ts';
import { judgeOne } from './judge.ts';
import { machineDrawn, type WorkMachine, workMachineOf } from './machine.ts';

const MILL = sample('boatyard-mill');

const drawn = (refit: Refit, id: string, lanes = 400) => {
  const assessment = assess(refit);
  const machine = workMachineOf(assessment);
  return judgeDrawn(assessment, machine, [judgeOne(machine, refit.work[id]!)], { lanes })[0]!;
};
const finding = (of: ReturnType<typeof drawn>, check: string) =>
  of.findings.find((each) => each.check === check)!;

test('derived: where the force of the cut is the only great doubt, the chance is the share of it that leaves enough', () => {
  const before = judgeOne(workMachineOf(assess(MILL)), MILL.work['thread-1']!);
  const margin = before.findings.find(({ check }) => check === 'spindle-torque')!.margin!;
  const half = 0.9;
  const one = drawn({ ...MILL, policies: { ...MILL.policies, 'cutting-doubt': '90 %' } }, 'thread-1');
  const { chance, marginRange, verdict } = finding(one, 'spindle-torque');
  // Evenly likely from 0.1 to 1.9 of what the table says: enough up to the margin.
  expect(margin).toBeGreaterThan(1);
  expect(chance!).toBeCloseTo((margin - 1 + half) / (2 * half), 1);
  // Two and a half of a hundred ask more than 1.855 times as much.
  expect(marginRange![0] / (margin / (1 + 0.95 * half))).toBeCloseTo(1, 1);
  expect(verdict).toBe('tight');
});

test('derived: a machine as drawn is the machine of a refit whose facts are what was drawn', () => {
  const assessment = assess(MILL);
  const machine = workMachineOf(assessment);
  const scopes = drawScopes(assessment, (scopeFor) => machineDrawn(machine, scopeFor), { lanes: 5 });
  const paths = scopes.sources.filter((source) => !source.includes(' '));
  expect(paths.length).toBeGreaterThan(10);
  for (const lane of [0, 4]) {
    let refit: Refit = MILL;
    for (const path of paths) {
      const [place, name] = path.split('.').slice(-2) as [PlaceId, FactId<PlaceId>];
      const chain = MILL.chains.find(({ id }) => path.startsWith(`${id}.`)) ?? null;
      const value = resolve(scopes.at(lane)(chain), fact(place, name));
      const spec = factSpec(place, name);
      if (value.state !== 'known' || spec?.kind !== 'quantity') throw new Error(path);
      const unit = spec.unit === '1' ? '' : ` ${spec.unit}`;
      const one = parseQuantity(`1${unit}`, spec.unit);
      if (!one.ok) throw new Error(one.problem.message);
      const text = `${value.value / one.value.value}${unit}`;
      refit = withFact(refit, path, { kind: 'quantity', text });
    }
    const set = workMachineOf(assess(refit));
    const own = machineDrawn(machine, scopes.at(lane));
    // What rests on facts alone; where a table stands in for a fact, the table is drawn as well.
    const inertia = ({ spindle }: WorkMachine): number => spindle!.ranges[0]!.inertia;
    const thrust = ({ axes }: WorkMachine): number => axes.get('X')!.thrust.value!;
    const bearing = ({ spindle }: WorkMachine): number =>
      spindle!.limits.find(({ by }) => by === 'bearing')!.speed!;
    for (const of of [inertia, thrust, bearing]) {
      expect(of(own) / of(set)).toBeCloseTo(1, 9);
      expect(Math.abs(of(own) / of(machine) - 1)).toBeGreaterThan(1e-6);
    }
  }
});

test('a link that fits by its numbers but too seldom by its draws is tight, and says how likely it is', () => {
  const one = drawn(MILL, 'cut-2');
  const push = finding(one, 'thrust-z');
  expect(push.margin!).toBeGreaterThan(1);
  expect(push.chance!).toBeGreaterThan(0.8);
  expect(push.chance!).toBeLessThan(0.95);
  expect(push.verdict).toBe('tight');
  expect(one.summary).toMatch(/chance that it fits is \d\d %/);
  expect(one.draws!.lanes).toBe(400);
  expect(one.draws!.chance).toBeLessThanOrEqual(push.chance!);
});

test('the same seed draws the same; what nothing doubtful touches has no chance of its own', () => {
  const [one, again] = [drawn(MILL, 'tap-2', 50), drawn(MILL, 'tap-2', 50)];
  expect(again).toEqual(one);
  for (const { check, chance, marginRange } of one.findings)
    if (check === 'travel' || check === 'feedback')
      expect([chance, marginRange]).toEqual([undefined, undefined]);
});

test('derived: a speed left open is drawn at the speed that was planned, so a limit that is sure stays sure', () => {
  const refit: Refit = {
    ...MILL,
    work: {
      'tap-9': {
        id: 'tap-9',
        kind: 'tap',
        name: '',
        settings: { thread: 'M6', holder: 'floating', material: 'brass' },
      },
    },
  };
  const one = drawn(refit, 'tap-9', 100);
  const speed = finding(one, 'speed');
  expect(speed.margin).toBeCloseTo(1, 9);
  // On the mill the bearing's limit is in doubt and lies far above; the drive's is set and has none.
  expect(speed.chance ?? 1).toBe(1);
});

test('the belt range stays the one it was planned in: a draw in which another stops sooner does not change the belt', () => {
  const push = finding(drawn(MILL, 'tap-2', 200), 'spindle-torque');
  // The neighbouring range has a quarter of the torque at that speed.
  expect(push.marginRange![0]).toBeGreaterThan(0.8 * push.margin!);
});

test('a range that is kept takes nothing from the speed another range allows', () => {
  const speed = finding(drawn(MILL, 'tap-2', 200), 'speed');
  const [least, most] = speed.marginRange ?? [speed.margin!, speed.margin!];
  expect(least).toBeLessThanOrEqual(speed.margin! * (1 + 1e-9));
  expect(most).toBeGreaterThanOrEqual(speed.margin! * (1 - 1e-9));
});
