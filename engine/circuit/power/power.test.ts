import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newRefit } from '../../refit/index.ts';
import type { Wiring } from '../../refit/types.ts';
import { CONDUCTOR_CURRENT } from '../../tables/conductor-current.ts';
import { readWiring } from '../wiring/index.ts';
import type { WiringFinding } from '../wiring/types.ts';
import { wired } from '../wiring/wired.fixture.ts';
import { cabinetWith, WIRING, wireAt } from './cabinet.fixture.ts';
import { COUNTRIES, countryOf, judgeSupply, type PowerAnswer } from './index.ts';

const LIES = { 'cabinet-temperature': '40 °C', 'outside-temperature': '40 °C', together: '1' };

function judged(...given: Parameters<typeof cabinetWith>): PowerAnswer {
  const { refit, wiring } = cabinetWith(...given);
  expect(wiring.problems).toEqual([]);
  return judgeSupply(refit, wiring);
}
function found(answer: PowerAnswer, id: string): WiringFinding {
  const finding = answer.findings.find((each) => each.id === id);
  if (!finding) throw new Error(`no ${id} among ${answer.findings.map((each) => each.id).join(', ')}`);
  return finding;
}
const without = (...ids: string[]): Wiring => ({
  ...WIRING,
  wires: Object.fromEntries(Object.entries(WIRING.wires).filter(([id]) => !ids.includes(id))),
});

describe('currents', () => {
  test('derived: the currents of the drives add up on their bus, and come down the transformer to the mains', () => {
    const { context } = judged(LIES);
    const { gives, wires } = context.flow;
    // 3 A and 4 A on the bus; 1.8 times as much on the secondary; by 50 : 230 on the primary.
    const bus = gives.get('G2.plus')!.amps;
    expect(bus).toBeCloseTo(7, 3);
    const secondary = gives.get('T1.3')!.amps;
    expect(secondary / bus).toBeCloseTo(1.8, 3);
    const primary = wires.get(wireAt('F1.2', 'T1.1'))!.amps;
    expect(primary / secondary).toBeCloseTo(50 / 230, 2);
    const supply = wires.get(wireAt('F1.2', 'G1.L'))!.amps;
    const five = gives.get('G1.plus')!.amps;
    expect(five).toBeCloseTo(0.5 + 0.15 + 0.05, 2);
    expect(supply).toBeCloseTo((24 * five) / (230 * 0.85 * 0.6), 2);
    expect(gives.get('X1')!.amps).toBeCloseTo(primary + supply, 3);
    expect(wires.get(wireAt('X1.L1', 'F1.1'))!.amps).toBeCloseTo(primary + supply, 3);
  });
  test('derived: what nobody has said is missing on every wire that carries it, and on no other', () => {
    const { context } = judged(LIES, { T3: { 'supply-current': null } });
    const needs = (from: string, to: string): readonly string[] =>
      context.currents.get(wireAt(from, to))!.needs;
    expect(needs('F2.2', 'T3.DC+')).toEqual(['T3.supply-current']);
    expect(needs('G2.plus', 'F2.1')).toEqual(['T3.supply-current']);
    expect(needs('T1.3', 'F4.1')).toEqual(['T3.supply-current']);
    expect(needs('X1.L1', 'F1.1')).toEqual(['T3.supply-current']);
    expect(needs('F2.2', 'T2.DC+')).toEqual([]);
    expect(needs('F3.2', 'A1.plus')).toEqual([]);
    expect(needs('F1.2', 'G1.L')).toEqual([]);
  });
  test('derived: two supplies joined without anything between are solved by their inner resistance', () => {
    const second = { ...WIRING.devices.G1!, id: 'G9', settings: { volts: '24 V', current: '5 A' } };
    const answer = judged(
      LIES,
      {},
      {
        ...WIRING,
        devices: { ...WIRING.devices, G9: second },
        wires: {
          ...WIRING.wires,
          Q1: { id: 'Q1', from: 'G9.plus', to: 'G1.plus', cable: null, settings: {} },
          Q2: { id: 'Q2', from: 'G9.minus', to: 'G1.minus', cable: null, settings: {} },
        },
      },
    );
    const both =
      answer.context.flow.gives.get('G1.plus')!.amps + answer.context.flow.gives.get('G9.plus')!.amps;
    expect(both).toBeCloseTo(0.7, 2);
    expect(answer.context.flow.trouble).toBeUndefined();
  });
  test('derived: a transformer between any two phases is fed, and both phases carry its current', () => {
    for (const [one, other] of [
      ['L1', 'L2'],
      ['L1', 'L3'],
      ['L2', 'L3'],
    ] as const) {
      const wires = Object.fromEntries(
        Object.entries(WIRING.wires).map(([id, wire]) => {
          if (id === wireAt('X1.L1', 'F1.1')) return [id, { ...wire, from: `X1.${one}` }];
          return [id, id === wireAt('T1.2', 'X1.N') ? { ...wire, to: `X1.${other}` } : wire];
        }),
      );
      const answer = judged(
        LIES,
        { X1: { phases: 'three' }, T1: { primary: '400 V' } },
        { ...WIRING, wires },
      );
      const { flow } = answer.context;
      const bus = flow.gives.get('G2.plus')!.amps;
      expect(flow.wires.get(wireAt('F1.2', 'T1.1'))!.amps).toBeCloseTo((bus * 1.8 * 50) / 400, 3);
      expect(flow.wires.get(wireAt('T1.2', 'X1.N'))!.amps).toBeCloseTo((bus * 1.8 * 50) / 400, 3);
    }
  });
  test('derived: a wire from plus to minus is a short circuit, and named', () => {
    const wires = {
      ...WIRING.wires,
      Q1: { id: 'Q1', from: 'F3.2', to: 'G1.minus', cable: null, settings: {} },
    };
    const answer = judged(LIES, {}, { ...WIRING, wires });
    const short = found(answer, 'short:G1');
    expect(short.verdict).toBe('fails');
    expect(short.sentence).toContain('G1 is short-circuited');
    expect(short.sentence).toContain('wire Q1');
    for (const { rule } of answer.findings)
      expect(['wire-current', 'fuse-load', 'socket', 'supply-load']).not.toContain(rule);
  });
});

