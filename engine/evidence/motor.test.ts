/** Bench tests of motors against worked examples that were computed apart in double precision. */
import { expect, test } from 'vitest';
import { levels, outcome, quantity, refusal } from './methods.fixture.ts';

const TWELVE = [6.52, 6.47, 6.61, 6.55, 6.49, 6.58, 6.63, 6.5, 6.54, 6.57, 6.48, 6.6].map((each) =>
  each.toFixed(2),
);
const RESISTANCE = {
  temperature: '21 ± 2 °C',
  reference: '25 °C',
  voltmeter: '0.5 % + 0.03 V',
  ammeter: '1 % + 0.03 A',
  brushes: 'yes',
};

test('derived: resistance over twelve places at 5 A, taken to 25 °C (law of propagation, worked apart)', () => {
  const found = outcome('winding-resistance', RESISTANCE, { volts: TWELVE, amps: TWELVE.map(() => '5.00') });
  const R = quantity(found, 'resistance');
  expect(R.value).toBeCloseTo(1.32945312, 7);
  // The example states k = 2.
  expect(2 * R.standard).toBeCloseTo(0.0316773148, 8);
  expect(R.parts.find(({ kind }) => kind === 'readings')!.freedom).toBe(11);
  expect(levels(found)[0]).toBe('good');
  expect(R.text).toBe('1.33 ± 0.03 Ω');
});

test('derived: two currents at one place tell copper from brushes (Ohm’s law, worked apart)', () => {
  const found = outcome(
    'winding-resistance',
    {
      ...RESISTANCE,
      temperature: '25 °C',
      smallVolts: '3.15 V',
      smallAmps: '1.90 A',
      largeVolts: '9.10 V',
      largeAmps: '7.50 A',
      voltmeter: '0.01 V',
      ammeter: '0.01 A',
    },
    { volts: TWELVE, amps: TWELVE.map(() => '5.00') },
  );
  expect(quantity(found, 'copper').value).toBeCloseTo(1.0625, 10);
  expect(quantity(found, 'brushDrop').value).toBeCloseTo(1.13125, 10);
});

test('derived: back-EMF both ways round at 1012 r/min (law of propagation, worked apart)', () => {
  const found = outcome(
    'back-emf',
    {
      read: 'dc',
      temperature: '20 ± 2 °C',
      magnet: 'ferrite',
      plate: '36.65 V/krpm',
      voltmeter: '0.5 % + 0.03 V',
      tachometer: '0.05 % + 1 r/min',
    },
    { volts: ['36.42', '36.18'], speed: ['1012', '1012'], way: ['cw', 'ccw'] },
  );
  const K = quantity(found, 'emf');
  expect(K.value).toBeCloseTo(0.342529117, 8);
  expect(2 * K.standard).toBeCloseTo(0.00285656534, 9);
  expect(K.text).toBe('35.9 ± 0.3 V/krpm');
  expect(found.verdicts.map(({ sentence }) => sentence).join(' ')).toMatch(
    /agree within 0\.66 %.*97\.87|agree within 0\.66 %.*98 %/,
  );
  expect(levels(found)).not.toContain('bad');
});

const NO_LOAD = { speed: [400, 800, 1200, 1600, 2000], amps: ['0.372', '0.398', '0.421', '0.447', '0.470'] };

test('derived: friction from the no-load current at five speeds (least squares, worked apart)', () => {
  const found = outcome('no-load-current', { torqueConstant: '0.3425 N·m/A' }, NO_LOAD);
  const [steady, viscous] = [quantity(found, 'friction'), quantity(found, 'viscous')];
  expect(steady.value).toBeCloseTo(0.11922425, 8);
  expect(steady.standard).toBeCloseTo(0.000340783, 8);
  expect(viscous.value).toBeCloseTo(0.000200326337, 12);
  expect(viscous.standard).toBeCloseTo(2.45298e-6, 11);
  expect(steady.freedom).toBe(3);
});

test('derived: a torque constant in doubt moves both frictions in proportion', () => {
  const sure = outcome('no-load-current', { torqueConstant: '0.3425 N·m/A' }, NO_LOAD);
  const unsure = outcome('no-load-current', { torqueConstant: '0.3425 ± 0.0137 N·m/A' }, NO_LOAD);
  for (const key of ['friction', 'viscous']) {
    const [a, b] = [quantity(sure, key), quantity(unsure, key)];
    expect(b.standard).toBeCloseTo(Math.hypot(a.standard, 0.02 * a.value), 12);
  }
});

test('derived: inertia from a coast-down to a stop with known friction (closed form, worked apart)', () => {
  const found = outcome(
    'coast-down',
    { from: '2000 r/min', friction: '0.12 N·m', viscous: '2e-4 N·m·s/rad', watch: '0.05 s' },
    { time: ['1.202'] },
  );
  expect(quantity(found, 'inertia').value).toBeCloseTo(0.00080290598, 11);
});

test('derived: inertia from coast-downs without and with a disc (two inertias, same friction)', () => {
  const found = outcome(
    'coast-down',
    { from: '150 rad/s', discMass: '2 kg', discRadius: '63.2455532 mm' },
    { time: ['4.14943852', '5.53258469'], disc: ['without', 'with'] },
  );
  expect(quantity(found, 'inertia').value).toBeCloseTo(0.012, 9);
});

