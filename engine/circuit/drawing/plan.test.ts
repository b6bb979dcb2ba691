import { expect, test } from 'vitest';
import { blankRefit } from '../../refit/blank.ts';
import { madeNetwork, SMALL } from '../lists/read.fixture.ts';
import { symbolsOf } from './file.ts';
import { layOut } from './layout.ts';
import { libraryLayouter } from './library.ts';
import { overlaps } from './overlap.fixture.ts';
import { planOf } from './plan.ts';

const made = blankRefit({ id: 'a', name: 'Lathe', machine: 'lathe', axes: ['X'] });
if (!made.ok) throw new Error(made.problem.message);
const LATHE = made.value;
const plan = planOf(LATHE, SMALL);
const circuitOf = (number: string) =>
  plan.wires.find(({ label }) => label.split(' · ')[0] === number)!.circuit;

test('derived: mains up to the drive, its motor, its switch and the coil stand in their own diagrams', () => {
  expect(circuitOf('1')).toBe('power');
  expect(circuitOf('2')).toBe('power');
  expect(circuitOf('3')).toBe('chain-X');
  expect(circuitOf('7')).toBe('signals');
  // What a signal works is drawn with it, its way back too.
  expect(circuitOf('9')).toBe('signals');
  expect(circuitOf('10')).toBe('control');
  expect(circuitOf('12')).toBe('power');
  expect(circuitOf('13')).toBe('chain-X');
  expect(plan.circuits.map(({ title }) => title)).toEqual([
    'Mains and power',
    'Control voltage',
    'X axis',
    'Inputs and outputs',
  ]);
});

test('derived: what a terminal is decides its symbol; poles lie between their two ends', () => {
  const symbols = (id: string) => plan.devices.find((device) => device.id === id)!.groups;
  expect(symbols('K1')).toEqual([
    { symbol: 'contact-main', poles: [['K1.1', 'K1.2']] },
    { symbol: 'coil', poles: [['K1.A1', 'K1.A2']] },
  ]);
  expect(symbols('S10')[0]!.symbol).toBe('limit-switch');
  expect(symbols('G1')[0]!.symbol).toBe('power-supply');
  expect(symbols('T1')[0]!.symbol).toBe('drive');
  expect(symbols('M1')[0]!.symbol).toBe('motor');
  expect(symbols('X0')[0]).toEqual({ symbol: 'earth', points: ['X0.1'] });
  expect(symbols('X1')[0]!.symbol).toBe('terminal');
  expect(symbolsOf(plan)).toContain('opto');
});

test('derived: earth and a pole with three wires are rails, a pole with two is not', () => {
  const rail = (number: string) => plan.wires.find(({ label }) => label.split(' · ')[0] === number)!.rail;
  expect(rail('12')).toEqual({ name: 'Earth (PE)', role: 'earth' });
  expect(rail('9')).toEqual({ name: '0 V', role: 'returns' });
  expect(rail('4')).toBeNull();
  expect(rail('7')).toBeNull();
});

test('derived: the plan is drawn without anything on anything, dangling wires too', async () => {
  const dangling = madeNetwork(
    [{ id: 'K1', kind: 'box', terminals: { 1: { kind: 'joint' } } }],
    [
      ['K1.1', 'gone.5'],
      ['gone.1', 'gone.2'],
    ],
  );
  for (const read of [SMALL, dangling]) {
    const { sheets } = (await layOut(planOf(LATHE, read), libraryLayouter()))!;
    expect(sheets.flatMap(({ clusters }) => clusters.flatMap(({ laid }) => overlaps(laid)))).toEqual([]);
    expect(sheets.length).toBeGreaterThan(0);
  }
});
