/**
 * Contacts and coils against a general satisfiability solver (MiniSat, as packed in logic-solver): for random circuits, with
 * and without a fault, the solver lists every position of hands and coils in which nothing would move.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../refit/types.ts';
import { compileStop } from './compile.ts';
import { type Drawn, draw } from './draw.ts';
import type { Model } from './model.ts';
import { type Fault, networkOf } from './network.ts';
import { Simulation } from './simulate.ts';
import { type StableStates, stableStates, type Wrong } from './stable-states.fixture.ts';
import { atRest, type State } from './state.ts';

interface Made {
  readonly circuit: StopCircuit;
  readonly wrong: readonly Wrong[];
  /** Hands to move one after another. */
  readonly acts: readonly number[];
}

/** Ends of contacts and coils thrown into nets at random: loops, bridges and shorts come by themselves. */
const NETS = 6;
const anyNet = fc.nat(NETS - 1);

const relayLike = fc.record({
  kind: fc.constantFrom('relay', 'contactor', 'delayed-relay'),
  no: fc.nat(2),
  nc: fc.nat(2),
  linked: fc.boolean(),
  slow: fc.nat(40),
  ends: fc.array(anyNet, { minLength: 12, maxLength: 12 }),
  coil: fc.tuple(anyNet, anyNet),
});
const handLike = fc.record({
  kind: fc.constantFrom('button', 'door', 'limit', 'mushroom'),
  no: fc.nat(1),
  nc: fc.nat(2),
  ends: fc.array(anyNet, { minLength: 6, maxLength: 6 }),
});

/** Net 0 is plus, the last is minus; apart, no contact leads from the upper nets to the lower ones, and nothing can short. */
const circuits = (apart: boolean): fc.Arbitrary<Made> =>
  fc
    .record({
      relays: fc.array(relayLike, { minLength: 1, maxLength: 5 }),
      hands: fc.array(handLike, { minLength: 1, maxLength: 4 }),
      two: fc.boolean(),
      earthed: fc.boolean(),
      fault: fc.option(fc.record({ kind: fc.nat(4), at: fc.nat(999), to: fc.nat(999) })),
      acts: fc.array(fc.nat(99), { maxLength: 8 }),
    })
    .map(({ relays, hands, two, earthed, fault, acts }) => {
      const elements: Drawn[] = [['G1 supply', '', { earthed: earthed ? 'yes' : 'no' }]];
      const nets: string[][] = Array.from({ length: NETS }, () => []);
      nets[0]!.push('G1.plus');
      nets[NETS - 1]!.push('G1.minus');
      if (two) {
        elements.push(['G2 supply', '', { earthed: earthed ? 'yes' : 'no' }]);
        nets[1]!.push('G2.plus');
        nets[NETS - 1]!.push('G2.minus');
      }
      const join = (
        element: string,
        ends: readonly (readonly [string, string])[],
        into: readonly number[],
      ) => {
        for (const [n, [one, other]] of ends.entries()) {
          const upper = into[2 * n]! < NETS / 2;
          const half = (net: number) => (net % (NETS / 2)) + (upper ? 0 : NETS / 2);
          nets[into[2 * n]!]!.push(`${element}.${one}`);
          nets[apart ? half(into[2 * n + 1]!) : into[2 * n + 1]!]!.push(`${element}.${other}`);
        }
      };
      const pairs = (from: number, count: number, ends: readonly [number, number]) =>
        Array.from({ length: count }, (_, n) => [`${from + n}${ends[0]}`, `${from + n}${ends[1]}`] as const);
      for (const [n, { kind, no, nc, linked, slow, ends, coil }] of relays.entries()) {
        const id = `K${n + 1}`;
        const main = kind === 'contactor' ? 1 : 0;
        elements.push([
          `${id} ${kind}`,
          '',
          {
            no: `${no}`,
            nc: `${nc}`,
            linked: linked ? 'yes' : 'no',
            'pick-up': `${10 + slow} ms`,
            ...(main ? { main: '1' } : {}),
          },
        ]);
        join(
          id,
          [...(main ? [['1', '2'] as const] : []), ...pairs(1, no, [3, 4]), ...pairs(5, nc, [1, 2])],
          ends,
        );
        nets[apart ? coil[0] % (NETS / 2) : coil[0]]!.push(`${id}.A1`);
        nets[apart ? (coil[1] % (NETS / 2)) + NETS / 2 : coil[1]]!.push(`${id}.A2`);
      }
      for (const [n, { kind, no, nc, ends }] of hands.entries()) {
        const id = `S${n + 1}`;
        elements.push([
          `${id} ${kind}`,
          '',
          { no: `${no}`, nc: `${nc}`, ...(kind === 'button' ? { role: 'other' } : {}) },
        ]);
        join(id, [...pairs(1, no, [3, 4]), ...pairs(1, nc, [1, 2])], ends);
      }
      const circuit = draw({
        pattern: null,
        elements,
        runs: nets.filter((net) => net.length > 1).map((net) => net.join(' ')),
        motions: [],
      });
      return { circuit, acts, wrong: fault === null ? [] : wrongOf(circuit, fault) };
    });

/** A fault by its number among those the circuit can have. */
function wrongOf(circuit: StopCircuit, { kind, at, to }: { kind: number; at: number; to: number }): Wrong[] {
  const model = compiled(circuit);
  const pick = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(1, list.length)];
  const contact = pick(model.contacts, at);
  const wire = pick(model.wires, at);
  const coil = pick(
    model.movers.filter((each) => each.kind === 'coil'),
    at,
  );
  switch (kind) {
    case 0:
      return contact ? [{ kind: 'closed', contact: contact.id }] : [];
    case 1:
      return contact ? [{ kind: 'open', contact: contact.id }] : [];
    case 2:
      return wire ? [{ kind: 'off', wire: wire.id }] : [];
    case 3:
      return [
        {
          kind: 'touch',
          terminals: [pick(model.nodes.slice(0, -1), at)!, pick(model.nodes.slice(0, -1), to)!],
        },
      ];
    default:
      return coil ? [{ kind: 'stuck', mover: coil.id, at: to % 2 === 1 ? 1 : 0 }] : [];
  }
}

