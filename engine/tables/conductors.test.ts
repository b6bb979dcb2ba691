import { describe, expect, test } from 'vitest';
import { HOUR, INSTANT } from './breakers.ts';
import {
  AMBIENT_FACTORS,
  ambientFactor,
  CONDUCTOR_CURRENT,
  groupingFactor,
  multicoreFactor,
  tableCurrent,
} from './conductor-current.ts';
import { gaugeArea, gaugeOf, METRIC_AREAS, nextMetric } from './conductor-gauge.ts';
import { leastArea } from './conductor-least.ts';
import { protectiveArea } from './conductor-protective.ts';
import {
  CLASS_5_RESISTANCE,
  COPPER,
  FLEXIBLE_EXTRA,
  ohmsPerMetre,
  warmFactor,
} from './conductor-resistance.ts';
import { SEES, typeFor } from './residual-types.ts';

describe('current-carrying capacity', () => {
  test('published: IEC 60204-1 Table 6 as quoted by a drive maker: 2.5 mm² carries 17.4 A (B2) and 22 A (E)', () => {
    expect(tableCurrent(2.5, 'B2')).toBe(17.4);
    expect(tableCurrent(2.5, 'E')).toBe(22);
  });
  test('published: B1 and C are IEC 60364-5-52 B.52.4 at 30 °C times 0.87 (from memory), to the digit printed', () => {
    const at30 = { B1: [15.5, 21, 28, 36, 50, 68], C: [17.5, 24, 32, 41, 57, 76] };
    const areas = [1.5, 2.5, 4, 6, 10, 16];
    for (const laying of ['B1', 'C'] as const)
      areas.forEach((area, k) => {
        const ours = tableCurrent(area, laying)!;
        // Above 20 A the table is printed in whole amperes.
        expect(Math.abs(ours - 0.87 * at30[laying][k]!), `${laying} ${area}`).toBeLessThan(
          ours >= 20 ? 0.51 : 0.051,
        );
      });
  });
  test('published: ambient factors 30 to 60 °C of a servo amplifier’s manual are √((70 − t)/30) to two decimals', () => {
    for (const [celsius, factor] of AMBIENT_FACTORS)
      expect(Math.abs(Math.sqrt((70 - celsius) / 30) - factor)).toBeLessThanOrEqual(0.005 + 1e-9);
  });
  test('published: 2.5 mm² in B2 at 50 °C with four circuits together carries 9.2742 A (W-1)', () => {
    expect(tableCurrent(2.5, 'B2')! * ambientFactor(50)! * groupingFactor(4, 'B2')!).toBeCloseTo(9.2742, 9);
  });
  test('derived: thicker carries more; hotter and fuller carries less; beyond the tables nothing is known', () => {
    for (const laying of ['B1', 'B2', 'C', 'E'] as const) {
      const row = CONDUCTOR_CURRENT.map((each) => each[laying]);
      expect(row).toEqual([...row].sort((a, b) => a - b));
      for (let n = 1; n < 9; n++)
        expect(groupingFactor(n + 1, laying)!).toBeLessThanOrEqual(groupingFactor(n, laying)!);
      expect(groupingFactor(10, laying)).toBeUndefined();
      expect(tableCurrent(0.5, laying)).toBeUndefined();
      expect(tableCurrent(50, laying)).toBeUndefined();
      expect(tableCurrent(Number.NaN, laying)).toBeUndefined();
    }
    expect(tableCurrent(2.08, 'E')).toBe(16.1);
    expect(ambientFactor(20)).toBe(1.15);
    expect(ambientFactor(41)).toBe(0.91);
    expect(ambientFactor(61)).toBeUndefined();
    expect(multicoreFactor(4)).toBe(0.75);
    expect(multicoreFactor(25)).toBeUndefined();
  });
});

