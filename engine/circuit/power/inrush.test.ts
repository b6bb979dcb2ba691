import { describe, expect, test } from 'vitest';
import type { WiringFinding } from '../wiring/types.ts';
import { cabinetWith, WIRING } from './cabinet.fixture.ts';
import { CHARGING_SOURCE, USUAL_RESISTOR } from './charging.ts';
import { judgeSupply, type PowerAnswer } from './index.ts';

function judged(...given: Parameters<typeof cabinetWith>): PowerAnswer {
  const { refit, wiring } = cabinetWith(...given);
  expect(wiring.problems).toEqual([]);
  return judgeSupply(refit, wiring);
}
const found = (answer: PowerAnswer, id: string): WiringFinding => {
  const finding = answer.findings.find((each) => each.id === id);
  if (!finding) throw new Error(`no ${id} among ${answer.findings.map((each) => each.id).join(', ')}`);
  return finding;
};
const of = (finding: WiringFinding, name: string): number =>
  finding.figures.find((each) => each.name.startsWith(name))!.value;

/** One diode under load, as the sheet has it. */
const DIODES = 2 * 1.1;
const peakOf = (volts: number, ohms: number, rise = 0): number =>
  (Math.SQRT2 * volts * (1 + rise) - DIODES) / ohms;

/** A second supply beside the first, behind the same breaker. */
const TWO = {
  ...WIRING,
  devices: { ...WIRING.devices, G9: { ...WIRING.devices.G1!, id: 'G9' } },
  wires: {
    ...WIRING.wires,
    Q1: { id: 'Q1', from: 'F1.2', to: 'G9.L', cable: null, settings: {} },
    Q2: { id: 'Q2', from: 'G9.N', to: 'X1.N', cable: null, settings: {} },
  },
};

describe('capacitors behind a breaker', () => {
  test('derived: by hand: the peak of the mains over their resistance and the resistor; C10 lets 5·√2·10 A pass', () => {
    const finding = found(
      judged({ 'mains-resistance': '0.5 Ω' }, { G1: { 'inrush-resistor': '4.5 Ω' } }),
      'inrush:F1',
    );
    expect(of(finding, 'peak at')).toBeCloseTo(peakOf(230, 5), 9);
    expect(of(finding, 'peak the breaker')).toBeCloseTo(50 * Math.SQRT2, 9);
    expect(finding.margin).toBeCloseTo((50 * Math.SQRT2) / peakOf(230, 5), 9);
    expect(finding.verdict).toBe('tight');
    expect(finding.sentence).toContain('G1 64.6 A');
    expect(finding.sentence).not.toContain('usual');
  });
  test('derived: several at once add up, and only together they trip it', () => {
    const said = { inrush: '40 A' };
    const alone = found(judged({}, { G1: said }), 'inrush:F1');
    expect(alone).toMatchObject({ verdict: 'fits', margin: expect.closeTo((50 * Math.SQRT2) / 40, 9) });
    const both = found(judged({}, { G1: said, G9: said }, TWO), 'inrush:F1');
    expect(both).toMatchObject({ verdict: 'fails', margin: expect.closeTo((50 * Math.SQRT2) / 80, 9) });
    expect(both.sentence).toContain('80 A for an instant: G1 40 A and G9 40 A');
    expect(both.remedy).toContain('one after the other');
    const patient = found(judged({}, { G1: said, G9: said, F1: { curve: 'D' } }, TWO), 'inrush:F1');
    expect(patient.verdict).toBe('fits');
  });
  test('derived: sharing the resistance of the mains they take less than their sum: it is on the safe side', () => {
    const [mains, each] = [0.4, 10];
    const sum = of(found(judged({}, {}, TWO), 'inrush:F1'), 'peak at');
    expect(sum).toBeCloseTo(2 * peakOf(230, mains + each), 9);
    expect(sum).toBeGreaterThan(peakOf(230, mains + each / 2));
  });
  test('derived: what is usual is marked, and alone never fails', () => {
    const fits = found(judged(), 'inrush:F1');
    expect(fits.verdict).toBe('fits');
    expect(of(fits, 'peak at')).toBeCloseTo(peakOf(230, 0.4 + USUAL_RESISTOR.supply!), 9);
    expect(fits.sentence).toContain('(usual)');
    expect(CHARGING_SOURCE).toContain('common practice, no source');
    const small = found(judged({}, { F1: { amps: '2 A' } }), 'inrush:F1');
    expect(small).toMatchObject({ verdict: 'unknown', needs: ['G1.inrush'] });
    expect(small.margin).toBeUndefined();
    expect(found(judged({}, { F1: { curve: null } }), 'inrush:F1').needs).toEqual(['F1.curve', 'F1.amps']);
  });
  test('derived: the breaker before the socket is asked too', () => {
    const at = (curve: string) =>
      found(judged({ 'socket-amps': '6 A', 'socket-curve': curve }, { G1: { inrush: '40 A' } }), 'inrush:X1')
        .verdict;
    expect(at('B')).toBe('fails');
    expect(at('D')).toBe('fits');
  });
  test('derived: between phases √3 times the volts', () => {
    const inverter = {
      ...WIRING.devices.T2!,
      id: 'T4',
      kind: 'inverter',
      settings: { phases: 'three', 'supply-current': '6 A', 'inrush-resistor': '10 Ω' },
    };
    const wiring = {
      ...WIRING,
      devices: {
        X1: { ...WIRING.devices.X1!, settings: { volts: '230 V', phases: 'three' } },
        F1: { ...WIRING.devices.F1!, settings: { amps: '16 A', curve: 'C', poles: '3' } },
        T4: inverter,
      },
      wires: Object.fromEntries(
        [
          ['X1.L1', 'F1.1'],
          ['X1.L2', 'F1.3'],
          ['X1.L3', 'F1.5'],
          ['F1.2', 'T4.L1'],
          ['F1.4', 'T4.L2'],
          ['F1.6', 'T4.L3'],
        ].map(([from, to], k) => [`W${k}`, { id: `W${k}`, from: from!, to: to!, cable: null, settings: {} }]),
      ),
    };
    const answer = judged({}, {}, wiring);
    expect(of(found(answer, 'inrush:F1'), 'peak at')).toBeCloseTo(peakOf(230 * Math.sqrt(3), 10.4), 9);
    expect(answer.findings.filter(({ rule }) => rule === 'inrush')).toHaveLength(1);
  });
});

