import { describe, expect, test } from 'vitest';
import type { WiringFinding } from '../wiring/types.ts';
import { cabinetWith, WIRING } from './cabinet.fixture.ts';
import { BRIDGE_VOLTS, HEAT_SOURCE, type Heat, heatIn, LOST } from './heat.ts';
import { judgeSupply, type PowerAnswer } from './index.ts';

function judged(...given: Parameters<typeof cabinetWith>): PowerAnswer {
  const { refit, wiring } = cabinetWith(...given);
  expect(wiring.problems).toEqual([]);
  return judgeSupply(refit, wiring);
}
const heats = (...given: Parameters<typeof cabinetWith>): ReadonlyMap<string, Heat> => {
  const { context } = judged(...given);
  const all = context.devices().flatMap((device) => heatIn(context, device) ?? []);
  return new Map(all.map((each) => [each.device, each]));
};
const cabinet = (answer: PowerAnswer): WiringFinding =>
  answer.findings.find(({ id }) => id === 'cabinet-heat:cabinet')!;

const BOX = {
  'cabinet-height': '0.8 m',
  'cabinet-width': '0.6 m',
  'cabinet-depth': '0.25 m',
  'cabinet-material': 'painted steel',
  'cabinet-stands': 'back against a wall',
  'room-temperature': '35 °C',
  'cabinet-limit': '55 °C',
};
/** Hand-made as W-6: 120 W give 17.566974 K in this box. */
const RISE_PER_WATT = 17.566974 / 120;

describe('heat of each device', () => {
  test('derived: by hand: supply, bus, transformer, drives, coils and logic', () => {
    const warm = heats();
    const watts = (device: string) => warm.get(device)!.watts;
    // 0.5 A control, 0.15 A contactor, 50 mA lamp on 24 V; 3 A and 4 A on the bus of 75 V, 1.8 times that from 50 V.
    expect(watts('G1') / (24 * 0.7 * (1 / 0.85 - 1))).toBeCloseTo(1, 2);
    expect(watts('G2') / (7 * BRIDGE_VOLTS + (75 * 75) / 220)).toBeCloseTo(1, 3);
    expect(watts('T1') / (50 * 12.6 * (1 / 0.95 - 1))).toBeCloseTo(1, 3);
    expect(watts('T2') / (75 * 3 * LOST.drive)).toBeCloseTo(1, 2);
    expect(watts('T3') / (75 * 4 * LOST.drive)).toBeCloseTo(1, 2);
    expect(watts('A1') / (24 * 0.5)).toBeCloseTo(1, 2);
    expect(watts('K1') / (24 * 0.15)).toBeCloseTo(1, 1);
    expect([...warm.values()].flatMap(({ needs }) => needs)).toEqual([]);
    // Largest first.
    const order = cabinet(judged(BOX))
      .figures.filter(({ name }) => name.startsWith('from '))
      .map(({ value }) => value);
    expect(order.length).toBeGreaterThan(5);
    expect(order).toEqual([...order].sort((a, b) => b - a));
  });
  test('derived: an inverter by its power, three phases three times', () => {
    const of = (phases: string, volts: string) => {
      const lines = phases === 'three' ? ['L1', 'L2', 'L3'] : ['L', 'N'];
      const poles = phases === 'three' ? ['L1', 'L2', 'L3'] : ['L1', 'N'];
      const wiring = {
        ...WIRING,
        devices: {
          X1: { ...WIRING.devices.X1!, settings: { volts, phases } },
          T4: {
            ...WIRING.devices.T2!,
            id: 'T4',
            kind: 'inverter',
            settings: { phases, 'supply-current': '6 A' },
          },
        },
        wires: Object.fromEntries(
          lines.map((line, k) => [
            `W${k}`,
            { id: `W${k}`, from: `X1.${poles[k]}`, to: `T4.${line}`, cable: null, settings: {} },
          ]),
        ),
      };
      return heats({}, {}, wiring).get('T4')!.watts;
    };
    expect(of('one', '230 V') / (230 * 6 * 0.035)).toBeCloseTo(1, 3);
    expect(of('three', '230 V') / (Math.sqrt(3) * 400 * 6 * 0.035)).toBeCloseTo(1, 2);
    expect(LOST.inverter).toBeGreaterThanOrEqual(0.03);
    expect(LOST.inverter).toBeLessThanOrEqual(0.04);
  });
  test('derived: typed watts go before; what stands outside the cabinet does not count', () => {
    const typed = heats({}, { T2: { heat: '30 W' }, T3: { heat: '0 W' } });
    expect(typed.get('T2')).toEqual({ device: 'T2', watts: 30, typed: true, needs: [] });
    expect(typed.has('T3')).toBe(false);
    const outside = {
      ...WIRING,
      devices: { ...WIRING.devices, T1: { ...WIRING.devices.T1!, where: 'floor' } },
    };
    expect(heats({}, {}, outside).has('T1')).toBe(false);
  });
  test('derived: a drive that says nothing of its supply is taken by its motor; one that says nothing waits', () => {
    expect(
      heats({}, { T2: { 'supply-current': null } }).get('T2')!.watts / (75 * 8 * LOST.drive),
    ).toBeCloseTo(1, 2);
    const open = heats({}, { T2: { 'supply-current': null, 'motor-current': null } });
    expect(open.get('T2')!.needs).toEqual(['T2.supply-current']);
    // So do those that pass its current on.
    expect(open.get('T1')!.needs).toContain('T2.supply-current');
    expect(open.get('G1')!.needs).toEqual([]);
  });
  test('derived: a dump resistor in the cabinet asks for its mean power', () => {
    const dump = (settings: Record<string, string>, where = 'cabinet') =>
      heats(
        {},
        {},
        {
          ...WIRING,
          devices: {
            ...WIRING.devices,
            R1: { ...WIRING.devices.T2!, id: 'R1', kind: 'dump-resistor', where, settings },
          },
        },
      ).get('R1');
    expect(dump({ ohms: '10 Ω', watts: '200 W' })).toMatchObject({ watts: 0, needs: ['R1.heat'] });
    expect(dump({ heat: '15 W' })).toMatchObject({ watts: 15, typed: true, needs: [] });
    expect(dump({}, 'on the roof')).toBeUndefined();
  });
});

