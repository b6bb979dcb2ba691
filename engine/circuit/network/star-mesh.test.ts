import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ohmsTo, operatingPoint, type Resistor } from './index.ts';
import { MeshOrder } from './mesh-order.ts';
import { type Branch, StarMesh } from './star-mesh.ts';

interface Edge {
  readonly a: string;
  readonly b: string;
  readonly ohms: number;
  readonly volts: number;
}

/** Some twelve nodes with twice as many edges between a milliohm and a megohm, some of them sources. */
const edges = fc.array(
  fc
    .record({
      a: fc.integer({ min: 0, max: 12 }),
      b: fc.integer({ min: 0, max: 12 }),
      power: fc.double({ min: -3, max: 6, noNaN: true }),
      volts: fc.constantFrom(0, 0, 0, 24, -5),
    })
    .map(({ a, b, power, volts }): Edge => ({ a: `n${a}`, b: `n${b}`, ohms: 10 ** power, volts })),
  { minLength: 1, maxLength: 26 },
);
const orderOf = (list: readonly Edge[]): MeshOrder => new MeshOrder(list.map(({ a, b }) => [a, b] as const));
const branchOf =
  (order: MeshOrder) =>
  ({ a, b, ohms, volts }: Edge): Branch => ({
    a: order.node(a),
    b: order.node(b),
    siemens: 1 / ohms,
    amps: volts / ohms,
  });
const nodesIn = (list: readonly Edge[]): readonly string[] => [
  ...new Set(list.flatMap(({ a, b }) => [a, b])),
];
const close = (value: number | undefined, wanted: number | undefined, share = 1e-9): void => {
  if (wanted === undefined || !Number.isFinite(wanted)) expect(value).toBe(wanted);
  else expect(Math.abs(value! - wanted)).toBeLessThanOrEqual(share * Math.max(1e-3, Math.abs(wanted)));
};

