/** An edit asked anew only where it reaches must answer as the whole asked from the start. */
import { describe, expect, test } from 'vitest';
import { cellsOf } from '../../../../bench/wiring-network.mjs';
import type { Change, Wiring } from '../../../refit/types.ts';
import { WIRING_KINDS } from '../kinds/index.ts';
import { readWiring } from '../read.ts';
import { wired } from '../wired.fixture.ts';
import { checkWiring, WiringChecker } from './checker.ts';
import { Components } from './components.ts';

/** The same numbers on every computer. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const put = <T>(record: Readonly<Record<string, T>>, id: string, value: T | null): Record<string, T> => {
  const { [id]: _, ...rest } = record;
  return value === null ? rest : { ...rest, [id]: value };
};

function after(wiring: Wiring, change: Change): Wiring {
  switch (change.do) {
    case 'device':
      return { ...wiring, devices: put(wiring.devices, change.id, change.new) };
    case 'wire':
      return { ...wiring, wires: put(wiring.wires, change.id, change.new) };
    case 'cable':
      return { ...wiring, cables: put(wiring.cables, change.id, change.new) };
    default:
      return wiring;
  }
}

/** One made-up edit: wires laid and taken off, devices changed, added and taken out with their wires left hanging. */
function someEdit(wiring: Wiring, random: () => number, at: number): Change {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const terminals = [...readWiring(wiring).terminals.keys()];
  const wires = Object.values(wiring.wires);
  const devices = Object.values(wiring.devices);
  const dice = random();
  if (dice < 0.35 || wires.length < 5) {
    const cable = random() < 0.3 ? pick(['W1', 'W2', 'W3']) : null;
    const id = `e${at}`;
    return {
      do: 'wire',
      id,
      old: null,
      new: {
        id,
        from: random() < 0.03 ? 'nowhere.1' : pick(terminals),
        to: pick(terminals),
        cable,
        settings: random() < 0.3 ? { length: `${1 + Math.floor(random() * 20)} m`, section: '0.25 mm²' } : {},
      },
    };
  }
  if (dice < 0.65) {
    const old = pick(wires);
    return { do: 'wire', id: old.id, old, new: null };
  }
  if (dice < 0.75) {
    const id = pick(['W1', 'W2', 'W3']);
    return {
      do: 'cable',
      id,
      old: null,
      new:
        random() < 0.2
          ? null
          : {
              id,
              name: '',
              settings: {
                length: `${1 + Math.floor(random() * 30)} m`,
                shield: pick(['none', 'braid', 'foil']),
                route: pick(['', 'left']),
              },
            },
    };
  }
  if (dice < 0.85) {
    const old = pick(devices);
    return { do: 'device', id: old.id, old, new: null };
  }
  if (dice < 0.93) {
    const kind = pick(Object.keys(WIRING_KINDS));
    const id = `D${Math.floor(random() * 40)}`;
    return {
      do: 'device',
      id,
      old: null,
      new: { id, kind, name: '', part: null, where: '', settings: {}, terminals: {}, pins: {} },
    };
  }
  const old = pick(devices);
  const specs = Object.entries(WIRING_KINDS[old.kind]!.settings);
  if (specs.length === 0) return { do: 'device', id: old.id, old, new: { ...old, name: 'again' } };
  const [name, spec] = pick(specs);
  const value =
    spec.kind === 'choice'
      ? pick(spec.options)
      : spec.kind === 'count'
        ? String(spec.least + Math.floor(random() * 4))
        : spec.kind === 'text'
          ? pick(['', 'X Z', '1-3'])
          : `${1 + Math.floor(random() * 30)} ${spec.unit}`;
  return { do: 'device', id: old.id, old, new: { ...old, settings: { ...old.settings, [name]: value } } };
}

