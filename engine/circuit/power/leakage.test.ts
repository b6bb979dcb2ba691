import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Wiring } from '../../refit/types.ts';
import { LEAKAGE_SHARE, TRIPS_FROM } from '../../tables/residual-types.ts';
import type { WiringFinding } from '../wiring/types.ts';
import { cabinetWith, WIRING } from './cabinet.fixture.ts';
import { judgeSupply, type PowerAnswer } from './index.ts';
import { addUp, type Leak, USUAL_LEAKAGE } from './leakage.ts';

type Typed = Readonly<Record<string, string>>;
const device = (id: string, kind: string, settings: Typed = {}) => ({
  ...WIRING.devices.T2!,
  id,
  kind,
  settings,
});
const wire = (id: string, from: string, to: string, cable: string | null = null) => ({
  id,
  from,
  to,
  cable,
  settings: { section: '1.5 mm²', length: '1 m' },
});
const listed = <T extends { readonly id: string }>(all: readonly T[]) =>
  Object.fromEntries(all.map((each) => [each.id, each]));

/** Three phases: an inverter on all of them with 10 m of screened motor cable, a supply on L1 and one on L2. */
const THREE: Wiring = {
  devices: listed([
    device('X1', 'mains-inlet', { volts: '230 V', phases: 'three', current: '16 A' }),
    device('F5', 'residual', { type: 'B', residual: '30 mA', poles: '2' }),
    device('T4', 'inverter', { phases: 'three', 'supply-current': '6 A' }),
    device('M4', 'spindle-motor', {}),
    device('G1', 'supply', { volts: '24 V', current: '5 A' }),
    device('G3', 'supply', { volts: '5 V', current: '1 A' }),
    device('E1', 'earth-bar', {}),
  ]),
  wires: listed([
    wire('W1', 'X1.L1', 'T4.L1'),
    wire('W2', 'X1.L2', 'T4.L2'),
    wire('W3', 'X1.L3', 'T4.L3'),
    wire('W4', 'X1.L1', 'G1.L'),
    wire('W5', 'X1.N', 'G1.N'),
    wire('W6', 'X1.L2', 'F5.1'),
    wire('W7', 'F5.2', 'G3.L'),
    wire('W8', 'G3.N', 'F5.4'),
    wire('W9', 'F5.3', 'X1.N'),
    wire('W10', 'T4.U', 'M4.U', 'C1'),
    wire('W11', 'X1.PE', 'E1.1'),
  ]),
  cables: { C1: { id: 'C1', name: '', settings: { shield: 'braid', length: '10 m' } } },
  settings: {},
};

function judged(
  settings: Typed = {},
  changes: Parameters<typeof cabinetWith>[1] = {},
  wiring = THREE,
): PowerAnswer {
  const made = cabinetWith(settings, changes, wiring);
  expect(made.wiring.problems).toEqual([]);
  return judgeSupply(made.refit, made.wiring);
}
const found = (answer: PowerAnswer, id: string): WiringFinding => {
  const finding = answer.findings.find((each) => each.id === id);
  if (!finding) throw new Error(`no ${id} among ${answer.findings.map((each) => each.id).join(', ')}`);
  return finding;
};
const leaks = (finding: WiringFinding): number => finding.figures[0]!.value;

const BEFORE = { 'residual-type': 'B', 'residual-amps': '30 mA' };

