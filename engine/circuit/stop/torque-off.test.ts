/** Safe torque off as a fact of the drive: drawn and there, drawn and not there, missed, and not known. */
import { describe, expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { rankedPatterns, stopOffers } from '../../advice/stop-offers.ts';
import { assess } from '../../assess/index.ts';
import { PARTS } from '../../parts/index.ts';
import { TORQUE_OFF_CHANNELS, torqueOff } from '../../parts/torque-off.ts';
import type { Refit, StopCircuit } from '../../refit/types.ts';
import { analyseStop } from './analyse.ts';
import { draw } from './draw.ts';
import type { Offers } from './motion-numbers.ts';
import { PATTERNS } from './patterns/index.ts';

const X = { id: 'X', kind: 'axis' as const, name: 'X axis' };
const findingOf = (circuit: StopCircuit, offers: Offers = {}) => {
  const found = analyseStop(circuit, offers);
  if (!found.ok) throw new Error(`${found.problem.where}: ${found.problem.message}`);
  return found.value.findings.find(({ id }) => id === 'stop.torque-off');
};
const has = (channels: number): Offers => ({ X: { 'torque-off': { value: channels, from: 'its manual' } } });
const NOT_KNOWN: Offers = { X: { 'torque-off': { lacks: ['the list of terminals'] } } };

/** An emergency stop whose two contacts open as many channels of safe torque off. */
const drawn = (channels: 0 | 1 | 2): StopCircuit =>
  draw({
    pattern: null,
    elements: [
      ['G1 supply', ''],
      ['S1 mushroom', ''],
      ['D1 drive', '', { sto: `${channels}`, enable: channels === 0 ? 'yes' : 'no' }],
    ],
    runs: [
      'G1.plus D1.L',
      'D1.N G1.minus',
      'D1.COM G1.minus',
      'G1.plus S1.11 / W1',
      'G1.plus S1.21 / W2',
      ...(channels === 0 ? ['S1.12 D1.EN'] : []),
      ...(channels > 0 ? ['S1.12 D1.STO1 / W1'] : []),
      ...(channels > 1 ? ['S1.22 D1.STO2 / W2'] : []),
    ],
    motions: [{ ...X, drive: 'D1', brake: null, settings: {} }],
  });

describe('derived: safe torque off that the circuit rests on', () => {
  test.each<[1 | 2, number | undefined, string]>([
    [1, 0, 'fails'],
    [2, 0, 'fails'],
    [2, 1, 'fails'],
    [1, 1, 'fits'],
    [1, 2, 'fits'],
    [2, 2, 'fits'],
    [1, undefined, 'unknown'],
    [2, undefined, 'unknown'],
  ])('%d drawn, the drive has %s: %s', (channels, there, verdict) => {
    const finding = findingOf(drawn(channels), there === undefined ? NOT_KNOWN : has(there))!;
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'unknown') expect(finding.remedy).toMatch(/list of terminals in the drive’s manual/);
    // Typed in the circuit it counts alike, over what was brought.
    if (there === undefined) return;
    const circuit = drawn(channels);
    const option = ['none', 'one channel', 'two channels'][there]!;
    const typed = {
      ...circuit,
      motions: { X: { ...circuit.motions.X!, settings: { 'torque-off': option } } },
    };
    expect(findingOf(typed, NOT_KNOWN)).toEqual(finding);
  });

  test('with one contactor a second way is missed: not known is said, none is silence, some is offered', () => {
    const one = PATTERNS.find(({ id }) => id === 'one-contactor')!.make([X]);
    const finding = findingOf(one, NOT_KNOWN)!;
    expect(finding).toMatchObject({ verdict: 'unknown' });
    expect(finding.sentence).toMatch(
      /^X: could do with a second way to stop; whether the drive has one is not known\.$/,
    );
    expect(findingOf(one, has(0))).toBeUndefined();
    expect(findingOf(one, has(2))).toMatchObject({
      verdict: 'fits',
      remedy: expect.stringMatching(/second way.*bridge/),
    });
  });

  test('with two watched contactors nothing rests on it, and nobody is asked', () => {
    const two = PATTERNS.find(({ id }) => id === 'safety-relay')!.make([X]);
    expect(findingOf(two, NOT_KNOWN)).toBeUndefined();
  });

  test('an emergency stop that only asks says what the drives have', () => {
    const asks = PATTERNS.find(({ id }) => id === 'asks-the-control')!.make([X]);
    const act = (offers: Offers) => {
      const found = analyseStop(
        { ...asks, elements: { ...asks.elements, S1: { ...asks.elements.S1!, kind: 'mushroom' } } },
        offers,
      );
      if (!found.ok) throw new Error(found.problem.message);
      return found.value.findings.find(({ id }) => id === 'stop.act.S1')!.remedy;
    };
    expect(act(has(2))).toMatch(/Safe torque off at the drives: two channels: X\.$/);
    expect(act(NOT_KNOWN)).toMatch(/Safe torque off at the drives: not known: X\.$/);
  });
});