describe('resistance', () => {
  test('published: copper of IEC 60028 at 70 °C: 0.0206293103 Ω·mm²/m', () => {
    expect(COPPER.resistivity * 1e6 * warmFactor(70)).toBeCloseTo(0.0206293103, 10);
  });
  test('published: drop along 20 m of 1.5 mm² at 10 A and 70 °C: 5.5011494 V ideal, 6.36538 V as class 5 (W-2)', () => {
    const amps = 10;
    const both = 2 * 20 * amps * warmFactor(70);
    expect((both * COPPER.resistivity) / 1.5e-6).toBeCloseTo(5.5011494, 7);
    expect(both * ohmsPerMetre(1.5)).toBeCloseTo(6.36538, 8);
    expect(both * ohmsPerMetre(1.5) * (1 / 5.5011494)).toBeCloseTo(1.157, 3);
  });
  test('derived: printed values are 10 to 16 % above their copper; unprinted areas take the worst of that', () => {
    for (const [area, ohms] of CLASS_5_RESISTANCE) {
      const extra = (ohms / 1000) * area * 58;
      expect(extra).toBeGreaterThan(1.1);
      expect(extra).toBeLessThan(1.17);
    }
    expect(ohmsPerMetre(0.75)).toBeCloseTo(FLEXIBLE_EXTRA / 58 / 0.75, 12);
  });
});

describe('gauge', () => {
  test('published: areas of a servo manual’s list, AWG 24 to 18, within its digits (stranding: a few per cent)', () => {
    for (const [gauge, area] of [
      [24, 0.205],
      [22, 0.324],
      [20, 0.519],
      [18, 0.82],
    ] as const)
      expect(Math.abs(gaugeArea(gauge) / area - 1)).toBeLessThan(0.006);
    expect(gaugeArea(18)).toBeCloseTo(0.823047, 6);
    expect(gaugeArea(8)).toBeCloseTo(8.365564, 6);
  });
  test('derived: the definition’s two ends, and back again', () => {
    expect(2 * Math.sqrt(gaugeArea(36) / Math.PI)).toBeCloseTo(0.005 * 25.4, 12);
    expect(2 * Math.sqrt(gaugeArea(-3) / Math.PI)).toBeCloseTo(0.46 * 25.4, 9);
    for (const gauge of [-1, 0, 8, 16, 24, 36]) expect(gaugeOf(gaugeArea(gauge))).toBeCloseTo(gauge, 9);
  });
  test('published: the metric wire that replaces it: 16 by 1.5, 14 by 2.5, 18 by 1.0, 12 by 4 mm²', () => {
    expect([16, 14, 18, 12].map((gauge) => nextMetric(gaugeArea(gauge)))).toEqual([1.5, 2.5, 1, 4]);
    expect(nextMetric(1000)).toBeUndefined();
    expect([...METRIC_AREAS]).toEqual([...METRIC_AREAS].sort((a, b) => a - b));
  });
});

describe('least areas and protective conductors', () => {
  test('published: outside, single flexible 1.0, cable 0.75; inside power 0.75, control 0.2 mm²', () => {
    expect(leastArea('outside', false, 'power', undefined).area).toBe(1);
    expect(leastArea('outside', false, 'power', { cores: 3, shielded: false }).area).toBe(0.75);
    expect(leastArea('inside', false, 'power', undefined).area).toBe(0.75);
    expect(leastArea('inside', true, 'control', undefined).area).toBe(0.2);
    expect(leastArea('outside', true, 'control', { cores: 2, shielded: true }).area).toBe(0.2);
    expect(leastArea('outside', true, 'control', { cores: 2, shielded: false }).area).toBe(0.5);
  });
  test('published: protective conductor as the line up to 16, 16 up to 35, half above', () => {
    expect([1.5, 16, 25, 35, 50].map(protectiveArea)).toEqual([1.5, 16, 16, 16, 25]);
  });
});

describe('what trips', () => {
  test('published: IEC 60898-1: B 3 to 5, C 5 to 10, D 10 to 20 times; 1.13 and 1.45 within the hour', () => {
    expect(INSTANT).toEqual({ B: [3, 5], C: [5, 10], D: [10, 20] });
    expect(HOUR).toEqual([1.13, 1.45]);
  });
  test('derived: each type of residual current device sees all that a lesser one sees, and one thing more', () => {
    const types = ['AC', 'A', 'F', 'B'] as const;
    for (let k = 1; k < types.length; k++) {
      expect(SEES[types[k]!].slice(0, k)).toEqual(SEES[types[k - 1]!]);
      expect(SEES[types[k]!]).toHaveLength(k + 1);
    }
    expect(typeFor('smooth')).toBe('B');
    expect(typeFor('mixed')).toBe('F');
  });
});