describe('wires', () => {
  test('derived: a thinner wire, a hotter cabinet, more company turn the verdict', () => {
    const id = wireAt('T1.3', 'F4.1');
    // Secondary of 1.8 × 7 A = 12.6 A; 4 mm² alone at 40 °C carries 24 A (B1).
    expect(found(judged(LIES), `wire-current:${id}`)).toMatchObject({ verdict: 'fits' });
    expect(found(judged(LIES), `wire-current:${id}`).margin).toBeCloseTo(24 / 12.6, 3);
    expect(
      found(judged({ ...LIES, together: '6', 'cabinet-temperature': '55 °C' }), `wire-current:${id}`).verdict,
    ).toBe('fails');
    const thin = found(judged(LIES, { [id]: { section: '1 mm²' } }), `wire-current:${id}`);
    expect(thin.verdict).toBe('fails');
    // 1.5 mm² carries 13.5 A in B1: enough for 12.6 A.
    expect(thin.remedy).toBe('Take 1.5 mm².');
    const cured = found(judged(LIES, { [id]: { section: '1.5 mm²' } }), `wire-current:${id}`);
    expect(cured.verdict).not.toBe('fails');
  });
  test('derived: unknown only where it matters, and then it says what to answer', () => {
    const id = wireAt('T1.3', 'F4.1');
    const open = found(judged(), `wire-current:${id}`);
    expect(open.verdict).toBe('unknown');
    expect(open.needs).toEqual(['settings.cabinet-temperature', 'settings.together']);
    expect(found(judged(), `wire-current:${wireAt('F3.2', 'A1.plus')}`).verdict).toBe('fits');
    expect(found(judged({}, { [id]: { section: null } }), 'wire-current:unsaid').needs).toEqual([
      `${id}.section`,
    ]);
  });
  test('derived: power wires below the least area are named, thin signal wires are not', () => {
    const power = wireAt('F2.2', 'T2.DC+');
    const control = wireAt('A1.out1', 'P1.x1');
    const answer = judged(LIES, { [power]: { section: '0.5 mm²' }, [control]: { section: '0.25 mm²' } });
    expect(found(answer, `least-wire:${power}`).verdict).toBe('fails');
    expect(answer.findings.some(({ id }) => id === `least-wire:${control}`)).toBe(false);
  });
  test('derived: volts lost by hand: 10 m of 0.75 mm² there, 10 m on, 1 m back, and what is shared', () => {
    const far = judged(LIES);
    const drop = found(far, 'voltage-drop:K1.A1');
    const lost = drop.figures.find(({ name }) => name.startsWith('volts lost'))!.value;
    // Class 5 resistances by their copper with the usual 16 %; 19.5 Ω/km for 1 mm²; all at 70 °C.
    const warm = 1 + 0.00393 * 50;
    const per = (0.0133 * 1.5) / 0.75;
    const own = 0.15 * (10 + 10 + 1) * per * warm;
    const shared = 0.7 * 0.3 * 0.0195 * warm;
    // Rounded up to a thousandth of 24 V.
    expect(lost).toBeCloseTo(Math.ceil((own + shared) / 0.024) * 0.024, 9);
    expect(drop.verdict).toBe('fits');
    const long = judged(LIES, { [wireAt('F3.2', 'S1.11')]: { length: '300 m', section: '0.2 mm²' } });
    expect(found(long, 'voltage-drop:K1.A1').verdict).toBe('fails');
    const unsaid = judged(LIES, { [wireAt('F3.2', 'S1.11')]: { length: null } });
    expect(found(unsaid, 'voltage-drop:K1.A1')).toMatchObject({
      verdict: 'unknown',
      needs: ['settings.cabinet-wire-length'],
    });
  });
});

