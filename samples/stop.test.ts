/** The stop circuits of the samples: what is planted is found, and what is said to mend it does. */
import { describe, expect, test } from 'vitest';
import { stopOffers } from '../engine/advice/stop-offers.ts';
import { assess } from '../engine/assess/index.ts';
import { analyseStop, type StopAnalysis } from '../engine/circuit/stop/index.ts';
import type { Refit, StopCircuit } from '../engine/refit/index.ts';
import { sample } from './read.fixture.ts';

/** With what the rest of the refit knows of what moves. */
const look = (refit: Refit, circuit: StopCircuit = refit.stop!): StopAnalysis => {
  const found = analyseStop(circuit, stopOffers(assess(refit), circuit));
  if (!found.ok) throw new Error(found.problem.message);
  return found.value;
};
const verdictOf = ({ faults }: StopAnalysis, id: string): string | undefined =>
  faults.find(({ fault }) => fault.id === id)?.judged.verdict;

describe('the lathe', () => {
  const refit = sample('carriage-works-lathe');
  const circuit = refit.stop!;
  const found = look(refit);

  test('derived: planted: both channels in one cable; crushed, nothing stops and nobody is told', () => {
    const crushed = found.faults[0]!;
    expect(crushed.fault.id).toBe('cable W1 crushed');
    expect(crushed.judged.verdict).toBe('dangerous');
    expect(crushed.catches).toMatch(/cable of its own/);
  });

  test('derived: planted: an ordinary contact where a mirror contact belongs', () => {
    expect(verdictOf(found, 'K1 welded')).toBe('unnoticed');
    const { says, catches } = found.faults.find(({ fault }) => fault.id === 'K1 welded')!;
    expect(says).toMatch(/it still stops by K2.*but nobody is told; the next fault ends stopping/);
    expect(catches).toMatch(/mirror contact of K1/);
    // K2 has its mirror contact.
    expect(verdictOf(found, 'K2 welded')).toBe('noticed');
  });

  test('derived: a cable for each channel and a mirror contact mend both', () => {
    const k1 = circuit.elements.K1!;
    const mended = look(refit, {
      ...circuit,
      elements: { ...circuit.elements, K1: { ...k1, settings: { ...k1.settings, linked: 'yes' } } },
      wires: Object.fromEntries(
        Object.values(circuit.wires).map((wire) => {
          const second = /S1\.2|K3\.23/.test(`${wire.from} ${wire.to}`);
          return [wire.id, { ...wire, cable: wire.cable === 'W1' && second ? 'W2' : wire.cable }];
        }),
      ),
    });
    expect(verdictOf(mended, 'K1 welded')).toBe('noticed');
    expect(
      mended.faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && !fault.mayExclude),
    ).toEqual([]);
  });

  test('derived: planted: the lower limit switch of X stands too close to the hard stop', () => {
    expect(found.findings.find(({ id }) => id === 'stop.X.switches')?.verdict).toBe('fails');
    expect(found.findings.find(({ id }) => id === 'stop.Z.switches')?.verdict).toBe('fits');
  });

  test('derived: planted: the cross slide stands on a slope without a brake: every stop lets it drop to its hard stop', () => {
    for (const { stops } of found.stops) {
      const x = stops.find(({ motion }) => motion === 'X')!;
      expect(x.load).toBe('drops');
      // Faster than it began: 6 m/min.
      expect(x.strikes!.speed).toBeGreaterThan(0.1);
      expect(x.strikes!.room).toBeCloseTo(0.21, 9);
    }
    const verdicts = Object.fromEntries(found.findings.map(({ id, verdict }) => [id, verdict]));
    expect(verdicts).toMatchObject({
      'stop.act.S1': 'fails',
      'stop.power': 'fails',
      'stop.X.brake': 'fails',
    });
    // The check of the refit says the same.
    expect(assess(refit).findings.find(({ id }) => id === 'X.stays')!.verdict).toBe('fails');
  });

  test('derived: no name of a finding of the stop circuit is that of a finding of the refit', () => {
    const names = new Set(assess(refit).findings.map(({ id }) => id));
    for (const { id } of found.findings) expect(names.has(id), id).toBe(false);
    expect(new Set(found.findings.map(({ id }) => id)).size).toBe(found.findings.length);
  });
});

test('derived: the mill: braked, the head held by its brake before the drive lets go; only a broken brake lets it drop', () => {
  const found = look(sample('boatyard-mill'));
  const head = found.stops
    .find(({ role }) => role === 'emergency')!
    .stops.find(({ motion }) => motion === 'Z')!;
  expect(head.category).toBe('1');
  expect(head.drop).toBe(0);
  expect(
    found.faults
      .filter(({ judged, fault }) => judged.verdict === 'dangerous' && !fault.mayExclude)
      .map(({ fault }) => fault.id),
  ).toEqual(['Y3 does not close']);
});