describe('derived: from the parts to the stop circuit', () => {
  const drives = ['x-drive', 'y-drive', 'z-drive', 's-spindle-drive'];
  /** The mill with the fact on its drives in turn. */
  const mill = (...options: readonly (string | undefined)[]): Refit => {
    const refit = sample('boatyard-mill');
    const parts = { ...refit.parts };
    for (const [n, id] of drives.entries())
      if (options[n] !== undefined)
        parts[id] = {
          ...parts[id]!,
          facts: {
            ...parts[id]!.facts,
            torqueOff: {
              value: { kind: 'choice', option: options[n]! },
              basis: 'datasheet',
              note: '',
            } as never,
          },
        };
    return { ...refit, parts };
  };
  const offersOf = (refit: Refit) => stopOffers(assess(refit), refit.stop!);

  test('both kinds of drive carry it, with not known as an answer of its own; all other answers count channels', () => {
    for (const kind of ['drive', 'spindle-drive']) expect(PARTS[kind]!.facts.torqueOff).toBe(torqueOff);
    expect(Object.keys(torqueOff.options).sort()).toEqual(
      [...Object.keys(TORQUE_OFF_CHANNELS), 'unknown'].sort(),
    );
    expect(torqueOff.findOut).toMatch(/list of terminals in its manual/);
  });

  test('of the part first, else as stated in the wiring, else not known and what to enter is named', () => {
    const offers = offersOf(mill('two', 'none', 'unknown'));
    expect(offers.X!['torque-off']).toMatchObject({ value: 2 });
    expect(offers.Y!['torque-off']).toMatchObject({ value: 0 });
    for (const id of ['Z', 'spindle'])
      expect(offers[id]!['torque-off'], id).toMatchObject({
        lacks: [expect.stringMatching(/^input for safe torque off of the /)],
      });
    const refit = mill('one');
    const devices = { ...refit.wiring.devices };
    for (const id of ['T1', 'T2', 'T3'])
      devices[id] = {
        ...devices[id]!,
        settings: { ...devices[id]!.settings, sto: id === 'T3' ? 'seven' : '2' },
      };
    const wired = offersOf({ ...refit, wiring: { ...refit.wiring, devices } });
    expect(wired.X!['torque-off']).toMatchObject({ value: 1 });
    expect(wired.Y!['torque-off']).toEqual({ value: 2, from: 'the wiring, T2' });
    expect(wired.Z!['torque-off']).toHaveProperty('lacks');
  });

  test('ranking: all have it, one has not, nobody knows', () => {
    const why = (refit: Refit) =>
      rankedPatterns(assess({ ...refit, stop: null })).find(({ pattern }) => pattern.id === 'vertical-axis')!
        .why;
    expect(why(mill('two', 'one', 'two', 'two'))).toMatch(
      /drives have an input for safe torque off: a second way/,
    );
    expect(why(mill('two', 'none', 'two', 'two'))).toMatch(
      /Not every drive has an input for safe torque off/,
    );
    expect(why(mill('two', 'unknown', 'two', 'two'))).not.toMatch(/torque off/);
  });
});