test('derived: by hand: an encoder gets what its wires leave, hot, and that may be too little', () => {
  const answer = (length: string, section: string) => {
    const wiring = wired(
      [
        'T1 drive feedback=differential motor=brushed encoder-current=0.25_A',
        'B1 encoder lines=differential current=150_mA',
      ],
      ['T1.E-5V B1.5V / W1', 'B1.0V T1.E-0V / W1'],
      { W1: { length, section, shield: 'braid' } },
    );
    const refit = { ...newRefit({ id: 'r1', name: 'Encoder', machine: 'lathe' }), wiring };
    return found(judgeSupply(refit, readWiring(wiring, refit)), 'voltage-drop:B1.5V');
  };
  const long = answer('10 m', '0.14 mm²');
  // 0.0133 Ω/m of 1.5 mm², by its copper for 0.14 mm², at 70 °C, there and back.
  const lost = 2 * 10 * ((0.0133 * 1.5) / 0.14) * (1 + 0.00393 * 50) * 0.15;
  const says = Object.fromEntries(long.figures.map(({ name, value }) => [name, value]));
  expect(says['volts lost on the way there and back']).toBeCloseTo(Math.ceil(lost / 0.005) * 0.005, 9);
  expect(long).toMatchObject({ verdict: 'fails', remedy: expect.stringMatching(/in parallel/) });
  expect(long.margin).toBeCloseTo(says['volts that arrive']! / 4.75, 9);
  expect(answer('10 m', '0.5 mm²').verdict).toBe('fits');
});

test('derived: supplies side by side give together what can come through a wire without a fuse', () => {
  const answer = (...more: string[]) => {
    const wiring = wired(
      ['G1 supply volts=24_V current=5_A', 'G2 supply volts=24_V current=20_A', 'A1 control current=0.5_A'],
      ['G1.plus A1.plus / W1', 'A1.minus G1.minus', 'G1.minus G2.minus', ...more],
      { W1: { length: '2 m', section: '0.75 mm²' } },
    );
    const refit = {
      ...newRefit({ id: 'r1', name: 'Two', machine: 'lathe' }),
      wiring: { ...wiring, settings: LIES },
    };
    return found(judgeSupply(refit, readWiring(refit.wiring, refit)), 'unfused:w1');
  };
  const [alone, together] = [answer(), answer('G1.plus G2.plus')];
  const can = ({ figures }: WiringFinding) =>
    figures.find(({ name }) => name === 'current that can come')!.value;
  expect(can(alone)).toBe(5);
  expect(can(together)).toBe(25);
  expect(alone.verdict).toBe('fits');
  expect(together.verdict).toBe('fails');
  expect(together.sentence).toMatch(/G1 and G2 can give together 25 A/);
});

