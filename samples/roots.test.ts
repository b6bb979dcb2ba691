/** One wire on the wrong terminal: what it does stands first, and nothing else gets better or worse by it. */
import { describe, expect, test } from 'vitest';
import { WiringLook } from '../engine/circuit/whole/index.ts';
import type { WiringFinding } from '../engine/circuit/wiring/index.ts';
import type { Refit, WiringWire } from '../engine/refit/index.ts';
import { sample } from './read.fixture.ts';

const lathe = sample('carriage-works-lathe');

const wire = (id: string, from: string, to: string): WiringWire => ({
  id,
  from,
  to,
  cable: null,
  settings: {},
});
function withWires(refit: Refit, added: readonly WiringWire[]): Refit {
  const wires = { ...refit.wiring.wires, ...Object.fromEntries(added.map((each) => [each.id, each])) };
  return { ...refit, wiring: { ...refit.wiring, wires } };
}
const look = (refit: Refit) => new WiringLook().look(refit);
const said = ({ id, verdict, sentence }: WiringFinding) => `${id} ${verdict} ${sentence}`;
const plain = look(lathe);

describe('one wire on the wrong terminal of the lathe', () => {
  const cases = [
    ['F10.2', 'K1.A1', 'mains', 'Mains reaches the control voltage'],
    ['Q1.2', 'K1.A1', 'mains', 'Mains reaches the control voltage'],
    ['Q1.2', 'A1.in1', 'mains', 'Mains reaches the control voltage'],
    ['F10.2', 'B21.BK', 'mains', 'Mains reaches the control voltage'],
    ['G1.plus', 'G2.plus', 'volts', 'Two supplies of different voltage are joined'],
    ['G1.plus', 'G3.plus', 'volts', 'Two supplies of different voltage are joined'],
    ['G1.plus', 'G1.minus', 'short', 'A supply is shorted'],
    ['G2.plus', 'G2.minus', 'short', 'A supply is shorted'],
    ['Q1.2', 'Q1.4', 'short', 'The mains are shorted'],
    ['X0.L1', 'X0.N', 'short', 'The mains are shorted'],
    // Through switches that are closed at rest.
    ['G2.plus', 'A1.in3', 'short', 'Short circuit'],
  ] as const;

  test.each(cases)(
    'derived: %s to %s: first, alone, and with the wire that does it',
    (from, to, harm, title) => {
      const looked = look(withWires(lathe, [wire('wrong', from, to)]));
      const [first, ...rest] = looked.findings;
      expect(first).toMatchObject({ verdict: 'fails', title, root: { harm, wires: ['wrong'] } });
      expect(first!.sentence).toContain(`from ${from} to ${to}`);
      // Everything else is as it would be without that wire, so nothing gets better by a mistake.
      expect(rest.map(said)).toEqual(plain.findings.map(said));
      expect(looked.sizes).toEqual(plain.sizes);
      expect(looked.read.wires.has('wrong')).toBe(true);
    },
  );

  test('derived: mains on control wires: where, how much, and that it can kill', () => {
    const [found] = look(withWires(lathe, [wire('wrong', 'F10.2', 'K1.A1')])).findings;
    expect(found!.sentence).toMatch(/X0\.L1.*K1\.A1.*230 V a\.c\. where 24 V d\.c\. belong/);
    expect(found!.sentence).toMatch(/can kill/);
    expect(found!.remedy).toMatch(/licensed electrician/);
  });

  test('derived: several mistakes stand one after the other, mains before supplies', () => {
    const { findings } = look(
      withWires(lathe, [
        wire('a', 'G1.plus', 'G3.plus'),
        wire('b', 'Q1.2', 'A1.in4'),
        wire('c', 'F10.2', 'K1.A1'),
      ]),
    );
    const roots = findings.filter(({ root }) => root);
    expect(roots.map(({ root }) => root!.harm)).toEqual(['mains', 'mains', 'volts']);
    expect(new Set(roots.flatMap(({ root }) => root!.wires))).toEqual(new Set(['a', 'b', 'c']));
    expect(findings.slice(roots.length).map(said)).toEqual(plain.findings.map(said));
  });

  test('derived: what is kept from edit to edit gives the same as a fresh look, with and without the mistake', () => {
    const kept = new WiringLook();
    let random = 20261126;
    const next = (below: number) => {
      random = (random * 1103515245 + 12345) % 2147483648;
      return Math.floor((random / 2147483648) * below);
    };
    const terminals = [...plain.read.terminals.keys()];
    const places = [['X0.L1', 'X0.L2', 'G1.plus', 'G2.plus', 'G3.plus', 'G1.minus'], terminals] as const;
    let now = lathe;
    let roots = 0;
    for (let n = 0; n < 10; n++) {
      const some = wire(`r${n % 3}`, places[0][next(6)]!, places[1][next(terminals.length)]!);
      now = some.from === some.to ? lathe : n % 5 === 4 ? lathe : withWires(now, [some]);
      const [one, other] = [kept.look(now), look(now)];
      expect(one.findings.map(said)).toEqual(other.findings.map(said));
      roots += one.findings.filter(({ root }) => root).length;
      const order = one.findings.map(({ root }) => root !== undefined);
      expect(order.lastIndexOf(true)).toBeLessThan(
        order.includes(false) ? order.indexOf(false) : order.length,
      );
    }
    expect(roots).toBeGreaterThan(3);
    expect(kept.look(lathe).findings.map(said)).toEqual(plain.findings.map(said));
  }, 120_000);
});

test('derived: the samples have no such mistake', () => {
  for (const id of ['carriage-works-lathe', 'boatyard-mill'])
    expect(look(sample(id)).findings.filter(({ root }) => root)).toEqual([]);
});