describe('the cabinet', () => {
  const sum = (): number => [...heats().values()].reduce((all, { watts }) => all + watts, 0);
  test('derived: the sum stands in for what nobody has typed, with its contributors', () => {
    const finding = cabinet(judged(BOX));
    expect(finding.figures.find(({ name }) => name === 'heat inside')!.value).toBeCloseTo(sum(), 9);
    expect(finding.margin).toBeCloseTo(20 / (sum() * RISE_PER_WATT), 5);
    expect(finding.sentence).toMatch(/of heat: G2 \d+ W, T1 \d+ W, /);
    expect(finding.source).toContain(HEAT_SOURCE);
    const parts = finding.figures.filter(({ name }) => name.startsWith('from '));
    expect(parts.reduce((all, { value }) => all + value, 0)).toBeCloseTo(sum(), 1);
    expect(finding.verdict).toBe(finding.margin! < 1 ? 'fails' : finding.margin! < 1.3 ? 'tight' : 'fits');
  });
  test('derived: a typed total goes before the sum, and names nobody', () => {
    const finding = cabinet(judged({ ...BOX, 'cabinet-heat': '60 W' }));
    expect(finding.margin).toBeCloseTo(20 / (60 * RISE_PER_WATT), 5);
    expect(finding.sentence).not.toContain('of heat');
    expect(finding.source).not.toContain(HEAT_SOURCE);
  });
  test('derived: a sum with gaps can fail, and never fits', () => {
    const gap = { T2: { 'supply-current': null, 'motor-current': null } };
    const low = cabinet(judged({ ...BOX, 'cabinet-limit': '90 °C' }, gap));
    expect(low).toMatchObject({ verdict: 'unknown', needs: ['T2.supply-current'] });
    expect(low.margin).toBeUndefined();
    expect(low.sentence).toContain('or more');
    expect(cabinet(judged({ ...BOX, 'cabinet-limit': '40 °C' }, gap)).verdict).toBe('fails');
    expect(cabinet(judged({ ...BOX, 'cabinet-limit': '90 °C' })).verdict).toBe('fits');
  });
  test('derived: before the cabinet is described, the heat is told all the same', () => {
    const finding = cabinet(judged());
    expect(finding.verdict).toBe('unknown');
    expect(finding.sentence).toContain('of heat: G2');
    expect(finding.needs).not.toContain('settings.cabinet-heat');
  });
  test('derived: a short circuit leaves no currents, and then the heat is asked for', () => {
    const wires = {
      ...WIRING.wires,
      Q1: { id: 'Q1', from: 'F3.2', to: 'G1.minus', cable: null, settings: {} },
    };
    const finding = cabinet(judged(BOX, {}, { ...WIRING, wires }));
    expect(finding.verdict).toBe('unknown');
    expect(finding.needs).toContain('settings.cabinet-heat');
  });
  test('derived: hostile watts are named and count as not typed', () => {
    const { refit, wiring } = cabinetWith(BOX, {
      T2: { heat: '-5 W' },
      T3: { heat: 'hot' },
      G1: { heat: '1e400 W' },
    });
    const where = wiring.problems.map((each) => each.where).join(' ');
    for (const id of ['T2', 'T3', 'G1']) expect(where).toContain(`${id}.settings.heat`);
    const finding = cabinet(judgeSupply(refit, wiring));
    expect(finding.figures.find(({ name }) => name === 'heat inside')!.value).toBeCloseTo(sum(), 9);
    expect(finding.sentence).not.toMatch(/NaN|undefined|Infinity/);
  });
});