test('derived: torque constant by lever agrees with the spin test (E_n, worked apart)', () => {
  const found = outcome(
    'locked-rotor',
    {
      lever: '250 ± 1 mm',
      emf: '0.342529117 ± 0.00285656534 V·s/rad',
      supplyVolts: '2.40 V',
      resistance: '1.309 Ω',
      leads: '0.020 Ω',
      scale: '0.2 N',
    },
    { amps: ['10.00'], loading: ['13.75'] },
  );
  expect(quantity(found, 'torqueConstant').value).toBeCloseTo(0.34375, 10);
  expect(quantity(found, 'expectedCurrent').value).toBeCloseTo(1.8058691, 7);
  expect(levels(found)).toContain('good');
});

test('derived: insulation of 180 MΩ at 18 °C is 39 MΩ at 40 °C, and sound (rule from memory, policy of the bench)', () => {
  const found = outcome('insulation', { temperature: '18 °C' }, { megohms: ['180'] });
  expect(quantity(found, 'insulation').value).toBeCloseTo(39.1747753e6, 0);
  expect(levels(found)[0]).toBe('good');
  for (const [megohms, level] of [
    ['60', 'doubtful'],
    ['15', 'bad'],
    ['0.5', 'bad'],
  ] as const)
    expect(levels(outcome('insulation', { temperature: '20 °C' }, { megohms: [megohms] }))[0], megohms).toBe(
      level,
    );
});

test('derived: weak magnets need both constants low; one alone is a wrong reading', () => {
  const plate = '0.35 V·s/rad';
  const both = outcome('weak-magnet', {
    emf: '0.300 ± 0.004 V·s/rad',
    torqueConstant: '0.302 ± 0.006 N·m/A',
    plate,
  });
  expect(levels(both)).toContain('bad');
  const one = outcome('weak-magnet', {
    emf: '0.300 ± 0.004 V·s/rad',
    torqueConstant: '0.350 ± 0.006 N·m/A',
    plate,
  });
  expect(levels(one)).not.toContain('bad');
  expect(one.verdicts[0]!.sentence).toContain('speed reading');
  const sound = outcome('weak-magnet', {
    emf: '0.348 ± 0.003 V·s/rad',
    torqueConstant: '0.352 ± 0.006 N·m/A',
    plate,
  });
  expect(levels(sound)).toEqual(['good', 'note']);
  expect(sound.verdicts[1]!.sentence).toBe(
    'Taken as exact, since no ± was given: constant of plate or maker’s sheet (plate).',
  );
});

test('derived: what makes no sense is refused by name', () => {
  const five = { amps: ['5', '5'] };
  expect(refusal('winding-resistance', RESISTANCE, { volts: ['6.5', ''], amps: ['5', '5'] })).toMatch(
    /^row 2: Row 2 needs either/,
  );
  expect(refusal('winding-resistance', RESISTANCE, { volts: ['6.5'], amps: ['5'] })).toMatch(
    /at least 2 rows/,
  );
  expect(refusal('winding-resistance', RESISTANCE, { volts: ['six', '6'], ...five })).toMatch(
    /volts in row 1/,
  );
  expect(refusal('winding-resistance', RESISTANCE, { volts: ['6.5', '6.4'], amps: ['0', '5'] })).toMatch(
    /amperes in row 1: .*above zero/,
  );
  expect(
    refusal('winding-resistance', { ...RESISTANCE, probes: '9 Ω' }, { volts: ['6.5', '6.4'], ...five }),
  ).toMatch(/cannot be worked out/);
  expect(
    refusal(
      'no-load-current',
      { torqueConstant: '0.3 N·m/A' },
      { speed: ['400', '400'], amps: ['0.3', '0.4'] },
    ),
  ).toMatch(/same speed/);
  expect(refusal('back-emf', { read: 'dc' }, { volts: ['36'], speed: ['0'] })).toMatch(/speed in row 1/);
  expect(refusal('back-emf', { read: 'both' }, { volts: ['36'], speed: ['1000'] })).toMatch(
    /none of the answers/,
  );
  expect(refusal('coast-down', { from: '2000 r/min', to: '2000 r/min' }, { time: ['1'] })).toMatch(/^to: /);
  expect(
    refusal(
      'coast-down',
      { from: '2000 r/min', discMass: '1 kg', discRadius: '50 mm' },
      { time: ['2.0', '1.9'], disc: ['without', 'with'] },
    ),
  ).toMatch(/did not coast longer/);
  expect(
    refusal(
      'coast-down',
      { from: '2000 r/min', discMass: '1 kg', discRadius: '50 mm', watch: '0.1 s' },
      { time: ['2.00', '2.02'], disc: ['without', 'with'] },
    ),
  ).toMatch(/doubt is as large/);
  expect(refusal('locked-rotor', { lever: '0 mm' }, { amps: ['5'], loading: ['10'] })).toMatch(
    /length of the lever/,
  );
  expect(refusal('insulation', {}, { megohms: ['OL'] })).toMatch(/row 1/);
  expect(
    refusal('weak-magnet', { emf: '30 V/krpm', plate: '36 V/krpm', plateTemperature: '100 °C' }),
  ).toMatch(/kind of magnets/);
});
