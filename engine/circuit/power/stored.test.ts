import { describe, expect, test } from 'vitest';
import type { Wiring } from '../../refit/types.ts';
import type { WiringFinding } from '../wiring/types.ts';
import { cabinetWith, WIRING, wireAt } from './cabinet.fixture.ts';
import { CONTACT_OHMS } from './conductors.ts';
import { judgeSupply } from './index.ts';

const CAPS = { T2: { 'input-capacitance': '1 mF' }, T3: { 'input-capacitance': '1 mF' } };

function findings(changes: Parameters<typeof cabinetWith>[1] = {}, wiring: Wiring = WIRING) {
  const { refit, wiring: read } = cabinetWith({}, changes, wiring);
  expect(read.problems).toEqual([]);
  return judgeSupply(refit, read).findings;
}
const found = (all: readonly WiringFinding[], id: string): WiringFinding => {
  const finding = all.find((each) => each.id === id);
  if (!finding) throw new Error(`no ${id} among ${all.map((each) => each.id).join(', ')}`);
  return finding;
};
const number = (finding: WiringFinding, name: string): number =>
  finding.figures.find((each) => each.name.startsWith(name))!.value;

/** The drive T2 behind a contactor in its plus. */
const SWITCHED: Wiring = {
  ...WIRING,
  devices: {
    ...WIRING.devices,
    K5: {
      ...WIRING.devices.K1!,
      id: 'K5',
      settings: { ...WIRING.devices.K1!.settings, 'main-dc-volts': '110 V', 'main-dc-amps': '9 A' },
    },
  },
  wires: {
    ...Object.fromEntries(Object.entries(WIRING.wires).filter(([id]) => id !== wireAt('F2.2', 'T2.DC+'))),
    Q1: {
      id: 'Q1',
      from: 'F2.2',
      to: 'K5.1',
      cable: null,
      settings: { section: '2.5 mm²', length: '0.3 m' },
    },
    Q2: {
      id: 'Q2',
      from: 'K5.2',
      to: 'T2.DC+',
      cable: null,
      settings: { section: '2.5 mm²', length: '0.3 m' },
    },
  },
};
/** The same through a plug. */
const PLUGGED: Wiring = {
  ...SWITCHED,
  devices: {
    ...WIRING.devices,
    X5: { ...WIRING.devices.K1!, id: 'X5', kind: 'connector', settings: { ways: '4', bridges: '1,2' } },
  },
  wires: {
    ...SWITCHED.wires,
    Q1: { ...SWITCHED.wires.Q1!, to: 'X5.1' },
    Q2: { ...SWITCHED.wires.Q2!, from: 'X5.2' },
  },
};