describe('star–mesh', () => {
  test('derived: resistances are those of the equations solved against each node', () => {
    fc.assert(
      fc.property(edges, (list) => {
        const order = orderOf(list);
        const mesh = new StarMesh(order, list.map(branchOf(order)));
        const elements = list
          .filter(({ a, b }) => a !== b)
          .map(({ a, b, ohms }, k): Resistor => ({ kind: 'resistor', id: `${k}`, a, b, ohms }));
        const nodes = nodesIn(list);
        for (const common of nodes) {
          const answer = ohmsTo({ elements, references: [] }, common, nodes);
          if (!answer.ok) throw new Error(answer.trouble.sentence);
          // The equations themselves lose figures where a milliohm stands beside a megohm.
          for (const node of nodes)
            close(mesh.ohms(order.node(node), order.node(common)), answer.ohms.get(node), 1e-6);
        }
      }),
      { numRuns: 150, seed: 4 },
    );
  });

  test('derived: a bridge that balances, and a cube from corner to corner: 5/6', () => {
    const bridge = ['a b 1', 'b c 2', 'a d 3', 'd c 6', 'b d 5'].map((line): Edge => {
      const [a, b, ohms] = line.split(' ') as [string, string, string];
      return { a, b, ohms: Number(ohms), volts: 0 };
    });
    const order = orderOf(bridge);
    const mesh = new StarMesh(order, bridge.map(branchOf(order)));
    expect(mesh.ohms(order.node('a'), order.node('c'))).toBeCloseTo((3 * 9) / 12, 12);
    const cube: Edge[] = [];
    for (let k = 0; k < 8; k++)
      for (const bit of [1, 2, 4])
        if (!(k & bit)) cube.push({ a: `${k}`, b: `${k | bit}`, ohms: 1, volts: 0 });
    const other = orderOf(cube);
    expect(new StarMesh(other, cube.map(branchOf(other))).ohms(other.node('0'), other.node('7'))).toBeCloseTo(
      5 / 6,
      12,
    );
  });

  test('derived: volts are those of the equations solved at once', () => {
    fc.assert(
      fc.property(edges, (list) => {
        const order = orderOf(list);
        const mesh = new StarMesh(order, list.map(branchOf(order)));
        const elements = list.map(({ a, b, ohms, volts }, k) =>
          volts === 0
            ? ({ kind: 'resistor', id: `${k}`, a, b, ohms } as const)
            : ({ kind: 'voltage', id: `${k}`, plus: a, minus: b, volts, ohms } as const),
        );
        const answer = operatingPoint({ elements, references: [] });
        if (!answer.ok) throw new Error(answer.trouble.sentence);
        for (const one of nodesIn(list))
          for (const other of nodesIn(list)) {
            const [a, b] = [order.node(one), order.node(other)];
            const there = mesh.rootOf(a) === mesh.rootOf(b) ? mesh.volts(a) - mesh.volts(b) : undefined;
            const wanted = answer.point.volts(one, other);
            if (wanted === undefined) expect(there).toBeUndefined();
            else expect(Math.abs(there! - wanted)).toBeLessThanOrEqual(1e-7);
          }
      }),
      { numRuns: 150, seed: 5 },
    );
  });

  test('derived: branches put in and taken out give what a mesh made anew gives, parts joined and parted too', () => {
    fc.assert(
      fc.property(
        edges,
        fc.array(fc.constantFrom('stays', 'stays', 'comes', 'goes'), { minLength: 26 }),
        (list, does) => {
          const order = orderOf(list);
          const those = (...words: string[]): Branch[] =>
            list.filter((_, k) => words.includes(does[k]!)).map(branchOf(order));
          const changed = new StarMesh(order, those('stays', 'goes'));
          const before = Array.from({ length: order.size }, (_, k) => changed.volts(k));
          changed.change(those('comes'), those('goes'));
          const anew = new StarMesh(order, those('stays', 'comes'));
          for (let a = 0; a < order.size; a++) {
            expect(changed.isThere(a)).toBe(anew.isThere(a));
            for (let b = 0; b < order.size; b++) {
              close(changed.ohms(a, b), anew.ohms(a, b), 1e-12);
              if (anew.rootOf(a) === anew.rootOf(b))
                close(changed.volts(a) - changed.volts(b), anew.volts(a) - anew.volts(b), 1e-9);
            }
          }
          changed.change([], []);
          expect(Array.from({ length: order.size }, (_, k) => changed.volts(k))).toEqual(before);
        },
      ),
      { numRuns: 300, seed: 6 },
    );
  });

  test('derived: amperes into nodes raise volts by the resistances between them', () => {
    const order = new MeshOrder([
      ['a', 'b'],
      ['b', 'c'],
      ['b', 'd'],
    ]);
    const at = (name: string): number => order.node(name);
    const mesh = new StarMesh(order, [
      { a: at('a'), b: at('b'), siemens: 1 / 7, amps: 0 },
      { a: at('b'), b: at('c'), siemens: 1 / 2, amps: 0 },
      { a: at('b'), b: at('d'), siemens: 1, amps: 0 },
    ]);
    const [into, volts] = [new Float64Array(4), new Float64Array(4)];
    into[at('a')] = 2;
    into[at('c')] = -2;
    mesh.respond(into, volts);
    expect(volts[at('a')]! - volts[at('c')]!).toBeCloseTo(18, 12);
    expect(volts[at('d')]! - volts[at('b')]!).toBeCloseTo(0, 12);
    expect([...into]).toEqual([0, 0, 0, 0]);
  });

  test('derived: a branch that was not foreseen is refused', () => {
    const order = new MeshOrder([
      ['a', 'b'],
      ['c', 'd'],
    ]);
    const mesh = new StarMesh(order, []);
    expect(() => mesh.change([{ a: order.node('a'), b: order.node('c'), siemens: 1, amps: 0 }], [])).toThrow(
      RangeError,
    );
    expect(mesh.ohms(order.node('a'), order.node('b'))).toBe(Number.POSITIVE_INFINITY);
    expect(mesh.isThere(order.node('d'))).toBe(false);
    expect(order.node('elsewhere')).toBe(-1);
  });
});
