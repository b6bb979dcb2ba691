/** Whatever stands in a setting: an answer with a sentence, never a number that is none, never a throw. */
import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import type { Work } from '../refit/types.ts';
import { chartFor } from './chart.ts';
import { WORK_FIELDS, type WorkKind } from './fields.ts';
import { runInStep } from './in-step.ts';
import { judgeOne } from './judge.ts';
import { workMachine, workMachineOf } from './machine.ts';
import { SPINDLE } from './spindle.fixture.ts';

const REFIT = { ...sample('carriage-works-lathe'), work: {} };
const MACHINE = workMachine(assess(REFIT), SPINDLE);

const HOSTILE = [
  '   ',
  '0',
  '-5 mm',
  '1e308 m',
  '1e-308 mm',
  'NaN',
  'Infinity mm',
  '5 kg',
  '5 mm 3 mm',
  '__proto__',
  'constructor',
  'a\u0000b',
  '\ud800',
  'x'.repeat(10_000),
  '999999999 r/min',
  '0.0000001 r/min',
  '½',
  'M1e9',
  '<script>',
];

const USUAL: Readonly<Record<WorkKind, Readonly<Record<string, string>>>> = {
  thread: { thread: 'M20x1.5', length: '20 mm', speed: '300 r/min' },
  tap: { thread: 'M8', depth: '16 mm', hole: '30 mm', speed: '200 r/min' },
  cut: {
    operation: 'turning',
    material: 'c45',
    diameter: '60 mm',
    depth: '2 mm',
    feed: '0.2 mm',
    speed: '120 m/min',
  },
};

function sound(of: unknown, where: string): void {
  if (typeof of === 'number') expect(Number.isNaN(of), where).toBe(false);
  else if (typeof of === 'string') expect(of, where).not.toMatch(/NaN|undefined|\[object/);
  else if (typeof of === 'object' && of !== null)
    for (const [key, each] of Object.entries(of)) sound(each, `${where}.${key}`);
}

for (const kind of ['thread', 'tap', 'cut'] as const)
  test(`every setting of a ${kind} takes whatever is typed`, () => {
    const names = [...WORK_FIELDS[kind].map(({ key }) => key), 'nonsense', '__proto__', 'toString'];
    for (const name of names)
      for (const text of HOSTILE) {
        const settings = Object.assign(Object.create(null), USUAL[kind], { [name]: text });
        const work: Work = { id: `${kind}-1`, kind, name: '', settings };
        const found = judgeOne(MACHINE, work);
        // The settings themselves may hold anything; what is said about them may not.
        sound(
          found.findings.map(({ sentence, because, asked, there, margin }) => ({
            sentence: sentence.replaceAll(text, ''),
            because,
            asked,
            there,
            margin,
          })),
          `${name}=${text.slice(0, 20)}`,
        );
        expect(found.summary.length, `${name}=${text.slice(0, 20)}`).toBeLessThan(1000);
      }
  }, 120_000);

test('a blank machine answers everything with what it waits for', () => {
  const blank = { ...REFIT, places: {}, chains: [], parts: {} };
  const machine = workMachineOf(assess(blank));
  for (const kind of ['thread', 'tap', 'cut'] as const) {
    const found = judgeOne(machine, { id: 'w', kind, name: '', settings: USUAL[kind] });
    expect(['fails', 'unknown']).toContain(found.verdict);
    sound(found.findings, kind);
    expect(runInStep(machine, found)).toHaveProperty('says');
  }
  expect(chartFor(machine)).toBeNull();
});
