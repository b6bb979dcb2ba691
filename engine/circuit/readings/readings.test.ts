import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Wiring } from '../../refit/types.ts';
import { operatingPoint } from '../network/index.ts';
import { cabinetWith, WIRING } from '../power/cabinet.fixture.ts';
import { readWiring } from '../wiring/read.ts';
import type { ReadWiring } from '../wiring/types.ts';
import { wired } from '../wiring/wired.fixture.ts';
import { type RingRow, type RingSheet, readingsAt, ringItOut, seekRingOut } from './index.ts';
import { OhmPaths } from './ohms.ts';
import { waysOf } from './ways.ts';

const sheetOf = (devices: readonly string[], wires: readonly string[]): RingSheet => {
  const read = readWiring(wired(devices, wires));
  expect(read.problems).toEqual([]);
  return ringItOut(read);
};
function row(sheet: RingSheet, step: string, at: string): RingRow {
  const found = sheet.steps.find(({ id }) => id === step)?.rows.find((each) => each.at.includes(at));
  if (!found) throw new Error(`no row of ${step} at ${at}`);
  return found;
}

const SMALL = [
  'X1 mains-inlet volts=230_V current=16_A',
  'G1 supply volts=24_V current=5_A tolerance=2_%',
  'F1 fuse amps=2_A',
  'S1 mushroom nc=1',
  'K1 contactor coil-resistance=160_Ω coil-current=150_mA main=2',
  'K2 relay coil-resistance=1200_Ω coil-current=20_mA no=1 nc=0',
];
const SMALL_WIRES = [
  'X1.L1 G1.L',
  'X1.N G1.N',
  'X1.PE G1.PE',
  'G1.plus F1.1',
  'F1.2 S1.11',
  'S1.12 K1.A1',
  'K1.A2 G1.minus',
  'F1.2 K1.13',
  'K1.14 K2.A1',
  'K2.A2 G1.minus',
];

describe('without power', () => {
  test('derived: coils in parallel by hand: 160 Ω through the closed stop button, 15 % either way', () => {
    const sheet = sheetOf(SMALL, SMALL_WIRES);
    expect(sheet.common).toBe('G1.minus');
    // The supply's own electronics hang beside it, so it is 'at most' 160 × 1.15 and what contacts and fuse add.
    const coil = row(sheet, 'common', 'K1.A1');
    expect(coil.expect!.high).toBeCloseTo(160 * 1.15, 0);
    // K1 is not pulled in: behind its open contact there is the relay alone, and no electronics.
    const relay = row(sheet, 'common', 'K2.A1');
    expect(relay.expect!.low).toBeCloseTo(1200 * 0.85, 0);
    expect(relay.expect!.high).toBeCloseTo(1200 * 1.15, 0);
    expect(relay.says).toMatch(/1\.02 kΩ to 1\.38 kΩ/);
  });
  test('derived: without the supply the reading is the coil itself', () => {
    const sheet = sheetOf(
      SMALL,
      SMALL_WIRES.filter((each) => each !== 'G1.plus F1.1'),
    );
    const coil = row(sheet, 'common', 'K1.A1');
    expect(coil.expect!.low).toBeCloseTo(160 * 0.85, 0);
    expect(coil.expect!.high).toBeCloseTo(160 * 1.15, 0);
  });
  test('derived: contacts at rest and moved', () => {
    const sheet = sheetOf(SMALL, SMALL_WIRES);
    const rows = sheet.steps.find(({ id }) => id === 'contacts')!.rows.filter(({ at }) => at[0] === 'S1.11');
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatchObject({ expect: { high: 1 } });
    expect(rows[1]!.when).toBe('with S1 pressed or turned');
    expect(rows[1]!.says).toContain('not meaningful: electronics');
    const alone = sheetOf(
      SMALL,
      SMALL_WIRES.filter((each) => each !== 'G1.plus F1.1'),
    );
    const pressed = alone.steps
      .find(({ id }) => id === 'contacts')!
      .rows.filter(({ at }) => at[0] === 'S1.11')[1]!;
    expect(pressed.says).toBe('no path: the meter shows OL');
  });
  test('derived: bonding by the copper of the way: 10 m of 2.5 mm², class 5, half as much again and 0.05 Ω', () => {
    const wiring = wired(['E1 earth-bar', 'H1 metal', 'H2 metal'], ['E1.1 H1.PE']);
    const long: Wiring = {
      ...wiring,
      wires: { w1: { ...wiring.wires.w1!, settings: { section: '2.5 mm²', length: '10 m' } } },
    };
    const sheet = ringItOut(readWiring(long));
    expect(sheet.earth).toBe('E1.1');
    expect(row(sheet, 'bonds', 'H1.PE').expect!.high).toBeCloseTo(1.5 * 0.0798 + 0.05, 6);
    expect(row(sheet, 'bonds', 'H2.PE').says).toContain('not bonded');
  });
  test('derived: electronics are said so, and lines to earth read nothing', () => {
    const { wiring } = cabinetWith();
    const sheet = ringItOut(wiring);
    expect(row(sheet, 'earth', 'X1.L1').says).toBe('no path: the meter shows OL');
    expect(row(sheet, 'common', 'G2.plus').says).toContain('climbs');
    expect(row(sheet, 'common', 'G2.plus').expect!.high).toBeLessThan(220 * 1.06 + 2);
    const diodes = sheet.steps.find(({ id }) => id === 'diodes')!;
    expect(row(sheet, 'diodes', 'G2.minus').expect!.high).toBeLessThan(0.8);
    expect(diodes.rows).toHaveLength(8);
  });
  test('derived: readings at a terminal are those of its wires and of its net', () => {
    const sheet = ringItOut(cabinetWith().wiring);
    const steps = readingsAt(sheet, 'F3.2').map(({ step }) => step.id);
    for (const id of ['wires', 'earth', 'common', 'control']) expect(steps).toContain(id);
  });
  test('derived: every reading of a network between its bounds lies between the bounds of the readings', () => {
    const { wiring } = cabinetWith();
    const ways = waysOf(wiring);
    const nets = wiring.nets.map(({ id }) => id);
    const common = wiring.netOf.get('G1.minus')!.id;
    const paths = new OhmPaths(ways);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
          minLength: ways.length,
          maxLength: ways.length,
        }),
        (shares) => {
          const middle = ways.map((way, k) => {
            const high = way.high === Number.POSITIVE_INFINITY ? way.low * 10 ** (12 * shares[k]!) : way.high;
            const ohms = way.low * (high / way.low) ** shares[k]!;
            return { ...way, low: ohms, high: ohms };
          });
          const exact = new OhmPaths(middle);
          for (const net of nets) {
            const [there, bounds] = [exact.band(net, common), paths.band(net, common)];
            expect(there.high).toBeGreaterThanOrEqual(bounds.low * (1 - 1e-6) - 1e-6);
            expect(there.low).toBeLessThanOrEqual(bounds.high * (1 + 1e-6) + 1e-6);
          }
        },
      ),
      { numRuns: 40, seed: 9 },
    );
  });
});

