import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../refit/types.ts';
import { analyseStop, type StopAnalysis } from './analyse.ts';
import { sayStopAnswer, stopAnswer } from './answer.ts';
import { circuitBC } from './circuits.fixture.ts';
import { judge } from './judge.ts';
import { PATTERNS } from './patterns/index.ts';

const look = (circuit: StopCircuit): StopAnalysis => {
  const found = analyseStop(circuit);
  if (!found.ok) throw new Error(found.problem.message);
  return found.value;
};
const made = (id: string): StopCircuit =>
  PATTERNS.find((each) => each.id === id)!.make([{ id: 'X', kind: 'axis', name: 'table' }]);
const rewired = (circuit: StopCircuit, wire: string, ends: Partial<StopCircuit['wires'][string]>) => ({
  ...circuit,
  wires: { ...circuit.wires, [wire]: { ...circuit.wires[wire]!, ...ends } },
});
const wireOf = ({ wires }: StopCircuit, end: string): string =>
  Object.values(wires).find(({ from, to }) => from === end || to === end)!.id;

describe('what takes the ground from under the other answers stands first', () => {
  test('derived: a relay whose own contact lies before its coil: chatter first, nothing is answered with yes, the whole fails', () => {
    const two = made('two-contactors');
    const k3 = two.elements.K3!;
    const more = {
      ...two,
      elements: { ...two.elements, K3: { ...k3, settings: { ...k3.settings, nc: '2' } } },
    };
    const id = wireOf(more, 'K3.A1');
    const circuit = {
      ...rewired(more, id, { to: 'K3.61' }),
    };
    const chattering = {
      ...circuit,
      wires: { ...circuit.wires, w99: { id: 'w99', from: 'K3.62', to: 'K3.A1', cable: '' } },
    };
    const found = look(chattering);
    expect(found.findings[0]!.id).toBe('stop.rest');
    expect(found.findings[0]!.sentence).toMatch(/^K3 chatters/);
    const resting = found.findings.filter(
      ({ id: of }) => !['stop.emergency', 'stop.reach', 'stop.torque-off'].includes(of),
    );
    expect(resting.length).toBeGreaterThan(4);
    for (const { id: of, verdict } of resting) expect(['fails', 'unknown'], of).toContain(verdict);
    const answer = stopAnswer(found);
    expect(answer.verdict).toBe('fails');
    expect(sayStopAnswer(answer)).toMatch(/^K3 chatters.*no other answer counts/);
    // Without the contact before its coil the same circuit comes to rest.
    expect(look(two).findings.map(({ id: of }) => of)).not.toContain('stop.rest');
  });

  test('derived: a relay that lets go as fast as the contactors pull in makes a race of the start: no answer rests on luck', () => {
    const two = made('two-contactors');
    const k3 = two.elements.K3!;
    const racing = look({
      ...two,
      elements: { ...two.elements, K3: { ...k3, settings: { ...k3.settings, 'drop-out': '13 ms' } } },
    });
    if (racing.base.runs.length === 0) throw new Error('it does not start at all');
    expect(racing.races.length).toBeGreaterThan(0);
    expect(racing.findings[0]!.id).toBe('stop.races');
    expect(racing.findings.filter(({ verdict, id }) => verdict === 'fits' && id !== 'stop.reach')).toEqual(
      [],
    );
    expect(stopAnswer(racing).verdict).toBe('fails');
  });

  test('derived: a contactor that never pulls in, beside the way of the power: what faults do is not known', () => {
    const safe = made('safety-relay');
    const found = look({
      ...safe,
      elements: {
        ...safe.elements,
        K9: { id: 'K9', kind: 'relay', name: '', settings: { nc: '1', no: '0' } },
      },
      wires: {
        ...safe.wires,
        w91: { id: 'w91', from: 'F1.2', to: 'K9.51', cable: '' },
        w92: { id: 'w92', from: 'K9.52', to: 'U1.23', cable: '' },
      },
    });
    expect(found.findings[0]).toMatchObject({ id: 'stop.idle', verdict: 'fails' });
    expect(found.findings[0]!.sentence).toMatch(/K9 never pulls in; contact K9 51-52 never changes/);
    const verdicts = Object.fromEntries(found.findings.map(({ id, verdict }) => [id, verdict]));
    expect(verdicts).toMatchObject({
      'stop.runs': 'fits',
      'stop.faults': 'unknown',
      'stop.unnoticed': 'unknown',
    });
  });
});

describe('a fault that nobody is told of counts together with the next one', () => {
  test('derived: the named next fault does end stopping, tried again; without a mirror contact that fails', () => {
    const found = look(circuitBC(false));
    const welded = found.faults.find(({ fault }) => fault.id === 'K1 welded')!;
    expect(welded.judged.verdict).toBe('unnoticed');
    expect(welded.says).toContain(`the next fault ends stopping: ${welded.next!.fault.id}`);
    const ending = found.faults.filter(({ next }) => next !== undefined);
    for (const { fault, next } of ending) {
      const both = judge(found.base, [...fault.faults, ...next!.fault.faults]);
      // Those alike share the one that was tried for the first of them.
      if (fault.id !== next!.fault.id)
        expect(both.verdict, `${fault.id}, ${next!.fault.id}`).toBe('dangerous');
    }
    const unnoticed = found.findings.find(({ id }) => id === 'stop.unnoticed')!;
    expect(unnoticed.verdict).toBe('fails');
    expect(unnoticed.sentence).toMatch(/count together \(ISO 13849-1/);
  });

  test('derived: one of which no next fault is dangerous is tight, each next one tried', () => {
    const found = look(made('two-contactors'));
    const harmless = found.faults.filter(({ judged, next }) => judged.verdict === 'unnoticed' && !next);
    expect(harmless.length).toBeGreaterThan(0);
    const others = found.faults.filter(
      ({ judged, fault }) => judged.verdict !== 'dangerous' && !fault.mayExclude,
    );
    for (const { fault } of harmless)
      for (const { fault: second } of others)
        if (second !== fault)
          expect(
            judge(found.base, [...fault.faults, ...second.faults]).verdict,
            `${fault.id}, ${second.id}`,
          ).not.toBe('dangerous');
    expect(harmless[0]!.says).toContain('with any one fault more it still stops');
  });
});
