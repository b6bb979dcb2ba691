import { describe, expect, test } from 'vitest';
import { act, actsOf, canAct, started } from './acts.ts';
import { chainsOf, type Feed, feedNow, sayFeed } from './chains.ts';
import { compileStop } from './compile.ts';
import { networkOf } from './network.ts';
import { PATTERNS } from './patterns/index.ts';
import { Simulation } from './simulate.ts';
import { contactsOf, type Edge, gapsOf, isJoined, waysBetween } from './way.ts';

const MOTIONS = [
  { id: 'X', kind: 'axis' as const, name: 'X' },
  { id: 'Z', kind: 'axis' as const, name: 'Z' },
];

/** Numbers from 0 to 1, the same at every run. */
function numbers(seed: number): () => number {
  let now = seed;
  return () => {
    now = (now * 1_103_515_245 + 12_345) % 2_147_483_648;
    return now / 2_147_483_648;
  };
}

describe.each(PATTERNS)('$id', ({ make }) => {
  const made = compileStop(make(MOTIONS));
  if (!made.ok) throw new Error(made.problem.message);
  const model = made.value;
  const { motions, held } = chainsOf(model);
  const feeds: readonly Feed[] = [...motions, ...held].flatMap((each) => each.feeds);

  test('derived: second method: a chain closed from end to end carries current, an open one none, whatever was done before', () => {
    const simulation = new Simulation(networkOf(model));
    const state = started(simulation);
    const random = numbers(7);
    for (let n = 0; n < 60; n++) {
      for (const feed of feeds) {
        const { standing, gaps } = feedNow(feed, simulation, state);
        expect(feed.out && feed.back, `${feed.name} ${feed.mover}`).toBeTruthy();
        if (state.power === 1) expect(['flows', 'open', 'dead'], feed.name).toContain(standing);
        // Dead with the power on: the unit or the input before it is without current.
        if (state.power === 0) expect(['open', 'dead']).toContain(standing);
        expect(gaps.length > 0).toBe(standing === 'open');
        const mover = model.movers[feed.mover];
        if (mover) expect(standing === 'flows', mover.id).toBe(state.at[feed.mover] === 1);
      }
      const acts = actsOf(model).filter((each) => canAct(simulation, state, each));
      act(simulation, state, acts[Math.floor(random() * acts.length)]!);
    }
  });

  test('derived: each thing that is held stands once, and every contact in a way of power or enable is explained or is a hand’s', () => {
    expect(new Set(held.map(({ mover }) => mover)).size).toBe(held.length);
    const explained = new Set(held.map(({ mover }) => mover));
    for (const feed of feeds)
      for (const contact of [feed.out, feed.back].flatMap((way) => (way ? contactsOf(way) : []))) {
        const { mover } = model.contacts[contact]!;
        const { kind } = model.movers[mover] ?? { kind: 'hand' };
        expect(kind === 'hand' || kind === 'logic' || explained.has(mover)).toBe(true);
      }
  });
});

test('derived: the emergency stop opens the chain where it is pressed, in words; a touching wire is told as another way', () => {
  const made = compileStop(PATTERNS.find(({ id }) => id === 'two-contactors')!.make(MOTIONS));
  if (!made.ok) throw new Error(made.problem.message);
  const model = made.value;
  const k1 = chainsOf(model).held.find(({ id }) => id === 'K1')!.feeds[0]!;
  const press = actsOf(model).find(({ says }) => says === 'press S1')!;
  const node = (name: string) => model.nodes.indexOf(name);
  const said = (simulation: Simulation) => {
    const state = started(simulation);
    expect(sayFeed(model, feedNow(k1, simulation, state))).toBe('current flows');
    act(simulation, state, press);
    return sayFeed(model, feedNow(k1, simulation, state));
  };
  expect(said(new Simulation(networkOf(model)))).toMatch(/^open at S1 11-12/);
  const touch = { kind: 'touch' as const, nodes: [node('F1.2'), node('K1.A1')] };
  expect(said(new Simulation(networkOf(model, [touch])))).toMatch(/by another way than drawn/);
  const off = { kind: 'wire-off' as const, wire: model.wires.findIndex(({ a }) => a === node('K1.A2')) };
  const cut = new Simulation(networkOf(model, [off]));
  expect(feedNow(k1, cut, started(cut)).standing).not.toBe('flows');
});

test('derived: rows and branches, bridges too, are joined just when current finds a way: against a search, 300 random nets', () => {
  const random = numbers(1);
  const whole = (below: number): number => Math.floor(random() * below);
  let [bridged, branched] = [0, 0];
  for (let n = 0; n < 300; n++) {
    const edges = Array.from({ length: 3 + whole(6) }, (_, contact): Edge => {
      const a = whole(5);
      return { contact, a, b: (a + 1 + whole(4)) % 5 };
    });
    const way = waysBetween(edges, 0, 1, new Set());
    if (way && contactsOf(way).length > new Set(contactsOf(way)).size) bridged++;
    else if (way && JSON.stringify(way).includes('beside')) branched++;
    for (let tried = 0; tried < 20; tried++) {
      const closed = edges.map(() => random() < 0.6);
      const reach = new Set([0]);
      for (let grown = true; grown; ) {
        grown = false;
        for (const { contact, a, b } of edges)
          if (closed[contact] && reach.has(a) !== reach.has(b)) {
            reach.add(a).add(b);
            grown = true;
          }
      }
      const joined = way !== undefined && isJoined(way, (contact) => closed[contact]!);
      expect(joined).toBe(reach.has(1));
      if (way) expect(gapsOf(way, (contact) => closed[contact]!).length > 0).toBe(!joined);
    }
  }
  expect(bridged).toBeGreaterThan(5);
  expect(branched).toBeGreaterThan(20);
  // What is shut is not passed: current does not go through the minus.
  const two: readonly Edge[] = [
    { contact: 0, a: 0, b: 2 },
    { contact: 1, a: 2, b: 1 },
  ];
  expect(waysBetween(two, 0, 1, new Set([2]))).toBeUndefined();
  expect(waysBetween(two, 0, 0, new Set())).toEqual({ kind: 'row', pieces: [] });
});
