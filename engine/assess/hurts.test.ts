/** Worst corners of the checks in which somebody gets hurt or a part burns. */
import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { applyEdit, type Refit } from '../refit/index.ts';
import { assess, setPath } from './index.ts';

function changed(refit: Refit, facts: Readonly<Record<string, string>>): Refit {
  return Object.entries(facts).reduce((before, [path, text]) => {
    const setting = setPath(before, path, text);
    if (!setting.ok) throw new Error(setting.problem.message);
    const after = applyEdit(before, { changes: setting.value.changes });
    if (!after.ok) throw new Error(after.problem.message);
    return after.value;
  }, refit);
}
const lathe = sample('carriage-works-lathe');
const mill = sample('boatyard-mill');
const find = (refit: Refit, id: string) => assess(refit).findings.find((each) => each.id === id);

test('derived: a fast spindle throws jaws that grip well in the heaviest cut', () => {
  const fast = changed(lathe, { 'S.spindle-duty.topSpeed': '5000 r/min', 'S.chuck.grip': '60 kN' });
  expect(find(fast, 'S.jaw-grip')!.verdict).toBe('fits');
  // 3 · 0.9 kg · 62 mm · (523.6 rad/s)² = 45.9 kN, with half as much again: more than the 60 kN at rest.
  const top = find(fast, 'S.jaw-grip-top')!;
  expect(top.verdict).toBe('fails');
  expect(top.asked!.value).toBeCloseTo(1.5 * (45_893 + (1.5 * 2 * (1000 / 523.6)) / 0.015), -2);
});

test('derived: the bus is left higher by a stop, and by a dump where that switches in', () => {
  const time = (refit: Refit) => find(refit, 'machine.discharge-stop')!.asked!.value;
  const dump = { 'supply.dumpFitted': 'yes', 'supply.dumpVoltage': '93 V' };
  expect(time(changed(lathe, dump))).toBeCloseTo(680 * 0.03 * Math.log(93 / 60), 9);
  // What one axis sends back is not known: no answer here, and the one for high mains stands.
  const stripped = structuredClone(lathe) as unknown as {
    parts: Record<string, { facts: Record<string, unknown> }>;
  };
  delete stripped.parts['z-motor']!.facts.inertia;
  const after = stripped as unknown as Refit;
  expect(find(after, 'machine.discharge-stop')!.missing).toEqual(['Z.motor.inertia']);
  expect(find(after, 'machine.discharge')!.verdict).toBe('fails');
});

test('derived: capacitors are held against the unloaded bus, once their print is read', () => {
  const asked = assess(lathe).notAsked.find(({ id }) => id === 'machine.capacitor-volts')!;
  expect(asked.reason).toContain('burst');
  const verdict = (volts: string) =>
    find(changed(lathe, { 'supply.capacitorVoltage': volts }), 'machine.capacitor-volts')!.verdict;
  expect(['80 V', '90 V', '100 V'].map(verdict)).toEqual(['fails', 'tight', 'fits']);
});

test('derived: a brake on the motor holds by the belt alone', () => {
  const path = (facts: Readonly<Record<string, string>>) => find(changed(mill, facts), 'Z.brake-path')!;
  expect(path({ 'Z.reduction.type': 'belt' }).verdict).toBe('tight');
  expect(path({ 'Z.reduction.type': 'belt' }).sentence).toContain('belt breaks');
  expect(path({ 'Z.reduction.type': 'coupling' }).verdict).toBe('fits');
  expect(path({ 'Z.reduction.type': 'belt', 'Z.brake.on': 'screw' }).verdict).toBe('fits');
  expect(
    find(changed(mill, { 'Z.slide.slope': '0 deg', 'Z.slide.balance': 'none' }), 'Z.brake-path'),
  ).toBeUndefined();
});
