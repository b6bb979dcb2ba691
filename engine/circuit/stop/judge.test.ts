import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../refit/types.ts';
import { baselineOf } from './baseline.ts';
import { circuitA, circuitBC } from './circuits.fixture.ts';
import { compileStop } from './compile.ts';
import { type Judgement, judge } from './judge.ts';
import type { Model } from './model.ts';
import type { Fault } from './network.ts';

const model = (circuit: StopCircuit): Model => {
  const made = compileStop(circuit);
  if (!made.ok) throw new Error(made.problem.message);
  return made.value;
};
const node = (of: Model, name: string): number => {
  const at = of.nodes.indexOf(name);
  if (at < 0) throw new Error(name);
  return at;
};
const contact = (of: Model, id: string): number => {
  const at = of.contacts.findIndex((each) => each.id === id);
  if (at < 0) throw new Error(id);
  return at;
};
const mover = (of: Model, id: string): number => {
  const at = of.movers.findIndex((each) => each.id === id);
  if (at < 0) throw new Error(id);
  return at;
};
const touch = (of: Model, ...names: string[]): Fault => ({
  kind: 'touch',
  nodes: names.map((name) => node(of, name)),
});
const closed = (of: Model, id: string): Fault => ({ kind: 'contact-closed', contact: contact(of, id) });
const frame = (of: Model, name: string): Fault => ({ kind: 'touch', nodes: [node(of, name), of.frame] });

type Make = (of: Model) => readonly Fault[];
type Row = readonly [title: string, make: Make, a: string, b: string, c: string];

/** The letters of the analysis: D dangerous, L latent and undetected, N latent but detected, S stops or cannot start. */
const letter = ({ verdict }: Judgement): string =>
  ({ dangerous: 'D', unnoticed: 'L', noticed: 'N', stops: 'S' })[verdict];

const A = circuitA();
const B = circuitBC(false);
const C = circuitBC(true);

// '–' where the circuit has no such thing.
const ROWS: readonly Row[] = [
  ['1 main contact of K1 welds', (of) => [closed(of, 'K1 1-2')], 'D', 'L', 'N'],
  ['2 S1.1 does not open', (of) => [closed(of, 'S1 11-12')], 'D', 'L', 'N'],
  ['3 short across the two wires of S1.1', (of) => [touch(of, 'S1.11', 'S1.12')], 'D', 'L', 'N'],
  ['4 plus touches the coil feed of K1', (of) => [touch(of, 'F1.2', 'K1.A1')], 'D', 'L', 'N'],
  [
    '5 plus touches both coil feeds',
    (of) => [touch(of, 'F1.2', 'K1.A1', ...(of.nodes.includes('K2.A1') ? ['K2.A1'] : []))],
    'D',
    'D',
    'D',
  ],
  ['6 coil feed of K1 touches coil feed of K2', (of) => [touch(of, 'K1.A1', 'K2.A1')], '–', 'L', 'L'],
  ['7 coil feed of K1 to earth', (of) => [frame(of, 'K1.A1')], 'S', 'S', 'S'],
  ['10 coil of K1 open', (of) => [{ kind: 'stuck', mover: mover(of, 'K1'), at: 0 }], 'S', 'S', 'S'],
  ['10 supply lost', () => [{ kind: 'supply-lost', source: 0 }], 'S', 'S', 'S'],
  [
    '10 wire to the coil of K1 off',
    (of) => [
      {
        kind: 'wire-off',
        wire: of.wires.findIndex(({ a, b }) => a === node(of, 'K1.A2') || b === node(of, 'K1.A2')),
      },
    ],
    'S',
    'S',
    'S',
  ],
  ['11 hold contact of K1 welded', (of) => [closed(of, 'K1 13-14')], 'D', 'L', 'N'],
  ['12 S2 stuck', (of) => [{ kind: 'stuck', mover: mover(of, 'S2'), at: 1 }], 'D', 'D', 'D'],
  ['12 S2 bridged', (of) => [touch(of, 'S2.13', 'S2.14')], 'D', 'D', 'D'],
  ['13 mirror contact of K1 stuck closed', (of) => [closed(of, 'K1 51-52')], '–', '–', 'L'],
  ['14 K3 contact welds', (of) => [closed(of, 'K3 13-14')], '–', '–', 'N'],
  ['15 K1 and K2 both weld', (of) => [closed(of, 'K1 1-2'), closed(of, 'K2 1-2')], '–', 'D', 'D'],
];

describe('published: worked single-fault analysis of an emergency stop with one and with two contactors', () => {
  const models = { A: model(A), B: model(B), C: model(C) };
  const bases = { A: baselineOf(models.A), B: baselineOf(models.B), C: baselineOf(models.C) };
  test.each(ROWS)('row %s', (_title, make, a, b, c) => {
    for (const [name, wanted] of [
      ['A', a],
      ['B', b],
      ['C', c],
    ] as const) {
      if (wanted === '–') continue;
      const judged = judge(bases[name], make(models[name]));
      expect(letter(judged), `${name}: ${JSON.stringify(judged)}`).toBe(wanted);
    }
  });

  test('row 2: hidden again if the power is switched off and on before the next start', () => {
    expect(judge(bases.C, [closed(models.C, 'S1 11-12')]).hiddenByPower).toBe(true);
  });

  test('row 7 melts the fuse; row 8: with 0 V not earthed the same touch is not noticed', () => {
    expect(judge(bases.C, [frame(models.C, 'K1.A1')])).toMatchObject({ melted: ['F1'], atOnce: true });
    for (const circuit of [circuitA('no'), circuitBC(false, 'no'), circuitBC(true, 'no')]) {
      const of = model(circuit);
      expect(letter(judge(baselineOf(of), [frame(of, 'K1.A1')]))).toBe('L');
    }
  });

  test('row 9: contacts between coil and 0 V: one touch to earth pulls K1 in by itself', () => {
    const b = model(circuitBC(false, 'yes', true));
    const c = model(circuitBC(true, 'yes', true));
    expect(letter(judge(baselineOf(b), [frame(b, 'K1.A2')]))).toBe('L');
    const judged = judge(baselineOf(c), [frame(c, 'K1.A2')]);
    expect(letter(judged)).toBe('N');
    expect(judged.kept).toContain('K1');
    // One crushed cable grounding both channels.
    expect(letter(judge(baselineOf(c), [frame(c, 'K1.A2'), frame(c, 'K2.A2')]))).toBe('D');
  });

  test('row 6 becomes dangerous with a second fault 2', () => {
    const faults = [touch(models.C, 'K1.A1', 'K2.A1'), closed(models.C, 'S1 11-12')];
    expect(letter(judge(bases.C, faults))).toBe('D');
  });

  test('row 13: an ordinary auxiliary contact in place of a mirror contact notices nothing', () => {
    const ordinary = structuredClone(C);
    const k1 = ordinary.elements.K1!;
    const of = model({
      ...ordinary,
      elements: { ...ordinary.elements, K1: { ...k1, settings: { ...k1.settings, linked: 'no' } } },
    });
    expect(letter(judge(baselineOf(of), [closed(of, 'K1 1-2')]))).toBe('L');
  });

  test('row 14 is found at once: the forced contact of K3 keeps the enable off', () => {
    expect(judge(bases.C, [closed(models.C, 'K3 13-14')]).atOnce).toBe(true);
  });
});