describe('charge left after switching off', () => {
  test('derived: by hand: 81.048651 V on 20 mF with 2 mF of drives: 220 Ω take 1.4554124 s, 1 kΩ 6.6155108 s (P-5)', () => {
    const bus = { volts: '81.048651 V', capacitance: '20 mF' };
    const quick = found(findings({ ...CAPS, G2: bus }), 'stored-charge:G2.plus');
    expect(quick.verdict).toBe('fits');
    expect(number(quick, 'time to')).toBeCloseTo(1.4554124, 6);
    expect(quick.margin).toBeCloseTo(5 / 1.4554124, 6);
    const slow = found(findings({ ...CAPS, G2: { ...bus, bleeder: '1 kΩ' } }), 'stored-charge:G2.plus');
    expect(slow.verdict).toBe('fails');
    expect(number(slow, 'time to')).toBeCloseTo(6.6155108, 6);
    // The largest that is quick enough: 755.79953 Ω.
    expect(slow.remedy).toContain('755 Ω or less');
    expect(slow.remedy).toContain('warning plate on the door: wait 14 s');
  });
  test('derived: the capacitors of the drives count, and while they are not known it never fits', () => {
    const open = found(findings(), 'stored-charge:G2.plus');
    expect(open).toMatchObject({
      verdict: 'unknown',
      needs: ['T2.input-capacitance', 'T3.input-capacitance'],
    });
    expect(open.sentence).toContain('or more');
    expect(found(findings({ ...CAPS, G2: { bleeder: null } }), 'stored-charge:G2.plus')).toMatchObject({
      verdict: 'unknown',
      needs: ['G2.bleeder'],
    });
    expect(found(findings({ ...CAPS, G2: { volts: '55 V' } }), 'stored-charge:G2.plus').verdict).toBe('fits');
    expect(found(findings({ ...CAPS, G2: { volts: null } }), 'stored-charge:G2.plus').needs).toEqual([
      'G2.volts',
    ]);
  });
  test('derived: up to 60 µC is exempt', () => {
    const little = { 'input-capacitance': '0.2 µF' };
    const all = findings({ T2: little, T3: little, G2: { capacitance: '0.2 µF', bleeder: null } });
    expect(found(all, 'stored-charge:G2.plus')).toMatchObject({ verdict: 'fits' });
  });
  test('derived: pins of a plug that can be touched have one second', () => {
    // 220 Ω × 24 mF × ln(75 V ÷ 60 V) = 1.178 s.
    const pins = found(findings(CAPS, PLUGGED), 'stored-charge:G2.plus');
    expect(pins.verdict).toBe('fails');
    expect(number(pins, 'time allowed')).toBe(1);
    expect(pins.sentence).toContain('the pins of X5 can be touched');
    expect(found(findings(CAPS), 'stored-charge:G2.plus').verdict).toBe('fits');
  });
});

describe('a drive joined to a live bus', () => {
  test('derived: by hand: volts over wires and contacts, against ten times the rated current of the contactor', () => {
    const all = findings(CAPS, SWITCHED);
    const weld = found(all, 'hot-plug:T2.DC+');
    // Class 5, 2.5 mm²: 7.98 mΩ/m over 0.3 m to the fuse, 0.6 m on, 0.5 m back; one contact.
    const ohms = 0.00798 * (0.3 + 0.6 + 0.5) + CONTACT_OHMS;
    expect(number(weld, 'peak')).toBeCloseTo(75 / ohms, 1);
    expect(weld.verdict).toBe('fails');
    expect(weld.margin).toBeCloseTo((90 * ohms) / 75, 4);
    expect(weld.remedy).toContain('before the rectifier');
    expect(found(all, 'parted-charge:T2.DC+').sentence).toContain('cut off from the bleeder');
    // A resistor in the drive tames it.
    const tame = { ...CAPS, T2: { ...CAPS.T2, 'inrush-resistor': '10 Ω' } };
    expect(found(findings(tame, SWITCHED), 'hot-plug:T2.DC+').verdict).toBe('fits');
    expect(all.some(({ id }) => id === 'hot-plug:T3.DC+')).toBe(false);
  });
  test('derived: what is not known is asked for, and a plug is warned of', () => {
    expect(found(findings({}, SWITCHED), 'hot-plug:T2.DC+')).toMatchObject({
      verdict: 'unknown',
      needs: ['T2.input-capacitance'],
    });
    const all = findings(CAPS, PLUGGED);
    expect(found(all, 'live-plug:T2.DC+')).toMatchObject({ verdict: 'tight' });
    expect(found(all, 'live-plug:T2.DC+').remedy).toContain('below 60 V');
    expect(all.some(({ rule }) => rule === 'hot-plug')).toBe(false);
  });
  test('derived: drives on a bus charge with it: their capacitors count for the fuse before it', () => {
    const squared = (changes: Parameters<typeof cabinetWith>[1]) =>
      number(found(findings({ ...changes, F4: { melting: '5000 A²s' } }), 'inrush:F4'), 'I²t of the charge');
    expect(squared(CAPS) / squared({})).toBeCloseTo(24 / 22, 9);
  });
});