describe('with power', () => {
  test('derived: 24 V with 2 % and the meter’s own error; the contactor pulls in and carries on to the relay', () => {
    const sheet = sheetOf(SMALL, SMALL_WIRES);
    const plus = row(sheet, 'control', 'F1.2').expect!;
    expect(plus.low).toBeCloseTo(24 * 0.98 * 0.99 - 0.1, 1);
    expect(plus.high).toBeCloseTo(24 * 1.02 * 1.01 + 0.1, 1);
    expect(row(sheet, 'control', 'K1.A1').expect!.low).toBeGreaterThan(22.9);
    expect(row(sheet, 'control', 'K2.A1').expect!.low).toBeGreaterThan(22.9);
    expect(row(sheet, 'control', 'X1.L1').says).toMatch(/a\.c\.$/);
    expect(sheet.steps.find(({ id }) => id === 'control')!.cautions.join(' ')).toContain('K1');
  });
  test('derived: every phase of three against its neutral, and a supply on the second', () => {
    const sheet = sheetOf(
      ['X1 mains-inlet volts=230_V phases=three', 'F1 breaker poles=3 amps=16_A', 'G1 supply volts=24_V'],
      ['X1.L1 F1.1', 'X1.L2 F1.3', 'X1.L3 F1.5', 'F1.4 G1.L', 'X1.N G1.N'],
    );
    for (const at of ['X1.L1', 'X1.L2', 'X1.L3', 'G1.L']) {
      const { low, high } = row(sheet, 'control', at).expect!;
      expect(low).toBeCloseTo(230 * 0.9 * 0.99 - 0.1, 0);
      expect(high).toBeCloseTo(230 * 1.1 * 1.01 + 0.1, 0);
    }
    expect(sheet.steps.find(({ id }) => id === 'control')!.cautions.join(' ')).toContain('G1');
  });
  test('derived: no mains at the supply, no volts behind it', () => {
    const sheet = sheetOf(
      SMALL,
      SMALL_WIRES.filter((each) => each !== 'X1.L1 G1.L'),
    );
    expect(row(sheet, 'control', 'F1.2')).toMatchObject({ says: 'next to nothing' });
  });
  test('derived: an output that is off leaks, one that is on lifts its lamp; only what changes is listed', () => {
    const sheet = ringItOut(cabinetWith().wiring);
    // 0.5 mA through the lamp's 480 Ω: 24 V × 480 / (48 kΩ + 480).
    const off = row(sheet, 'control', 'A1.out1').expect!;
    expect((off.low + off.high) / 2).toBeCloseTo((24 * 480) / 48480, 1);
    const on = sheet.steps.find(({ id }) => id === 'output:A1.out1')!;
    expect(on.rows).toHaveLength(1);
    expect(on.rows[0]!.expect!.low).toBeGreaterThan(22);
  });
  test('derived: an opto input with 2.2 kΩ inside, 24 V, 20 m of wire: the volts across it by the solver alone', () => {
    const sheet = sheetOf(
      [
        'X1 mains-inlet volts=230_V',
        'G1 supply volts=24_V tolerance=1_%',
        'A1 control inputs=1 outputs=0 input-form=sinking input-current=7_mA',
        'S1 limit nc=1',
        'R1 resistor ohms=1_kΩ',
      ],
      [
        'X1.L1 G1.L',
        'X1.N G1.N',
        'G1.plus A1.plus',
        'G1.minus A1.minus',
        'A1.in-com G1.minus',
        'G1.plus S1.11',
        'S1.12 R1.1',
        'R1.2 A1.in1',
      ],
    );
    const series = (24 - 1.2) / 7e-3;
    const expected = operatingPoint({
      elements: [
        { kind: 'voltage', id: 'G', plus: 'p', minus: '0', volts: 24, ohms: 0 },
        { kind: 'resistor', id: 'R1', a: 'p', b: 'i', ohms: 1000 },
        { kind: 'resistor', id: 'in', a: 'i', b: '0', ohms: series },
      ],
      references: ['0'],
    });
    if (!expected.ok) throw new Error(expected.trouble.sentence);
    const band = row(sheet, 'control', 'A1.in1').expect!;
    expect((band.low + band.high) / 2).toBeCloseTo(expected.point.volts('i')!, 1);
  });
  test('derived: a relay that breaks its own coil is said to chatter, and the rest of the sheet stands', () => {
    const sheet = sheetOf(
      ['X1 mains-inlet volts=230_V', 'G1 supply volts=24_V', 'K1 relay coil-resistance=500_Ω nc=1 no=0'],
      ['X1.L1 G1.L', 'X1.N G1.N', 'G1.plus K1.51', 'K1.52 K1.A1', 'K1.A2 G1.minus'],
    );
    expect(sheet.notes.join(' ')).toContain('K1 goes on and off by itself');
    expect(sheet.steps.some(({ id }) => id === 'common')).toBe(true);
  });
});