describe('capacitors behind a fuse', () => {
  // 1 kVA at 50 V with 6 %: 0.06 × 50² ÷ 1000 = 0.15 Ω.
  const T1 = { regulation: '6 %' };
  test('derived: 50 V, 6 %, 0.25 Ω in all: 291.013275 A, as the sheet of switching on has it (P-4)', () => {
    const finding = found(judged({}, { T1, G2: { 'inrush-resistor': '0.1 Ω' } }), 'inrush:F4');
    expect(of(finding, 'peak at')).toBeCloseTo(291.013275, 6);
    expect(finding).toMatchObject({ verdict: 'unknown', needs: ['F4.melting'] });
    expect(finding.remedy).toContain('sheet');
  });
  test('derived: I²t by hand, against a charge run in steps', () => {
    const at = (melting: string) => found(judged({}, { T1, F4: { melting } }), 'inrush:F4');
    const C = 22e-3;
    const R = 0.15;
    const V = Math.SQRT2 * 50 * 1.06 - 2 * 0.7;
    expect(of(at('5000 A²s'), 'I²t of')).toBeCloseTo((C * V * V) / (2 * R), 6);
    let [charged, squared] = [0, 0];
    const step = (R * C) / 20000;
    for (let k = 0; k < 400_000; k++) {
      const amperes = (V - charged) / R;
      squared += amperes * amperes * step;
      charged += (amperes * step) / C;
    }
    expect(of(at('5000 A²s'), 'I²t of') / squared).toBeCloseTo(1, 3);
    expect(at('5000 A²s').verdict).toBe('fits');
    expect(at('500 A²s')).toMatchObject({ verdict: 'tight' });
    expect(at('100 A²s')).toMatchObject({
      verdict: 'fails',
      margin: expect.closeTo(100 / of(at('5000 A²s'), 'I²t of'), 9),
    });
  });
  test('derived: without the capacitance, or with a usual rise, nothing is promised', () => {
    const open = found(
      judged({}, { T1, F4: { melting: '900 A²s' }, G2: { capacitance: null } }),
      'inrush:F4',
    );
    expect(open).toMatchObject({ verdict: 'unknown', needs: ['G2.capacitance'] });
    expect(found(judged({}, { F4: { melting: '20 A²s' } }), 'inrush:F4')).toMatchObject({
      verdict: 'unknown',
      needs: ['T1.regulation'],
    });
    expect(found(judged({}, { F4: { curve: 'fast' } }), 'inrush:F4').remedy).toContain(
      'a slow fuse (marked T)',
    );
  });
});

test('derived: hostile settings are named and never become numbers', () => {
  const { refit, wiring } = cabinetWith(
    { 'mains-resistance': '-1 Ω' },
    {
      G1: { inrush: '1e999 A', 'inrush-resistor': 'NTC' },
      G2: { 'inrush-resistor': '0 Ω' },
      T1: { regulation: '0 %' },
      F4: { melting: '3 A' },
    },
  );
  const where = wiring.problems.map((each) => each.where).join(' ');
  for (const name of [
    'G1.settings.inrush',
    'G1.settings.inrush-resistor',
    'G2.settings.inrush-resistor',
    'T1.settings.regulation',
    'F4.settings.melting',
  ])
    expect(where).toContain(name);
  const answer = judgeSupply(refit, wiring);
  expect(answer.context.problems.map((each) => each.where)).toContain('settings.mains-resistance');
  const finding = found(answer, 'inrush:F1');
  expect(finding.verdict).toBe('unknown');
  expect(finding.needs).toEqual(expect.arrayContaining(['G1.inrush', 'settings.mains-resistance']));
  for (const { sentence, margin } of answer.findings) {
    expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
    expect(margin === undefined || Number.isFinite(margin)).toBe(true);
  }
});
