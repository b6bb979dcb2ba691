import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../refit/types.ts';
import { analyseStop, type StopAnalysis } from './analyse.ts';
import { sayStopAnswer, stopAnswer } from './answer.ts';
import { circuitA, circuitBC } from './circuits.fixture.ts';

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
    expect(sayStopAnswer(answer)).toMatch(new RegExp(`The worst: ${dangerous[0]!.fault.id}\\.$`));
  });

  test('derived: the answer follows the verdicts of the faults, whatever they are', () => {
    const all = looked(circuitBC(true));
    const safe = all.faults.filter(({ judged }) => judged.verdict !== 'dangerous');
    const noticed = safe.filter(({ judged }) => judged.verdict !== 'unnoticed');
    expect(noticed.length).toBeLessThan(safe.length);
    const findings = all.findings.filter(({ verdict, id }) => verdict !== 'fails' || id === 'faults');
    expect(stopAnswer({ findings, faults: safe })).toMatchObject({ verdict: 'tight' });
    expect(stopAnswer({ findings, faults: safe }).sentence).toContain(
      `With ${safe.length - noticed.length} of them nobody is told`,
    );
    const none = stopAnswer({ findings, faults: noticed });
    expect(none).toEqual({
      verdict: 'fits',
      sentence: `None of the ${noticed.length} single faults that were tried leaves the machine able to move when it should stand still. Each of them is noticed.`,
    });
    const broken = {
      id: 'stop.S1',
      title: 'Does it stop: press S1?',
      verdict: 'fails',
      sentence: '',
    } as const;
    expect(stopAnswer({ findings: [...findings, broken], faults: noticed })).toMatchObject({
      verdict: 'fails',
      also: 'Even with no fault this fails: Does it stop: press S1?',
    });
  });

  test('derived: what cannot be started is said instead of a count of nothing', () => {
    const circuit = circuitA();
    const all = looked({ ...circuit, motions: {} });
    expect(stopAnswer(all).verdict).toBe('unknown');
    expect(sayStopAnswer(stopAnswer(all))).toContain('name an axis or a spindle');
  });
});