describe('fuses', () => {
  test('derived: load ≤ fuse ≤ wire, each broken in turn', () => {
    const good = judged(LIES);
    expect(found(good, 'fuse-load:F2.1').verdict).toBe('fits');
    expect(found(good, 'fuse-wire:F2.1')).toMatchObject({ verdict: 'fits' });
    expect(found(good, 'fuse-wire:F2.1').margin).toBeCloseTo(18.3 / 10, 6);
    const small = found(judged(LIES, { F2: { amps: '6 A' } }), 'fuse-load:F2.1');
    expect(small.verdict).toBe('fails');
    expect(small.remedy).toContain('10 A');
    expect(judged(LIES, { F2: { amps: '6 A' } }).sizes).toContainEqual(
      expect.objectContaining({ device: 'F2', value: 10, unit: 'A' }),
    );
    const large = found(judged(LIES, { F2: { amps: '25 A' } }), 'fuse-wire:F2.1');
    expect(large.verdict).toBe('fails');
    expect(large.margin).toBeCloseTo(18.3 / 25, 6);
    expect(found(judged(LIES, { F2: { amps: null } }), 'fuse-load:F2.1').needs).toEqual(['F2.amps']);
  });
  test('derived: d.c. above 30 V wants a d.c. voltage on the fuse', () => {
    expect(found(judged(LIES), 'fuse-dc:F2.1').verdict).toBe('fits');
    expect(found(judged(LIES, { F2: { 'dc-volts': null } }), 'fuse-dc:F2.1').verdict).toBe('unknown');
    expect(found(judged(LIES, { F2: { 'dc-volts': '48 V' } }), 'fuse-dc:F2.1').verdict).toBe('fails');
  });
  test('derived: without its fuse the bus is unfused', () => {
    const direct = without(wireAt('G2.plus', 'F2.1'), wireAt('F2.2', 'T2.DC+'), wireAt('F2.2', 'T3.DC+'));
    const answer = judged(
      LIES,
      {},
      {
        ...direct,
        wires: {
          ...direct.wires,
          Q1: {
            id: 'Q1',
            from: 'G2.plus',
            to: 'T2.DC+',
            cable: null,
            settings: { section: '2.5 mm²', length: '5 m' },
          },
        },
      },
    );
    expect(found(answer, 'unfused:Q1').verdict).toBe('fails');
  });
  test('derived: a supply that limits its current protects a wire that carries it', () => {
    const id = wireAt('G1.plus', 'F3.1');
    expect(found(judged(LIES), `unfused:${id}`)).toMatchObject({ verdict: 'fits' });
    expect(found(judged(LIES, { G1: { current: '20 A' } }), `unfused:${id}`).verdict).toBe('fails');
  });
});

