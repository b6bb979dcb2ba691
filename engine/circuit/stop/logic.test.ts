/** Contacts and coils against plain Boolean algebra, worked out over every position of every button. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileStop } from './compile.ts';
import { type Drawn, draw } from './draw.ts';
import { networkOf } from './network.ts';
import { Simulation } from './simulate.ts';
import { atRest } from './state.ts';

/** A contact of button n that closes or opens when it is pressed, or several in series or side by side. */
type Tree =
  | { readonly kind: 'leaf'; readonly n: number; readonly opens: boolean }
  | { readonly kind: 'series' | 'parallel'; readonly parts: readonly Tree[] };

const BUTTONS = 7;
const tree: fc.Arbitrary<Tree> = fc.letrec<{ tree: Tree; leaf: Tree; group: Tree }>((tie) => ({
  tree: fc.oneof({ depthSize: 'medium', withCrossShrink: true }, tie('leaf'), tie('group')),
  leaf: fc.record({ kind: fc.constant('leaf' as const), n: fc.nat(BUTTONS - 1), opens: fc.boolean() }),
  group: fc.record({
    kind: fc.constantFrom('series' as const, 'parallel' as const),
    parts: fc.array(tie('tree'), { minLength: 2, maxLength: 3 }),
  }),
})).tree;

const holds = (of: Tree, pressed: number): boolean =>
  of.kind === 'leaf'
    ? ((pressed >> of.n) & 1) === (of.opens ? 0 : 1)
    : of.kind === 'series'
      ? of.parts.every((part) => holds(part, pressed))
      : of.parts.some((part) => holds(part, pressed));

/** The tree as contacts between two terminals; each leaf is a button of its own that the hand moves with its number. */
function wire(
  of: Tree,
  from: string,
  to: string,
  elements: Drawn[],
  runs: string[],
  hands: Map<string, number>,
): void {
  if (of.kind === 'leaf') {
    const id = `B${hands.size + 1}`;
    hands.set(id, of.n);
    elements.push([
      `${id} button`,
      '',
      { no: of.opens ? '0' : '1', nc: of.opens ? '1' : '0', role: 'other' },
    ]);
    runs.push(`${from} ${id}.${of.opens ? '11' : '13'}`, `${id}.${of.opens ? '12' : '14'} ${to}`);
    return;
  }
  if (of.kind === 'parallel') {
    for (const part of of.parts) wire(part, from, to, elements, runs, hands);
    return;
  }
  let at = from;
  for (const [n, part] of of.parts.entries()) {
    const last = n === of.parts.length - 1;
    const joint = `J${elements.length}`;
    if (!last) elements.push([`${joint} fuse`, '']);
    const next = last ? to : `${joint}.1`;
    wire(part, at, next, elements, runs, hands);
    at = last ? to : `${joint}.2`;
  }
}

describe('derived: current flows exactly where Boolean algebra says', () => {
  test('random nests of series and parallel contacts, all 128 positions of seven buttons', () => {
    fc.assert(
      fc.property(tree, (each) => {
        const elements: Drawn[] = [
          ['G1 supply', ''],
          ['K1 relay', ''],
        ];
        const runs = ['K1.A2 G1.minus'];
        const hands = new Map<string, number>();
        wire(each, 'G1.plus', 'K1.A1', elements, runs, hands);
        fc.pre(elements.length < 110);
        const made = compileStop(draw({ pattern: null, elements, runs, motions: [] }));
        if (!made.ok) throw new Error(made.problem.message);
        const model = made.value;
        const simulation = new Simulation(networkOf(model));
        const relay = model.movers.findIndex(({ id }) => id === 'K1');
        for (let pressed = 0; pressed < 1 << BUTTONS; pressed++) {
          const state = atRest(model);
          state.power = 1;
          for (const [at, { element, kind }] of model.movers.entries())
            if (kind === 'hand') state.at[at] = ((pressed >> hands.get(element)!) & 1) as 0 | 1;
          simulation.settle(state);
          if (state.at[relay] !== Number(holds(each, pressed))) return false;
        }
        return true;
      }),
      { numRuns: 150, seed: 5 },
    );
  });

  test('random networks with bridges: the same as trying every path from plus to the coil', () => {
    const nets = 6;
    const edges = fc.array(
      fc.record({ a: fc.nat(nets - 1), b: fc.nat(nets - 1), n: fc.nat(BUTTONS - 1), opens: fc.boolean() }),
      { minLength: 3, maxLength: 14 },
    );
    fc.assert(
      fc.property(edges, (list) => {
        const used = list.filter(({ a, b }) => a !== b);
        const elements: Drawn[] = [
          ['G1 supply', ''],
          ['K1 relay', ''],
        ];
        // Net 0 is plus, the last net feeds the coil; the others are joints.
        const terminal = (net: number): string =>
          net === 0 ? 'G1.plus' : net === nets - 1 ? 'K1.A1' : `J${net}.1`;
        for (let net = 1; net < nets - 1; net++) elements.push([`J${net} fuse`, '']);
        const runs = ['K1.A2 G1.minus'];
        for (const [at, { a, b, opens }] of used.entries()) {
          elements.push([
            `B${at} button`,
            '',
            { no: opens ? '0' : '1', nc: opens ? '1' : '0', role: 'other' },
          ]);
          runs.push(`${terminal(a)} B${at}.${opens ? 11 : 13}`, `B${at}.${opens ? 12 : 14} ${terminal(b)}`);
        }
        const made = compileStop(draw({ pattern: null, elements, runs, motions: [] }));
        if (!made.ok) throw new Error(made.problem.message);
        const model = made.value;
        const simulation = new Simulation(networkOf(model));
        const relay = model.movers.findIndex(({ id }) => id === 'K1');
        const path = (net: number, seen: number, pressed: number): boolean =>
          net === nets - 1 ||
          used.some(({ a, b, n, opens }) => {
            if (((pressed >> n) & 1) === (opens ? 1 : 0)) return false;
            const next = a === net ? b : b === net ? a : -1;
            return next >= 0 && ((seen >> next) & 1) === 0 && path(next, seen | (1 << next), pressed);
          });
        for (let pressed = 0; pressed < 1 << BUTTONS; pressed++) {
          const state = atRest(model);
          state.power = 1;
          for (const [at, { element, kind }] of model.movers.entries())
            if (kind === 'hand') state.at[at] = ((pressed >> used[Number(element.slice(1))]!.n) & 1) as 0 | 1;
          simulation.settle(state);
          if (state.at[relay] !== Number(path(0, 1, pressed))) return false;
        }
        return true;
      }),
      { numRuns: 150, seed: 6 },
    );
  });
});

