import { describe, expect, test } from 'vitest';
import { worstVerdict } from '../../quantity/verdict.ts';
import type { StopCircuit } from '../../refit/types.ts';
import { analyseStop, type StopAnalysis } from './analyse.ts';
import { sayStopAnswer, stopAnswer } from './answer.ts';
import { circuitA, circuitBC } from './circuits.fixture.ts';
import { FAULT_GROUPS, type FaultGroup, groupOf } from './fault-groups.ts';

const looked = (circuit: StopCircuit): StopAnalysis => {
  const found = analyseStop(circuit);
  if (!found.ok) throw new Error(found.problem.message);
  return found.value;
};

describe('the answer about a stop circuit', () => {
  test('derived: it counts the dangerous faults of one channel and names the first of them', () => {
    const all = looked(circuitA());
    const dangerous = all.faults.filter(
      ({ judged, fault }) => judged.verdict === 'dangerous' && !fault.mayExclude,
    );
    const answer = stopAnswer(all);
    expect(dangerous.length).toBeGreaterThan(1);
    expect(answer.verdict).toBe('fails');
    expect(answer.sentence).toContain(`${dangerous.length} of ${all.faults.length} single faults leave`);
    expect(answer.worst?.fault).toBe(dangerous[0]!.fault.id);
    expect(sayStopAnswer(answer)).toContain(`The worst: ${dangerous[0]!.fault.id}.`);
  });

  test('derived: the answer follows the verdicts of the faults, whatever they are', () => {
    const all = looked(circuitBC(true));
    const safe = all.faults.filter(({ judged }) => judged.verdict !== 'dangerous');
    const noticed = safe.filter(({ judged }) => judged.verdict !== 'unnoticed');
    expect(noticed.length).toBeLessThan(safe.length);
    const findings = all.findings.filter(({ verdict, id }) => verdict === 'fits' || id === 'stop.faults');
    const silent = safe.length - noticed.length;
    const ending = safe.filter(({ next }) => next !== undefined);
    expect(ending.length).toBeGreaterThan(0);
    expect(stopAnswer({ findings, faults: safe })).toMatchObject({
      verdict: 'fails',
      worst: { fault: ending[0]!.fault.id },
    });
    expect(stopAnswer({ findings, faults: safe }).sentence).toContain(
      `With ${silent} of them nobody is told, and with ${ending.length} of these the next fault ends stopping.`,
    );
    const harmless = safe.map(({ next: _next, ...each }) => each);
    expect(stopAnswer({ findings, faults: harmless })).toMatchObject({ verdict: 'tight' });
    expect(stopAnswer({ findings, faults: harmless }).sentence).toContain(
      `With ${silent} of them nobody is told.`,
    );
    const none = stopAnswer({ findings, faults: noticed });
    expect(none).toEqual({
      verdict: 'fits',
      sentence: `None of the ${noticed.length} single faults that were tried leaves the machine able to move when it should stand still. Each of them is noticed.`,
    });
    const asked = (verdict: 'fails' | 'unknown') =>
      ({ id: 'stop.act.S1', title: 'Does it stop: press S1?', verdict, sentence: '' }) as const;
    const second = { ...asked('fails'), id: 'stop.X.guard', title: 'Is the guard far enough away?' };
    expect(stopAnswer({ findings: [...findings, asked('fails')], faults: noticed })).toMatchObject({
      verdict: 'fails',
      also: 'Even with no fault this fails: Does it stop: press S1?',
    });
    expect(stopAnswer({ findings: [...findings, asked('fails'), second], faults: noticed }).also).toBe(
      'Even with no fault 2 questions fail; the first: Does it stop: press S1?',
    );
    // What nobody knows stands before what is only tight, and is never passed over for a good word.
    expect(stopAnswer({ findings: [...findings, asked('unknown')], faults: noticed })).toMatchObject({
      verdict: 'unknown',
      also: 'Not known yet: Does it stop: press S1?',
    });
    expect(stopAnswer({ findings: [...findings, asked('unknown')], faults: harmless }).verdict).toBe(
      'unknown',
    );
  });

  test('derived: the headline is never better than the worst of what stands below it', () => {
    for (const circuit of [circuitA(), circuitBC(false), circuitBC(true)]) {
      const all = looked(circuit);
      expect(stopAnswer(all).verdict).toBe(worstVerdict(all.findings));
    }
    // Two contactors of which nothing is known: run-on, switches and guard are all unknown.
    expect(looked(circuitBC(true)).findings.some(({ verdict }) => verdict === 'unknown')).toBe(true);
  });

  test('derived: the count in the sentence is the count of the list; what rests on a device stands in a group of its own', () => {
    const { faults, findings } = looked(circuitA());
    const of = (group: FaultGroup) => faults.filter((each) => groupOf(each) === group);
    expect(FAULT_GROUPS.reduce((sum, { group }) => sum + of(group).length, 0)).toBe(faults.length);
    expect(of('rests').map(({ fault }) => fault.mayExclude)).not.toContain(undefined);
    expect(of('rests').length).toBeGreaterThan(0);
    expect(findings.find(({ id }) => id === 'stop.faults')!.sentence).toContain(
      `${of('dangerous').length} of ${faults.length} single faults`,
    );
  });

  test('derived: what cannot be started is said instead of a count of nothing', () => {
    const circuit = circuitA();
    const all = looked({ ...circuit, motions: {} });
    expect(stopAnswer(all).verdict).toBe('unknown');
    expect(sayStopAnswer(stopAnswer(all))).toContain('name an axis or a spindle');
  });
});