function compiled(circuit: StopCircuit): Model {
  const made = compileStop(circuit);
  if (!made.ok) throw new Error(`${made.problem.where}: ${made.problem.message}`);
  return made.value;
}

function faultOf(model: Model, each: Wrong): Fault {
  const contact = (id: string) => model.contacts.findIndex((one) => one.id === id);
  switch (each.kind) {
    case 'closed':
      return { kind: 'contact-closed', contact: contact(each.contact) };
    case 'open':
      return { kind: 'contact-open', contact: contact(each.contact) };
    case 'off':
      return { kind: 'wire-off', wire: model.wires.findIndex(({ id }) => id === each.wire) };
    case 'touch':
      return { kind: 'touch', nodes: each.terminals.map((name) => model.nodes.indexOf(name)) };
    case 'stuck':
      return { kind: 'stuck', mover: model.movers.findIndex(({ id }) => id === each.mover), at: each.at };
  }
}

const said = (model: Model, state: State, hands: boolean): string[] =>
  model.movers.flatMap(({ id, kind }, at) => ((kind === 'hand') === hands && state.at[at] === 1 ? [id] : []));
const keyOf = (model: Model, state: State): string =>
  [...said(model, state, true), ...said(model, state, false)].join(' ');

interface Compared {
  readonly ours: ReadonlySet<string>;
  readonly theirs: StableStates;
  readonly shorts: boolean;
  readonly model: Model;
  readonly simulation: Simulation;
}

/** Every position of hands and coils tried in the simulation: which of them stay. */
function compare({ circuit, wrong }: Made): Compared {
  const model = compiled(circuit);
  const simulation = new Simulation(
    networkOf(
      model,
      wrong.map((each) => faultOf(model, each)),
    ),
  );
  const ours = new Set<string>();
  let shorts = false;
  for (let position = 0; position < 1 << model.movers.length; position++) {
    const state = positioned(model, position);
    const before = keyOf(model, state);
    // Only a look: nothing has time to move.
    const looked = simulation.settle(state, undefined, 0);
    const shorted = looked.shorted.length > 0;
    shorts ||= shorted;
    if (shorted || state.due.some(Number.isFinite) || keyOf(model, state) !== before) continue;
    ours.add(before);
  }
  return { ours, theirs: stableStates(circuit, wrong), shorts, model, simulation };
}

function positioned(model: Model, position: number): State {
  const state = atRest(model);
  state.power = 1;
  for (let at = 0; at < model.movers.length; at++) state.at[at] = ((position >> at) & 1) as 0 | 1;
  return state;
}

const RUNS = 200;

describe.each([
  ['upper and lower parts apart', true, 11],
  ['thrown together, with shorts', false, 12],
])('derived: second method, a satisfiability solver: %s', (_, apart, seed) => {
  const all = fc.sample(circuits(apart), { numRuns: RUNS, seed });
  let compared: readonly Compared[];
  beforeAll(() => {
    compared = all.map(compare);
  }, 300_000);

  test(`the positions that stay are the same in all of ${RUNS} random circuits, most of them with a fault`, () => {
    for (const [n, { ours, theirs, shorts }] of compared.entries()) {
      const where = `circuit ${n}: ${JSON.stringify(all[n])}`;
      expect([...ours].sort(), where).toEqual([...theirs.stable].sort());
      expect(shorts, where).toBe(theirs.canShort);
    }
    // The comparison is no empty one.
    expect(compared.filter(({ ours }) => ours.size > 1).length).toBeGreaterThan(RUNS / 3);
    expect(all.filter(({ wrong }) => wrong.length > 0).length).toBeGreaterThan(RUNS / 3);
    expect(
      compared.some(({ shorts }, n) => shorts && all[n]!.wrong.every(({ kind }) => kind !== 'touch')),
    ).toBe(!apart);
  });

  test('whatever a hand does, it ends in one of them, or never rests and is named; where there is none it is named', () => {
    let [rests, never, none] = [0, 0, 0];
    for (const [n, { theirs, model, simulation }] of compared.entries()) {
      const hands = model.movers.flatMap(({ kind }, at) => (kind === 'hand' ? [at] : []));
      const state = atRest(model);
      state.power = 1;
      for (const act of [undefined, ...all[n]!.acts]) {
        if (act !== undefined) {
          const hand = hands[act % hands.length]!;
          state.at[hand] = state.at[hand] === 1 ? 0 : 1;
        }
        const { restless, shorted, melted } = simulation.settle(state);
        if (shorted.length > 0 || melted.length > 0) break;
        const pushed = said(model, state, true);
        const possible = [...theirs.stable].filter(
          (key) =>
            key
              .split(' ')
              .filter((id) => id.startsWith('S'))
              .join(' ') === pushed.join(' '),
        );
        if (restless.length > 0) {
          never++;
          if (possible.length === 0) none++;
          for (const at of restless) expect(model.movers[at]!.kind).toBe('coil');
          break;
        }
        rests++;
        expect(possible, `circuit ${n}: ${JSON.stringify(all[n])}`).toContain(keyOf(model, state));
      }
    }
    expect(rests).toBeGreaterThan(RUNS);
    expect(never).toBeGreaterThan(3);
    expect(none).toBeGreaterThan(1);
  });
});