describe('derived: time', () => {
  const settled = (elements: Drawn[], runs: string[]) => {
    const made = compileStop(draw({ pattern: null, elements, runs, motions: [] }));
    if (!made.ok) throw new Error(made.problem.message);
    const simulation = new Simulation(networkOf(made.value));
    const state = atRest(made.value);
    state.power = 1;
    const seen: string[] = [];
    const done = simulation.settle(state, ({ time, at }) =>
      seen.push(`${time.toFixed(3)} ${made.value.movers.map(({ id }, n) => `${id}${at[n]}`).join(' ')}`),
    );
    return { model: made.value, simulation, state, seen, done };
  };

  test('a relay that breaks its own coil never rests and is named, not waited for', () => {
    const { done, model } = settled(
      [
        ['G1 supply', ''],
        ['K1 relay', '', { no: '1', nc: '1' }],
      ],
      ['G1.plus K1.51', 'K1.52 K1.A1', 'K1.A2 G1.minus'],
    );
    expect(done.restless.map((at) => model.movers[at]!.id)).toEqual(['K1']);
  });

  test('one relay pulls the next after both times; a late one lets go after its delay', () => {
    const { seen, simulation, state, model } = settled(
      [
        ['G1 supply', ''],
        ['S1 mushroom', '', { nc: '1' }],
        ['K1 relay', '', { 'pick-up': '12 ms', 'drop-out': '10 ms' }],
        ['K2 delayed-relay', '', { 'pick-up': '20 ms', delay: '2 s' }],
      ],
      ['G1.plus S1.11', 'S1.12 K1.A1', 'K1.A2 G1.minus', 'G1.plus K1.13', 'K1.14 K2.A1', 'K2.A2 G1.minus'],
    );
    expect(seen.map((each) => each.slice(0, 5))).toEqual(['0.000', '0.012', '0.032']);
    state.at[model.movers.findIndex(({ id }) => id === 'S1')] = 1;
    simulation.settle(state);
    expect(state.time).toBeCloseTo(0.032 + 0.01 + 2, 9);
  });

  test('plus on minus without a fuse is named; with one the fuse melts and the rest is dead', () => {
    const bare = settled(
      [
        ['G1 supply', ''],
        ['S1 button', '', { nc: '1', no: '0' }],
      ],
      ['G1.plus S1.11', 'S1.12 G1.minus'],
    );
    expect(bare.done.shorted).toEqual([0]);
    const fused = settled(
      [
        ['G1 supply', ''],
        ['F1 fuse', ''],
        ['S1 button', '', { nc: '1', no: '0' }],
        ['K1 relay', ''],
      ],
      ['G1.plus F1.1', 'F1.2 S1.11 K1.A1', 'S1.12 G1.minus K1.A2'],
    );
    expect(fused.done.melted.map((at) => fused.model.contacts[at]!.element)).toEqual(['F1']);
    expect(fused.seen.at(-1)).toContain('K10');
  });
});
