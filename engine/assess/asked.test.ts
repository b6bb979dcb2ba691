/** Which questions make sense for a machine, and what is said where nothing is asked. */
import { expect, test } from 'vitest';
import { blankRefit } from '../refit/blank.ts';
import { applyEdit } from '../refit/index.ts';
import { set } from '../refit/set.ts';
import type { Refit } from '../refit/types.ts';
import { assess } from './assess.ts';

/** A refit of one axis with these facts, as a person would type them. */
function refit(facts: Readonly<Record<string, string>>): Refit {
  const blank = blankRefit({ id: 'try', name: 'Try', machine: 'other', axes: ['X'] });
  if (!blank.ok) throw new Error(blank.problem.message);
  let now = blank.value;
  for (const [path, text] of Object.entries(facts)) {
    const setting = set(now, path, text, { basis: 'measured' });
    if (!setting.ok) throw new Error(`${path}: ${setting.problem.message}`);
    const after = applyEdit(now, { changes: setting.value.changes });
    if (!after.ok) throw new Error(after.problem.message);
    now = after.value;
  }
  return now;
}

const answers = (facts: Readonly<Record<string, string>>) => {
  const { findings, notAsked } = assess(refit(facts));
  return {
    found: (id: string) => findings.find((finding) => finding.id === id),
    reason: (id: string) => notAsked.find((each) => each.id === id)?.reason,
  };
};

test('derived: a stepper is asked neither for feedback nor for a plate speed, and the reason is plain', () => {
  const { found, reason } = answers({ 'X.motor.type': 'stepper', 'X.feedback': 'none' });
  for (const id of ['X.feedback-drive', 'X.top-speed', 'X.speed']) {
    expect(found(id), id).toBeUndefined();
    expect(reason(id), id).toBe('Kind of motor: stepping motor.');
  }
});

test('derived: a servo without any feedback fails, by pulses and by volts', () => {
  const servo = { 'X.motor.type': 'brushed', 'X.feedback': 'none' };
  expect(answers(servo).found('X.feedback-drive')?.verdict).toBe('fails');
  expect(answers({ ...servo, 'X.drive.command': 'volts' }).found('X.feedback-control')?.verdict).toBe(
    'fails',
  );
});

test('derived: a bus that never exceeds 60 V is asked for no bleeder, one above it is', () => {
  const supply = {
    'supply.type': 'regulated',
    'supply.ratedTolerance': '2 %',
    'supply.capacitance': '4700 µF',
  };
  const low = answers({ ...supply, 'supply.ratedVoltage': '58 V' });
  expect(low.reason('machine.discharge')).toBe('The bus never exceeds 60 V.');
  const high = answers({ ...supply, 'supply.ratedVoltage': '59 V' }).found('machine.discharge');
  expect(high?.missing).toEqual(['supply.bleeder']);
});

const ROUNDED = {
  'X.drive.command': 'pulses',
  'X.drive.pulsesPerTurn': '1600 pulses',
  'X.reduction.type': 'coupling',
  'X.screw.lead': '0.2 in',
  'X.slide.travel': '100 mm',
  'X.duty.tolerance': '0.5 mm',
  'control.pulsesPerMmStep': '1 1/mm',
};

test('derived: a rounded number uses up twice as much of a tolerance on a diameter', () => {
  // 1600 pulses over 5.08 mm are 314.9606…; 315 is 1/8000 too many: 0.0125 mm in 100 mm against a tenth of 0.5 mm.
  const length = answers({ ...ROUNDED, 'X.duty.toleranceOn': 'length' }).found('X.rounding')!;
  const diameter = answers({ ...ROUNDED, 'X.duty.toleranceOn': 'diameter' }).found('X.rounding')!;
  expect(length.margin).toBeCloseTo(4, 6);
  expect(diameter.margin).toBeCloseTo(2, 6);
});

test('derived: an exact number says so', () => {
  const exact = answers({
    ...ROUNDED,
    'X.duty.toleranceOn': 'length',
    'control.pulsesPerMmStep': '0 1/mm',
  }).found('X.rounding')!;
  expect(exact.verdict).toBe('fits');
  expect(exact.sentence).toBe('The control holds the number exactly: no distance is wrong for it.');
});

test('derived: with ±10 V control and encoder are asked once for their fineness, not twice', () => {
  const { found, reason } = answers({ 'X.drive.command': 'volts', 'X.feedback.type': 'encoder' });
  expect(found('X.resolution')).toBeDefined();
  expect(reason('X.feedback-resolution')).toMatch(/^Command in use: ±10 V/);
});

test('derived: motor friction falls back on the continuous current where the plate states no torque', () => {
  const { found } = answers({ 'X.motor.type': 'brushed' });
  const missing = found('X.drive-peak')!.missing;
  expect(missing).not.toContain('X.motor.holdingTorque');
  const plate = answers({
    'X.motor.type': 'brushed',
    'X.motor.emf': '30 V/krpm',
    'X.motor.emfAs': 'dc',
    'X.motor.continuousCurrent': '5 A',
    'X.motor.currentAs': 'dc',
  }).found('X.drive-peak')!.missing;
  expect(plate).not.toContain('X.motor.continuousTorque');
  expect(plate).not.toContain('X.motor.friction');
});
