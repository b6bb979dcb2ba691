/** The supply asked anew only where an edit reaches must answer as the whole asked from the start. */
import { describe, expect, test } from 'vitest';
import { suppliedCells } from '../../../bench/wiring-network.mjs';
import { sample } from '../../../samples/read.fixture.ts';
import { newRefit } from '../../refit/index.ts';
import type { Refit } from '../../refit/types.ts';
import { readWiring, WiringChecker } from '../wiring/index.ts';
import { wired } from '../wiring/wired.fixture.ts';
import { cabinetWith, WIRING } from './cabinet.fixture.ts';
import { edited, seeded } from './edits.fixture.ts';
import { judgeSupply, SupplyChecker } from './index.ts';

/** Both as an edit after the other brings them. */
class Both {
  readonly #joined: WiringChecker;
  readonly supply: SupplyChecker;

  constructor(refit: Refit) {
    this.#joined = new WiringChecker(refit.wiring, refit);
    this.supply = new SupplyChecker(refit);
    this.take(refit);
  }

  take(refit: Refit): void {
    this.#joined.update(refit.wiring);
    this.supply.update(refit, this.#joined.drawing, this.#joined.news());
  }

  get read() {
    return this.#joined.read();
  }
}

const bench = (wiring: Refit['wiring']): Refit => ({
  ...newRefit({ id: 'bench', name: 'Bench', machine: 'other' }),
  wiring,
});

function same(refit: Refit, both: Both, says: string): void {
  const read = readWiring(refit.wiring, refit);
  expect(both.read, says).toEqual(read);
  const whole = judgeSupply(refit, read);
  expect(both.supply.findings(), says).toEqual(whole.findings);
  expect(both.supply.sizes(), says).toEqual(whole.sizes);
  expect(both.supply.problems, says).toEqual(whole.context.problems);
}

const STARTS: readonly (readonly [string, () => Refit, number])[] = [
  ['the lathe', () => sample('carriage-works-lathe'), 8],
  ['the mill', () => sample('boatyard-mill'), 6],
  ['a small cabinet', () => cabinetWith().refit, 1],
  ['a made-up network', () => bench(suppliedCells(3)), 10],
  ['a cabinet with loose diodes', () => bench(withDiodes()), 1],
];

/** Two supplies on one rail by diodes, a third by itself with a diode before and one across its load. */
function withDiodes(): Refit['wiring'] {
  return wired(
    [
      'X0 mains-inlet volts=230_V',
      ...['G1', 'G2', 'G3'].map((id, n) => `${id} supply volts=${24 - n}_V current=5_A`),
      ...['D1', 'D2', 'D3', 'D4'].map((id) => `${id} diode`),
      'K1 relay coil-volts=24_V coil-current=40_mA',
      'K2 relay coil-volts=24_V coil-current=20_mA',
      'Y1 valve coil-volts=24_V coil-current=0.4_A',
      'X1 strip ways=4',
    ],
    [
      ...['G1', 'G2', 'G3'].flatMap((id) => [`X0.L1 ${id}.L`, `X0.N ${id}.N`]),
      ...['G1.plus D1.A', 'D1.K X1.1', 'G2.plus D2.A', 'D2.K X1.1', 'X1.1 K1.A1', 'X1.1 K2.A1'],
      ...['K1.A2 G1.minus', 'K2.A2 G2.minus', 'G1.minus G2.minus'],
      ...['G3.plus D3.A', 'D3.K Y1.A1', 'Y1.A2 G3.minus', 'D4.K Y1.A1', 'D4.A Y1.A2'],
    ],
  );
}

describe('incremental', () => {
  for (const [name, start, every] of STARTS)
    for (const seed of [1, 2, 3])
      test(`derived: ${name}: 120 edits, seed ${seed}: the same findings, sizes and problems as asked from the start`, () => {
        const random = seeded(seed);
        let refit = start();
        const both = new Both(refit);
        same(refit, both, 'before any edit');
        for (let at = 0; at < 120; at++) {
          const before = refit.wiring;
          refit = { ...refit, wiring: edited(refit.wiring, random, at) };
          both.take(refit);
          if (at % every === 0)
            same(refit, both, `${name}, seed ${seed}, edit ${at}: ${difference(before, refit.wiring)}`);
        }
      }, 120_000);
});

/** What an edit changed, for whoever has to look for a fault. */
function difference(before: Refit['wiring'], now: Refit['wiring']): string {
  const changed: string[] = [];
  for (const kind of ['devices', 'wires', 'cables', 'settings'] as const)
    for (const id of new Set([...Object.keys(before[kind]), ...Object.keys(now[kind])]))
      if (before[kind][id] !== now[kind][id]) changed.push(`${kind}.${id} ${JSON.stringify(now[kind][id])}`);
  return changed.join('; ').slice(0, 400);
}

describe('bounds', () => {
  test('derived: undoing everything leaves the same findings and no more memory', () => {
    const refit = bench(suppliedCells(2));
    const both = new Both(refit);
    const [before, kept] = [both.supply.findings(), both.supply.kept];
    for (const wire of Object.values(refit.wiring.wires)) {
      const { [wire.id]: _, ...wires } = refit.wiring.wires;
      both.take({ ...refit, wiring: { ...refit.wiring, wires } });
      both.take(refit);
    }
    expect(both.supply.findings()).toEqual(before);
    expect(both.supply.kept.answers).toBe(kept.answers);
    expect(both.supply.kept.looks).toBe(kept.looks);
  });

  test('derived: an edit deep in the tree asks as few answers in a network of 5000 terminals as in one of 500', () => {
    const asked = (cells: number) => {
      const refit = bench(suppliedCells(cells));
      const both = new Both(refit);
      const counts = ['c1-s1', 'c1-s2', 'c1-d1', 'c1-k1', 'c1-k4', 'c1-m1'].map((id) => {
        const begun = both.supply.kept.asked;
        const { [id]: _, ...wires } = refit.wiring.wires;
        both.take({ ...refit, wiring: { ...refit.wiring, wires } });
        both.take(refit);
        return both.supply.kept.asked - begun;
      });
      return { counts, terminals: readWiring(refit.wiring).terminals.size };
    };
    const [small, large] = [asked(4), asked(50)];
    expect(small.terminals).toBeLessThan(600);
    expect(large.terminals).toBeGreaterThan(4500);
    for (const [n, count] of large.counts.entries()) expect(count).toBeLessThan(1.5 * small.counts[n]! + 20);
  });

  test('derived: 3000 wires side by side, and 3000 from a terminal to itself, are answered', () => {
    const all = Array.from({ length: 6000 }, (_, n) => n);
    const { refit } = cabinetWith(
      {},
      {},
      {
        ...WIRING,
        wires: {
          ...WIRING.wires,
          ...Object.fromEntries(
            all.map((n) => [
              `q${n}`,
              { id: `q${n}`, from: 'F3.2', to: n % 2 === 0 ? 'F3.2' : 'A1.plus', cable: null, settings: {} },
            ]),
          ),
        },
      },
    );
    const { findings, context } = judgeSupply(refit, readWiring(refit.wiring, refit));
    expect(findings.length).toBeGreaterThan(10);
    expect(context.flow.gives.get('G1.plus')!.amps).toBeCloseTo(0.7, 9);
    // Each of those without a length carries an equal share.
    expect(context.currents.get('q1')!.amps).toBeGreaterThan(0);
    expect(context.currents.get('q1')!.amps).toBeCloseTo(context.currents.get('q3')!.amps, 9);
  });

  test('derived: what would have to feed itself is named, and nothing runs away', () => {
    const wires = {
      ...WIRING.wires,
      Q1: { id: 'Q1', from: 'T1.3', to: 'T1.1', cable: null, settings: {} },
      Q2: { id: 'Q2', from: 'T1.4', to: 'T1.2', cable: null, settings: {} },
    };
    const rest = Object.fromEntries(Object.entries(wires).filter(([id]) => id !== 'W2' && id !== 'W3'));
    const { refit, wiring } = cabinetWith({}, {}, { ...WIRING, wires: rest });
    const answer = judgeSupply(refit, wiring);
    expect(answer.context.flow.trouble?.sentence).toContain('T1 gives is led back to what it takes');
    expect(answer.findings[0]).toMatchObject({ id: 'currents:T1', verdict: 'unknown' });
  });
});
