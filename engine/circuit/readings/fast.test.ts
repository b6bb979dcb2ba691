/** What is worked out near a state or along a way, against the same worked out anew from the start. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellsOf } from '../../../bench/wiring-network.mjs';
import { SAMPLES } from '../../../samples/index.ts';
import { sample } from '../../../samples/read.fixture.ts';
import { type Element, ohmsTo } from '../network/index.ts';
import { cabinetWith, WIRING } from '../power/cabinet.fixture.ts';
import { readWiring } from '../wiring/read.ts';
import type { ReadWiring } from '../wiring/types.ts';
import { asBase, liveState, liveWiring } from './live.ts';
import type { LiveState, Switched } from './live-types.ts';
import { OhmPaths, OPEN_OHMS } from './ohms.ts';
import { contactWays, type Way, waysOf } from './ways.ts';

const SAME = 1e-9;
const sampleOf = (id: string): ReadWiring => {
  const refit = sample(id);
  return readWiring(refit.wiring, refit);
};

/** All that is switched on step by step. */
function states(wiring: ReadWiring): readonly Switched[] {
  const [outputs, logic] = [new Set<string>(), new Set<string>()];
  for (const { id, device, nature } of wiring.terminals.values()) {
    if (nature.kind === 'output') outputs.add(id);
    if (nature.kind === 'contact' && nature.moved === 'logic') logic.add(device);
  }
  const none: ReadonlySet<string> = new Set();
  return [
    ...Array.from(outputs, (id) => ({ mains: true, outputs: new Set([id]), logic: none })),
    ...Array.from(logic, (id) => ({ mains: true, outputs: none, logic: new Set([id]) })),
    { mains: true, outputs, logic },
    { mains: false, outputs: none, logic: none },
  ];
}

/** How many states were worked out near the first. */
function expectSameVolts(wiring: ReadWiring): number {
  const live = liveWiring(wiring);
  const first = liveState(live, { mains: true, outputs: new Set(), logic: new Set() });
  if ('sentence' in first) return 0;
  const base = asBase(live, first);
  let near = 0;
  for (const state of states(wiring)) {
    const [fast, anew] = [liveState(live, state, base), liveState(live, state)];
    if ('sentence' in anew || 'sentence' in fast) {
      // The equations lose a node that hangs on blocking junctions alone; the mesh keeps it.
      if ('sentence' in anew && !('sentence' in fast)) expect(anew.sentence).toContain('No steady state');
      else expect(fast).toEqual(anew);
      continue;
    }
    expect(fast.pulled).toEqual(anew.pulled);
    expect(fast.giving).toEqual(anew.giving);
    expectSameLevels(wiring, live.order.node.bind(live.order), fast, anew);
    if (fast.rounds.every(({ whole }) => whole === undefined)) near++;
  }
  return near;
}

function expectSameLevels(
  wiring: ReadWiring,
  at: (node: string) => number,
  fast: LiveState,
  anew: LiveState,
): void {
  for (const { id, terminals } of wiring.nets) {
    const common = terminals.map((each) => wiring.terminals.get(each)!.common).find((each) => each !== null);
    const against = common && wiring.netOf.get(common)?.id;
    for (const black of [undefined, ...(against ? [at(against)] : [])])
      for (const bound of ['low', 'high'] as const) {
        const [there, wanted] = [fast[bound].level(at(id), black), anew[bound].level(at(id), black)];
        expect(there === undefined).toBe(wanted === undefined);
        if (wanted !== undefined)
          expect(Math.abs(there! - wanted)).toBeLessThanOrEqual(SAME * Math.max(1, Math.abs(wanted)));
      }
  }
}

/** Resistances with one device's contacts moved, as the equations of the whole give them. */
function ohmsAnew(wiring: ReadWiring, bound: 'low' | 'high', moved: string | undefined) {
  const contacts = contactWays(wiring).get(moved ?? '') ?? [];
  const gone = contacts.filter(({ closedAtRest }) => closedAtRest).map(({ way }) => way);
  const ways: Way[] = waysOf(wiring).filter(
    (way) => !gone.some(({ id, a, b }) => way.id.endsWith(` ${id}`) && way.a === a && way.b === b),
  );
  ways.push(...contacts.filter(({ closedAtRest }) => !closedAtRest).map(({ way }) => way));
  const elements = ways
    .filter((way) => Number.isFinite(way[bound]))
    .map(({ a, b, ...way }, k): Element => ({ kind: 'resistor', id: `${k}`, a, b, ohms: way[bound] }));
  return (a: string, b: string): number => {
    const answer = ohmsTo({ elements, references: [] }, b, [a], { openVolts: 1, shortAmps: 1 });
    if (!answer.ok) throw new Error(answer.trouble.sentence);
    return answer.ohms.get(a)!;
  };
}

function expectSameOhms(wiring: ReadWiring): number {
  const paths = OhmPaths.of(wiring);
  let asked = 0;
  for (const [device, contacts] of contactWays(wiring))
    for (const moved of [undefined, device])
      for (const bound of ['low', 'high'] as const) {
        const anew = ohmsAnew(wiring, bound, moved);
        for (const { way } of contacts.slice(0, 2)) {
          const [there, wanted] = [paths.band(way.a, way.b, moved)[bound], anew(way.a, way.b)];
          asked++;
          if (wanted > OPEN_OHMS) expect(there).toBe(Number.POSITIVE_INFINITY);
          // The meter's own equations, milliohms among them, are good to some nine figures.
          else expect(Math.abs(there - wanted)).toBeLessThanOrEqual(3 * SAME * Math.max(1, wanted));
        }
      }
  return asked;
}

describe('fast and from the start', () => {
  test.each(SAMPLES.map(({ id }) => id))('derived: volts of each state of %s', (id) => {
    expect(expectSameVolts(sampleOf(id))).toBeGreaterThan(4);
  });
  test.each(SAMPLES.map(({ id }) => id))('derived: contacts of %s at rest and moved', (id) => {
    expect(expectSameOhms(sampleOf(id))).toBeGreaterThan(20);
  });
  test('derived: cells on one common 24 V', () => {
    const wiring = readWiring(cellsOf(2));
    expect(expectSameVolts(wiring)).toBe(states(wiring).length);
    expectSameOhms(wiring);
  });
  test('derived: whatever is wired to whatever', () => {
    const marks = [...cabinetWith().wiring.terminals.keys()];
    const end = fc.constantFrom(...marks);
    let [near, asked] = [0, 0];
    fc.assert(
      fc.property(
        fc.subarray(Object.keys(WIRING.wires)),
        fc.array(fc.tuple(end, end), { maxLength: 8 }),
        (kept, added) => {
          const wires = Object.fromEntries([
            ...kept.map((id) => [id, WIRING.wires[id]!] as const),
            ...added.map(
              ([from, to], k) => [`Q${k}`, { id: `Q${k}`, from, to, cable: null, settings: {} }] as const,
            ),
          ]);
          const { wiring } = cabinetWith({}, {}, { ...WIRING, wires });
          near += expectSameVolts(wiring);
          asked += expectSameOhms(wiring);
        },
      ),
      { numRuns: 30, seed: 33 },
    );
    expect(near).toBeGreaterThan(20);
    expect(asked).toBeGreaterThan(100);
  });
});