describe('leakage to earth', () => {
  test('derived: by hand: the heaviest phase, cable by the metre, and who it comes from', () => {
    const said = {
      T4: { leakage: '4 mA' },
      G1: { leakage: '0.5 mA' },
      G3: { leakage: '0.2 mA' },
    };
    const finding = found(judged({ ...BEFORE, 'motor-cable-leakage': '0.3 mA/m' }, said), 'leakage:X1');
    // L1: 4 + 10 × 0.3 + 0.5 = 7.5 mA; L2 has 0.2 instead of 0.5.
    expect(leaks(finding)).toBeCloseTo(7.5e-3, 12);
    expect(finding.margin).toBeCloseTo((TRIPS_FROM * 30) / 7.5, 9);
    expect(finding.verdict).toBe('fits');
    expect(finding.sentence).toContain('It comes from T4 4 mA, cable C1 3 mA and G1 0.5 mA.');
    expect(finding.sentence).not.toContain('usual');
    expect(finding.sentence).not.toContain('G3');
  });
  test('derived: what is usual stands in, marked, and never fails alone', () => {
    const fits = found(judged(BEFORE), 'leakage:X1');
    expect(leaks(fits)).toBeCloseTo(USUAL_LEAKAGE.inverter! + 10 * 0.2e-3 + USUAL_LEAKAGE.supply!, 12);
    expect(fits.verdict).toBe('fits');
    expect(fits.sentence).toContain('(usual)');
    expect(fits.source).toContain('common practice, no source');
    const fine = found(judged({ ...BEFORE, 'residual-amps': '10 mA' }), 'leakage:X1');
    expect(fine.verdict).toBe('unknown');
    expect(fine.margin).toBeUndefined();
    expect(fine.needs).toEqual(
      expect.arrayContaining(['T4.leakage', 'settings.motor-cable-leakage', 'G1.leakage']),
    );
    // What has been said is enough to fail, whatever the rest is.
    expect(
      found(judged({ ...BEFORE, 'residual-amps': '10 mA' }, { T4: { leakage: '6 mA' } }), 'leakage:X1'),
    ).toMatchObject({ verdict: 'fails', margin: expect.closeTo(5 / 6, 9) });
  });
  test('derived: the whole as measured goes before the sum; the share is a policy', () => {
    const typed = found(judged({ ...BEFORE, leakage: '10 mA' }, { T4: { leakage: '30 mA' } }), 'leakage:X1');
    expect(leaks(typed)).toBe(0.01);
    expect(typed.verdict).toBe('tight');
    expect(10 / 30).toBeGreaterThan(LEAKAGE_SHARE);
    expect(
      found(judged({ ...BEFORE, leakage: '10 mA', 'leakage-share': '40 %' }), 'leakage:X1').verdict,
    ).toBe('fits');
  });
  test('derived: a device inside the machine sees only what hangs behind it', () => {
    const inner = found(judged(), 'leakage:F5');
    expect(leaks(inner)).toBeCloseTo(USUAL_LEAKAGE.supply!, 12);
    expect(inner.sentence).toContain('G3');
    expect(inner.sentence).not.toContain('T4');
    const both = judged(BEFORE).findings.filter(({ rule }) => rule === 'leakage');
    expect(new Set(both.map(({ id }) => id))).toEqual(new Set(['leakage:F5', 'leakage:X1']));
  });
  test('derived: a cable without its length, an unscreened one, one behind no inverter', () => {
    const at = (change: Typed) =>
      found(
        judged(BEFORE, {}, { ...THREE, cables: { C1: { ...THREE.cables.C1!, settings: change } } }),
        'leakage:X1',
      );
    // The wire's own length is not its cable's.
    expect(at({ shield: 'braid' })).toMatchObject({ verdict: 'unknown' });
    expect(at({ shield: 'braid' }).needs).toContain('C1.length');
    // Without a screen a quarter of the capacitance, and so of what leaks: 10 m × 0.2 mA/m ÷ 4.
    expect(at({ shield: 'none', length: '10 m' }).sentence).toContain('unscreened cable C1 0.5 mA (usual)');
    const screened = leaks(at({ shield: 'braid', length: '10 m' }));
    expect(screened - leaks(at({ shield: 'none', length: '10 m' }))).toBeCloseTo(1.5e-3, 12);
    // Motor leads that name a cable which is not there leak nothing that could be told.
    const gone = cabinetWith(BEFORE, {}, { ...THREE, cables: {} });
    expect(found(judgeSupply(gone.refit, gone.wiring), 'leakage:X1').sentence).not.toContain('C1');
    // Its own capacitance goes before what is usual: 300 pF/m for 200 pF/m.
    const own = at({ shield: 'braid', length: '10 m', capacitance: '300 pF/m' });
    expect(leaks(own) - screened).toBeCloseTo(1e-3, 12);
    expect(at({ length: '10 m' }).sentence).toContain('cable C1');
  });
  test('derived: without a device at all there is nothing to trip', () => {
    const nothing = {
      ...THREE,
      devices: { ...THREE.devices, F5: { ...THREE.devices.F5!, kind: 'main-switch', settings: {} } },
    };
    const of = (settings: Typed) =>
      judged(settings, {}, nothing).findings.filter(({ rule }) => rule === 'leakage');
    expect(of({ 'residual-type': 'none' })).toEqual([]);
    expect(of({})).toMatchObject([
      { verdict: 'unknown', needs: ['settings.residual-type', 'settings.residual-amps'] },
    ]);
  });
  test('derived: the protective conductor of the machine takes the sum too', () => {
    expect(found(judged(), 'protective-leakage:X1').verdict).toBe('fits');
    expect(found(judged({}, { T4: { leakage: '12 mA' } }), 'protective-leakage:X1').verdict).toBe('fails');
    expect(found(judged({ 'motor-cable-leakage': '2 mA/m' }), 'protective-leakage:X1').verdict).toBe('fails');
  });
  test('derived: hostile settings are named, and what is usual stands in', () => {
    const { refit, wiring } = cabinetWith(
      { ...BEFORE, 'motor-cable-leakage': 'lots', 'leakage-share': '-3 %' },
      { T4: { leakage: '1e999 mA' }, G1: { leakage: '3 V' }, G3: { leakage: '-1 mA' } },
      THREE,
    );
    expect(wiring.problems.map(({ where }) => where).join(' ')).toMatch(
      /(?=.*T4\.settings\.leakage)(?=.*G1\.settings\.leakage)(?=.*G3\.settings\.leakage)/,
    );
    const answer = judgeSupply(refit, wiring);
    expect(answer.context.problems.map(({ where }) => where)).toEqual(
      expect.arrayContaining(['settings.motor-cable-leakage', 'settings.leakage-share']),
    );
    const finding = found(answer, 'leakage:X1');
    expect(finding.verdict).toBe('unknown');
    expect(finding.needs).toEqual(
      expect.arrayContaining(['settings.motor-cable-leakage', 'settings.leakage-share', 'T4.leakage']),
    );
    expect(finding.sentence).not.toMatch(/NaN|undefined|Infinity/);
  });
});

test('derived: the heaviest phase is never less than the vector sum of all three', () => {
  const LINES = ['L1', 'L2', 'L3'];
  const leak = fc.record({
    amps: fc.double({ min: 0, max: 0.02, noNaN: true }),
    lines: fc.subarray(LINES, { minLength: 1 }),
  });
  fc.assert(
    fc.property(fc.array(leak, { maxLength: 12 }), (drawn) => {
      const all = drawn.map(
        (each, k): Leak => ({ ...each, name: `T${k}`, device: `T${k}`, at: [], usual: false, needs: [] }),
      );
      const [a, b, c] = LINES.map((line) =>
        drawn.reduce((sum, each) => sum + (each.lines.includes(line) ? each.amps : 0), 0),
      ) as [number, number, number];
      const vector = Math.hypot(a - (b + c) / 2, (Math.sqrt(3) / 2) * (b - c));
      const sum = addUp(all);
      expect(sum.likely).toBeGreaterThanOrEqual(vector - 1e-12);
      expect(sum.likely).toBeCloseTo(Math.max(a, b, c), 12);
      expect(sum.sure).toBeCloseTo(sum.likely, 12);
    }),
    { seed: 5 },
  );
});
