import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { GROUPS, MOVE_KINDS, modelSchema, readModel, readMove, simulate } from './index.ts';

const FILE = new URL('../../docs/simulate-model.schema.json', import.meta.url);

const GOOD = {
  motor: { resistance: '1.2 ohm', inductance: '3 mH', constant: '36.65 V/krpm', inertia: '8 kg·cm²' },
  transmission: { lead: '5 mm', stiffness: '60 N/µm', damping: '5 kN·s/m' },
  slide: { mass: '120 kg', coulomb: '200 N' },
  drive: { currentLimit: '20 A' },
  control: { positionGain: '40 1/s', speedGain: '0.7 A·s/rad', sample: '0.5 ms' },
  supply: { voltage: '75 V' },
};

test('frozen: docs/simulate-model.schema.json is the schema of this list; WRITE_SCHEMA=1 writes it', () => {
  const text = `${JSON.stringify(modelSchema(), null, 2)}\n`;
  if (process.env.WRITE_SCHEMA) writeFileSync(FILE, text);
  expect(readFileSync(FILE, 'utf8')).toBe(text);
});

test('derived: texts become SI, and what was left out is listed', () => {
  const read = readModel(GOOD);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { model, usual } = read.value;
  expect(model.motor.kind === 'servo' && model.motor.constant).toBeCloseTo(0.34998172, 8);
  expect(model.motor.inertia).toBeCloseTo(8e-4, 12);
  expect(model.transmission.stiffness).toBe(6e7);
  expect(usual).toContain('slide.viscous');
  expect(usual).not.toContain('slide.coulomb');
  for (const kind of MOVE_KINDS) {
    const move = readMove(kind, {});
    if (!move.ok) throw new Error(JSON.stringify(move.problems));
    if (move.value.kind === 'step') expect(simulate(model, move.value).summary.unstable).toBeNull();
  }
});

test('derived: every problem is named by its field', () => {
  const cases: readonly (readonly [string, unknown])[] = [
    ['motor.resistance', { ...GOOD, motor: { ...GOOD.motor, resistance: '5 kg' } }],
    ['motor.resistance', { ...GOOD, motor: { ...GOOD.motor, resistance: 1.2 } }],
    ['motor.resistance', { ...GOOD, motor: { ...GOOD.motor, resistance: '-1 ohm' } }],
    ['motor.colour', { ...GOOD, motor: { ...GOOD.motor, colour: 'red' } }],
    ['motor.kind', { ...GOOD, motor: { ...GOOD.motor, kind: '__proto__' } }],
    ['slide.mass', { ...GOOD, slide: {} }],
    ['slide', { ...GOOD, slide: 5 }],
    ['engine', { ...GOOD, engine: {} }],
    ['model', []],
    ['control.speedEvery', { ...GOOD, control: { ...GOOD.control, speedEvery: '0' } }],
  ];
  for (const [where, given] of cases) {
    const read = readModel(given);
    expect(read.ok, where).toBe(false);
    if (!read.ok) expect(read.problems.map((each) => each.where)).toContain(where);
  }
  const move = readMove('rapid', { distance: '5 kg', height: '1 mm' });
  expect(move.ok ? [] : move.problems.map(({ where }) => where)).toEqual(['height', 'distance']);
});

test('derived: every usual value can be read', () => {
  for (const [group, { kinds }] of Object.entries(GROUPS))
    for (const [kind, parameters] of Object.entries(kinds)) {
      const given = Object.fromEntries(
        Object.entries(parameters).map(([name, each]) => [
          name,
          each.usual ??
            (each.kind === 'choice' ? each.options[0] : each.unit === '1' ? '1' : `1 ${each.unit}`),
        ]),
      );
      const read = readModel({ ...GOOD, [group]: kind === '' ? given : { kind, ...given } });
      // Groups may contradict one another; no single field of this one may be refused as text.
      if (!read.ok)
        for (const each of read.problems) expect(each.code, `${each.where}`).toBe('out-of-domain');
    }
});