describe('mains', () => {
  test('published: 1 kVA on 230 V behind C10: 92.231319 A against 70.7107 A; D10 lets 141.421 A pass (W-4)', () => {
    const c = found(judged(LIES), 'switching-on:T1');
    expect(c.verdict).toBe('fails');
    expect(c.figures[0]!.value).toBeCloseTo(92.231319, 6);
    expect(c.figures[1]!.value).toBeCloseTo(70.7107, 4);
    const d = found(judged(LIES, { F1: { curve: 'D' } }), 'switching-on:T1');
    expect(d.verdict).toBe('fits');
    expect(d.figures[1]!.value).toBeCloseTo(141.421, 3);
  });
  test('derived: the socket against everything on', () => {
    expect(found(judged(LIES), 'socket:X1').verdict).toBe('fits');
    expect(found(judged(LIES, { X1: { current: '2 A' } }), 'socket:X1').verdict).toBe('fails');
    expect(found(judged(LIES, { X1: { current: null } }), 'socket:X1').needs).toEqual([
      'settings.socket-amps',
    ]);
  });
  test('derived: the type of residual current device by the circuit of the inverter', () => {
    const inverter = (phases: string) => ({
      ...WIRING,
      devices: {
        ...WIRING.devices,
        T4: {
          ...WIRING.devices.T2!,
          id: 'T4',
          kind: 'inverter',
          settings: { phases, 'supply-current': '6 A' },
        },
      },
    });
    const type = (settings: Record<string, string>, wiring?: Wiring): WiringFinding =>
      found(judged({ ...LIES, ...settings }, {}, wiring), 'residual-type:X1');
    expect(type({ 'residual-type': 'AC' }).verdict).toBe('fails');
    expect(type({ 'residual-type': 'A' }).verdict).toBe('fits');
    expect(type({ 'residual-type': 'A' }, inverter('one')).verdict).toBe('fails');
    expect(type({ 'residual-type': 'F' }, inverter('one')).verdict).toBe('fits');
    expect(type({ 'residual-type': 'F' }, inverter('three')).verdict).toBe('fails');
    expect(type({ 'residual-type': 'B' }, inverter('three')).verdict).toBe('fits');
    expect(type({}, inverter('three')).verdict).toBe('unknown');
    expect(type({ 'residual-type': 'none' }).verdict).toBe('unknown');
  });
  test('derived: leakage against the device and against the protective conductor', () => {
    const at = (leakage: string) =>
      judged({ ...LIES, leakage, 'residual-type': 'A', 'residual-amps': '30 mA' });
    expect(found(at('5 mA'), 'leakage:X1').verdict).toBe('fits');
    expect(found(at('12 mA'), 'leakage:X1').verdict).toBe('tight');
    expect(found(at('20 mA'), 'leakage:X1').verdict).toBe('fails');
    expect(found(at('5 mA'), 'protective-leakage:X1').verdict).toBe('fits');
    expect(found(at('12 mA'), 'protective-leakage:X1').verdict).toBe('fails');
  });
  test('derived: the protective conductor as its lines', () => {
    expect(found(judged(LIES), 'protective:G1').verdict).toBe('fits');
    expect(found(judged(LIES), 'protective:T1')).toMatchObject({
      verdict: 'fails',
      margin: 0.25,
      remedy: 'Take 4 mm².',
    });
  });
});

describe('cabinet', () => {
  const BOX = {
    ...LIES,
    'cabinet-height': '0.8 m',
    'cabinet-width': '0.6 m',
    'cabinet-depth': '0.25 m',
    'cabinet-material': 'painted steel',
    'cabinet-stands': 'back against a wall',
    'room-temperature': '35 °C',
  };
  test('published: W-6: 120 W give 17.566974 K; 400 W and 15 K want a fan of 61.490567 m³/h', () => {
    const closed = found(
      judged({ ...BOX, 'cabinet-heat': '120 W', 'cabinet-limit': '55 °C' }),
      'cabinet-heat:cabinet',
    );
    expect(closed.verdict).toBe('fits');
    expect(closed.margin).toBeCloseTo(20 / 17.566974, 6);
    const hot = { ...BOX, 'cabinet-heat': '400 W', 'cabinet-limit': '50 °C' };
    const fails = found(judged(hot), 'cabinet-heat:cabinet');
    expect(fails.verdict).toBe('fails');
    expect(fails.figures.find(({ unit }) => unit === 'm³/h')!.value * 3600).toBeCloseTo(61.490567, 5);
    expect(found(judged({ ...hot, 'cabinet-fan': '80 m³/h' }), 'cabinet-heat:cabinet').margin).toBeCloseTo(
      80 / 61.490567,
      6,
    );
    expect(found(judged({ ...hot, 'cabinet-fan': '40 m³/h' }), 'cabinet-heat:cabinet').verdict).toBe('fails');
    expect(found(judged({ ...hot, 'room-temperature': '52 °C' }), 'cabinet-heat:cabinet').verdict).toBe(
      'fails',
    );
    expect(found(judged(LIES), 'cabinet-heat:cabinet').verdict).toBe('unknown');
  });
});