describe('incremental', () => {
  for (const seed of [1, 2, 3, 4])
    test(`derived: 150 edits, seed ${seed}: the same findings and problems as asked from the start, in either way of taking over`, () => {
      const random = seeded(seed);
      let wiring = cellsOf(2);
      const named = new WiringChecker(wiring);
      const compared = new WiringChecker(wiring);
      const shown = new Map(named.findings().map((each) => [each.id, each]));
      for (let at = 0; at < 150; at++) {
        const change = someEdit(wiring, random, at);
        wiring = after(wiring, change);
        const { changed, gone } = named.apply([change], wiring);
        compared.update(wiring);
        for (const each of changed) shown.set(each.id, each);
        for (const id of gone) shown.delete(id);
        if (at % 10 !== 9) continue;
        const whole = new WiringChecker(wiring);
        const says = `seed ${seed}, edit ${at}: ${JSON.stringify(change).slice(0, 300)}`;
        expect(named.findings(), says).toEqual(whole.findings());
        expect(compared.findings(), says).toEqual(whole.findings());
        expect(named.problems(), says).toEqual(whole.problems());
        // What an edit reports as changed and gone keeps a copy right.
        expect(
          [...shown.values()].sort((a, b) => (a.id < b.id ? -1 : 1)),
          says,
        ).toEqual(whole.findings());
        // What is kept is that of the wiring as it stands.
        expect(named.kept, says).toEqual(whole.kept);
      }
    });

  test('derived: undoing everything leaves the same findings and no more memory', () => {
    const wiring = cellsOf(4);
    const checker = new WiringChecker(wiring);
    const [before, kept] = [checker.findings(), checker.kept];
    for (const wire of Object.values(wiring.wires)) {
      const without: Change = { do: 'wire', id: wire.id, old: wire, new: null };
      const { [wire.id]: _, ...rest } = wiring.wires;
      checker.apply([without], { ...wiring, wires: rest });
      checker.apply([{ ...without, old: null, new: wire }], wiring);
    }
    expect(checker.findings()).toEqual(before);
    expect(checker.kept).toEqual(kept);
  });

  test('derived: nets of the checker are those of the plain reading, whatever was joined and parted', () => {
    const random = seeded(9);
    const parts = new Components({ moved: () => {}, changed: () => {}, edges: () => {} });
    const names = Array.from({ length: 60 }, (_, n) => `D${n}.1`);
    for (const name of names) parts.addVertex(name, 'joint');
    const edges = new Map<string, readonly [string, string]>();
    for (let at = 0; at < 3000; at++) {
      if (edges.size > 0 && random() < 0.48) {
        const id = [...edges.keys()][Math.floor(random() * edges.size)]!;
        edges.delete(id);
        parts.removeEdge(id);
      } else {
        const ends = [names[Math.floor(random() * 60)]!, names[Math.floor(random() * 60)]!] as const;
        edges.set(`e${at}`, ends);
        parts.addEdge(`e${at}`, ...ends);
      }
      if (at % 50 !== 0) continue;
      const plain = readWiring({
        ...wired(
          names.map((name) => `${name.split('.')[0]} strip ways=1`),
          [],
        ),
        wires: Object.fromEntries(
          [...edges].map(([id, [from, to]]) => [id, { id, from, to, cable: null, settings: {} }]),
        ),
      });
      for (const net of plain.nets) {
        const component = parts.find(net.terminals[0]!)!;
        expect(component.size).toBe(net.terminals.length);
        expect(component.edges).toBe(net.wires.length);
        for (const each of net.terminals) expect(parts.find(each)).toBe(component);
      }
    }
  });

  test('derived: an edit asks as few rules in a network of 5000 terminals as in one of 500', () => {
    const asked = (cells: number) => {
      const wiring = cellsOf(cells);
      const checker = new WiringChecker(wiring);
      const counts: number[] = [];
      for (const id of ['c1-s1', 'c1-s2', 'c1-s3', 'c1-d1', 'c1-d3']) {
        const wire = wiring.wires[id]!;
        const { [id]: _, ...rest } = wiring.wires;
        counts.push(
          checker.apply([{ do: 'wire', id, old: wire, new: null }], { ...wiring, wires: rest }).asked,
        );
        counts.push(checker.apply([{ do: 'wire', id, old: null, new: wire }], wiring).asked);
      }
      return { counts, terminals: readWiring(wiring).terminals.size };
    };
    const [small, large] = [asked(4), asked(60)];
    expect(small.terminals).toBeLessThan(600);
    expect(large.terminals).toBeGreaterThan(4500);
    expect(large.counts).toEqual(small.counts);
    expect(Math.max(...large.counts)).toBeLessThan(60);
  });

  test('derived: 5000 wires onto one terminal, and 5000 from a terminal to itself, are answered', () => {
    const all = Array.from({ length: 5000 }, (_, n) => n);
    const wiring: Wiring = {
      ...wired(['X1 strip ways=200', 'K1 relay'], []),
      wires: Object.fromEntries(
        all.map((n) => [
          `w${n}`,
          {
            id: `w${n}`,
            from: 'K1.A1',
            to: n % 2 === 0 ? 'K1.A1' : `X1.${1 + (n % 200)}`,
            cable: null,
            settings: {},
          },
        ]),
      ),
    };
    const findings = checkWiring(wiring);
    expect(findings.filter(({ rule }) => rule === 'wire').length).toBeGreaterThanOrEqual(2500);
    expect(findings.find(({ id }) => id === 'holding:K1.A1')!.verdict).toBe('tight');
  });
});