describe('a short circuit', () => {
  test('derived: is said in the notes; ohms are still given, volts are not', () => {
    const sheet = sheetOf(SMALL, [...SMALL_WIRES, 'F1.2 G1.minus']);
    expect(sheet.notes.join(' ')).toContain('G1 is short-circuited');
    expect(sheet.steps.some(({ powered }) => powered)).toBe(false);
    expect(row(sheet, 'common', 'G1.plus').says).not.toBe('');
  });
});

describe('any wiring', () => {
  test('derived: empty, half drawn, wires to nowhere', () => {
    expect(ringItOut(readWiring({ devices: {}, wires: {}, cables: {}, settings: {} })).steps).toEqual([]);
    const read: ReadWiring = readWiring(
      wired(['K1 relay', 'Q9 nonsense'], ['K1.A1 nowhere.1', 'K1.A2 K1.A2', 'x y']),
    );
    expect(() => ringItOut(read)).not.toThrow();
  });
  test('derived: in pieces it is the same sheet, and the share done only rises', () => {
    const { wiring } = cabinetWith();
    const shares: number[] = [];
    const working = seekRingOut(wiring);
    for (let step = working.next(); ; step = working.next()) {
      if (step.done) {
        expect(step.value).toEqual(ringItOut(wiring));
        break;
      }
      shares.push(step.value);
    }
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBeLessThan(1);
  });
  test('derived: whatever is wired to whatever, each row has words, and bounds in order; ids are unique', () => {
    const marks = [...cabinetWith().wiring.terminals.keys()];
    const end = fc.constantFrom(...marks);
    fc.assert(
      fc.property(
        fc.subarray(Object.keys(WIRING.wires)),
        fc.array(fc.tuple(end, end), { maxLength: 6 }),
        (kept, added) => {
          const wires = Object.fromEntries([
            ...kept.map((id) => [id, WIRING.wires[id]!] as const),
            ...added.map(
              ([from, to], k) => [`Q${k}`, { id: `Q${k}`, from, to, cable: null, settings: {} }] as const,
            ),
          ]);
          const sheet = ringItOut(cabinetWith({}, {}, { ...WIRING, wires }).wiring);
          for (const note of sheet.notes) expect(note).not.toMatch(/NaN|undefined|\[object/);
          for (const step of sheet.steps) {
            const ids = step.rows.map(({ id }) => id);
            expect(new Set(ids).size).toBe(ids.length);
            for (const { says, expect: band, at } of step.rows) {
              expect(says).not.toMatch(/NaN|undefined|Infinity|\[object/);
              expect(at.length).toBeGreaterThan(0);
              if (band) expect(band.low <= band.high).toBe(true);
            }
          }
        },
      ),
      { numRuns: 15, seed: 21 },
    );
  });
});