describe('countries', () => {
  test('derived: what is for an electrician is said always, with no verdict better than unknown', () => {
    for (const country of ['', 'Germany', 'Ruritania']) {
      const answer = judged({ ...LIES, country });
      expect(found(answer, 'electrician:mains').verdict).toBe('unknown');
      for (const each of answer.findings.filter(({ rule }) => rule === 'country'))
        expect(each.verdict).toBe('unknown');
    }
    expect(found(judged({ ...LIES, country: 'Ruritania' }), 'country:mains').sentence).toContain(
      'does not know the rules of “Ruritania”',
    );
    expect(
      judged({ ...LIES, country: 'Germany' }).findings.some(({ rule }) => rule === 'country-mains'),
    ).toBe(false);
    const answer = judged({ ...LIES, country: 'Germany' }, { X1: { volts: '120 V' } });
    expect(found(answer, 'country-mains:X1').verdict).toBe('fails');
  });
  test('derived: words for countries are read one way only, and every recalled rule says so', () => {
    const words = COUNTRIES.flatMap(({ id, name, words: more }) => [id, name.toLowerCase(), ...more]);
    expect(new Set(words.filter((word, k) => words.indexOf(word) !== k)).size).toBeLessThanOrEqual(
      COUNTRIES.length,
    );
    expect(countryOf('The Netherlands')?.id).toBe('netherlands');
    expect(countryOf('U.S.A.')?.id).toBe('united-states');
    expect(countryOf('constructor')).toBeUndefined();
    for (const country of COUNTRIES)
      for (const rule of [country.fixed, country.socket, country.machine])
        if (rule.status === 'from memory') expect(rule.source).toMatch(/recalled|from memory/);
  });
});

describe('any wiring', () => {
  test('derived: an empty wiring has no findings', () => {
    expect(judged({}, {}, { devices: {}, wires: {}, cables: {}, settings: {} }).findings).toEqual([]);
  });
  test('derived: hostile settings are named and never become numbers', () => {
    const { refit, wiring } = cabinetWith({
      country: '<b>x</b>'.repeat(20),
      'cabinet-temperature': 'warm',
      together: '-3',
      leakage: '1e999 mA',
      'laid-inside': 'Z9',
    });
    const answer = judgeSupply(refit, wiring);
    const places = answer.context.problems.map(({ where }) => where);
    for (const name of ['cabinet-temperature', 'together', 'leakage', 'laid-inside'])
      expect(places).toContain(`settings.${name}`);
    for (const { sentence, margin } of answer.findings) {
      expect(sentence).not.toMatch(/NaN|undefined|Infinity|\[object/);
      expect(margin === undefined || Number.isFinite(margin)).toBe(true);
    }
  });
  test('derived: whatever wires are pulled off or put on, every finding is whole', () => {
    const marks = [...cabinetWith().wiring.terminals.keys()];
    const end = fc.constantFrom(...marks, 'nowhere.1', '');
    fc.assert(
      fc.property(
        fc.subarray(Object.keys(WIRING.wires)),
        fc.array(fc.tuple(end, end), { maxLength: 6 }),
        (kept, added) => {
          const wires = Object.fromEntries([
            ...kept.map((id) => [id, WIRING.wires[id]!] as const),
            ...added.map(
              ([from, to], k) =>
                [`Q${k}`, { id: `Q${k}`, from, to, cable: null, settings: { section: '1 mm²' } }] as const,
            ),
          ]);
          const { refit, wiring } = cabinetWith(LIES, {}, { ...WIRING, wires });
          const answer = judgeSupply(refit, wiring);
          const ids = answer.findings.map(({ id }) => id);
          expect(new Set(ids).size).toBe(ids.length);
          for (const { sentence, margin, verdict, needs } of answer.findings) {
            expect(sentence).not.toMatch(/NaN|undefined|Infinity|\[object/);
            expect(margin === undefined || (Number.isFinite(margin) && margin > 0)).toBe(true);
            if (margin !== undefined && margin < 0.999) expect(verdict).toBe('fails');
            if (verdict === 'fits') expect(needs).toBeUndefined();
          }
        },
      ),
      { numRuns: 25, seed: 3 },
    );
  });
  test('derived: remedies for a wire cure it, for every area of the table', () => {
    const id = wireAt('T1.3', 'F4.1');
    for (const { area } of CONDUCTOR_CURRENT) {
      const finding = found(
        judged({ ...LIES, together: '4' }, { [id]: { section: `${area} mm²` } }),
        `wire-current:${id}`,
      );
      if (finding.verdict !== 'fails') continue;
      const cure = /Take ([\d.]+) mm²/.exec(finding.remedy!)![1]!;
      expect(
        found(judged({ ...LIES, together: '4' }, { [id]: { section: `${cure} mm²` } }), `wire-current:${id}`)
          .verdict,
      ).not.toBe('fails');
    }
  });
});
