import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../refit/types.ts';
import { baselineOf } from './baseline.ts';
import { circuitA, circuitBC } from './circuits.fixture.ts';
import { compileStop } from './compile.ts';
import { type Drawn, draw } from './draw.ts';
import { atOnce } from './pieces.ts';
import { racesOf, truthOf } from './truth.ts';

const base = (circuit: StopCircuit) => {
  const made = compileStop(circuit);
  if (!made.ok) throw new Error(made.problem.message);
  return baselineOf(made.value);
};
const changed = (circuit: StopCircuit, id: string, settings: Record<string, string>): StopCircuit => ({
  ...circuit,
  elements: {
    ...circuit.elements,
    [id]: { ...circuit.elements[id]!, settings: { ...circuit.elements[id]!.settings, ...settings } },
  },
});

describe('every act in every state', () => {
  test('derived: one contactor that holds itself: every row by hand', () => {
    const circuit = circuitA();
    const { rows, states, complete } = atOnce(truthOf(base(circuit)));
    expect(complete).toBe(true);
    // Power, S1 and S2 give eight states; with power on and S1 out, held or not while S2 is let go.
    expect(states).toBe(9);
    for (const { from, act, held, starts, stops } of rows) {
      const on =
        act === 'switch the power on' || (from.startsWith('power on') && act !== 'switch the power off');
      const s1 = act === 'press S1' || (from.includes('S1 pressed') && act !== 'pull S1 out');
      const s2 = act === 'press S2' || (from.includes('S2 pressed') && act !== 'let go of S2');
      const k1 = on && !s1 && (s2 || from.includes('K1 held'));
      expect(held.includes('K1'), `${from} / ${act}`).toBe(k1);
      expect(starts.length > 0, `${from} / ${act}`).toBe(k1 && !from.includes('K1 held'));
      expect(stops.length > 0, `${from} / ${act}`).toBe(!k1 && from.includes('K1 held'));
    }
  });

  test('derived: stop categories as the order of power and enable has it', () => {
    const circuit = circuitBC(true);
    const { rows } = atOnce(truthOf(base(circuit)));
    const press = rows.find(({ from, act }) => from.includes('X driven') && act === 'press S1')!;
    expect(press.stops[0]).toMatchObject({ motion: 'X', category: '0', torqueOff: expect.closeTo(0.02, 9) });
    expect(rows.some(({ unasked }) => unasked)).toBe(false);
  });

  test('derived: what never pulls in and what never changes is named', () => {
    const a = circuitA();
    const circuit: StopCircuit = {
      ...a,
      elements: { ...a.elements, K9: { id: 'K9', kind: 'relay', name: '', settings: {} } },
      wires: {
        ...a.wires,
        e1: { id: 'e1', from: 'K1.2', to: 'K9.13', cable: '' },
        e2: { id: 'e2', from: 'K9.14', to: 'D1.L', cable: '' },
        e3: { id: 'e3', from: 'K9.A2', to: 'G1.minus', cable: '' },
      },
    };
    const { neverOn, neverMoves } = atOnce(truthOf(base(circuit)));
    expect(neverOn).toEqual(['K9']);
    expect(neverMoves).toEqual(['K9 13-14']);
  });

  test('derived: a bound on states is kept and said', () => {
    const circuit = circuitBC(true);
    const { states, complete } = atOnce(truthOf(base(circuit), 4));
    expect([states, complete]).toEqual([4, false]);
  });
});

describe('races', () => {
  const two: readonly Drawn[] = [
    ['G1 supply', ''],
    ['S2 button', ''],
    ['K1 relay', '', { 'pick-up': '12 ms' }],
    ['K2 relay', '', { 'pick-up': '15 ms' }],
    ['T1 drive', '', { enable: 'no' }],
  ];
  // Each relay breaks the other's coil and holds itself.
  const runs = [
    'G1.plus S2.13 K1.13 K2.13',
    'S2.14 K1.51 K2.51',
    'K2.52 K1.A1',
    'K1.52 K2.A1',
    'K1.14 K1.A1',
    'K2.14 K2.A1',
    'K1.A2 K2.A2 G1.minus T1.N',
    'G1.plus K1.23',
    'K1.24 T1.L',
  ];
  const motions = [{ id: 'X', kind: 'axis' as const, name: 'X', drive: 'T1', brake: null, settings: {} }];

  test('derived: two relays that lock each other out: the quicker wins, and both are named', () => {
    const found = racesOf(base(draw({ pattern: null, elements: two, runs, motions })));
    expect([...new Set(found.map(({ mover }) => mover))].sort()).toEqual(['K1', 'K2']);
    expect(found.every(({ after }) => after === 'starting')).toBe(true);
  });

  test('derived: a start relay that lets go before the slower contactor has pulled in is a race', () => {
    expect(racesOf(base(circuitBC(true)))).toEqual([]);
    const hasty = changed(circuitBC(true), 'K3', { 'drop-out': '10 ms' });
    expect(racesOf(base(hasty)).map(({ mover }) => mover)).toContain('K2');
  });
});
