/** The bus while all axes brake at once, with and without a dump resistor, and the tolerance of its capacitors. */
import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { applyEdit, type Refit } from '../refit/index.ts';
import { assess, assessDrawn, remedies, setPath, why } from './index.ts';

function withFacts(refit: Refit, facts: Readonly<Record<string, string>>): Refit {
  return Object.entries(facts).reduce((before, [path, text]) => {
    const setting = setPath(before, path, text);
    if (!setting.ok) throw new Error(setting.problem.message);
    const after = applyEdit(before, { changes: setting.value.changes });
    if (!after.ok) throw new Error(after.problem.message);
    return after.value;
  }, refit);
}

const lathe = sample('carriage-works-lathe');
const find = (refit: Refit, id: string) => assessDrawn(refit).findings.find((each) => each.id === id);

test('derived: each axis alone fits where both together do not', () => {
  const tighter = withFacts(lathe, { 'X.drive.highestVoltage': '93 V' });
  for (const axis of ['X', 'Z']) expect(find(tighter, `${axis}.regeneration`)!.verdict).not.toBe('fails');
  const all = find(tighter, 'machine.braking-all')!;
  expect(all.verdict).toBe('fails');
  // The weakest drive counts, and the finding rests on both.
  expect(all.there!.value).toBe(93);
  expect(all.facts).toContain('Z.drive.highestVoltage');
  expect(all.sentence).toContain('dump resistor');
});

test('derived: an axis about which too little is known leaves the whole unknown, by name', () => {
  const stripped = structuredClone(lathe) as unknown as {
    parts: Record<string, { facts: Record<string, unknown> }>;
  };
  delete stripped.parts['z-motor']!.facts.inertia;
  const all = assess(stripped as unknown as Refit).findings.find((f) => f.id === 'machine.braking-all')!;
  expect(all.verdict).toBe('unknown');
  expect(all.missing).toEqual(['Z.motor.inertia']);
});

test('derived: a heavy axis that slows gently on its way down lifts the bus by its weight too', () => {
  const steep = withFacts(lathe, { 'X.slide.slope': '90 deg', 'X.slide.mass': '300 kg' });
  const [quick, gentle] = ['1.5 m/s2', '0.3 m/s2'].map(
    (a) => find(withFacts(steep, { 'X.duty.acceleration': a }), 'X.regeneration')!.asked!.value,
  );
  expect(gentle!).toBeGreaterThan(quick! + 0.5);
});

test('derived: remedies of the whole reach the rapids of the axes', () => {
  const limits = { 'X.drive.highestVoltage': '103 V', 'Z.drive.highestVoltage': '103 V' };
  const stronger = withFacts(lathe, limits);
  const paths = remedies(assessDrawn(stronger), 'machine.braking-all').map(({ path }) => path);
  expect(paths).toContain('supply.capacitance');
  expect(paths).toContain('X.duty.rapid');
  expect(paths).not.toContain('X.motor.inertia');
});

test('derived: with a dump its ohms and its joules are asked instead', () => {
  const dumped = withFacts(lathe, {
    'supply.dumpFitted': 'yes',
    'supply.dumpVoltage': '90 V',
    'supply.dumpResistor': '10 ohm',
    'supply.dumpEnergy': '100 J',
  });
  expect(find(dumped, 'machine.braking-all')).toBeUndefined();
  const power = find(dumped, 'machine.dump-power')!;
  expect(power.there!.value).toBeCloseTo(810, 9);
  // A constant deceleration: twice the energy over the time to stop, axis by axis.
  expect(power.asked!.value).toBeCloseTo(0.8 * ((2 * 12.06) / (0.1 / 1.5) + (2 * 10.34) / (8 / 60)), -1);
  const heat = find(dumped, 'machine.dump-energy')!;
  const [mainsHigh, C] = [Math.SQRT2 * 52 * 1.11 * 1.1 - 1.4, 0.03];
  expect(heat.asked!.value).toBeCloseTo(0.8 * 22.4 - (C / 2) * (90 ** 2 - mainsHigh ** 2), 1);
  const none = find(withFacts(dumped, { 'supply.dumpVoltage': '95 V' }), 'machine.dump-energy')!;
  expect(none.sentence).toContain('before the dump even switches in');
  expect(find(withFacts(dumped, { 'supply.dumpResistor': '40 ohm' }), 'machine.dump-power')!.verdict).toBe(
    'fails',
  );
  const asked = find(withFacts(lathe, { 'supply.dumpFitted': 'yes' }), 'machine.dump-power')!;
  expect([...asked.missing].sort()).toEqual(['supply.dumpResistor', 'supply.dumpVoltage']);
});

test('derived: a capacitor that nobody measured is in doubt by a fifth, though it was chosen', () => {
  // 680 Ω and 18 mF: 4.7 s; a fifth more or less decides.
  const printed = withFacts(lathe, { 'supply.capacitance': '18 mF', 'supply.bleeder': '680 ohm' });
  const finding = find(printed, 'machine.discharge')!;
  const time = 680 * 0.018 * Math.log((Math.SQRT2 * 52 * 1.11 * 1.1 - 1.4) / 60);
  expect(finding.asked!.value).toBeCloseTo(time, 6);
  expect(finding.margin!).toBeGreaterThan(1);
  expect(finding.verdict).toBe('tight');
  // Evenly likely from −20 % to +20 %, so that many of all fit; the guess at the transformer blurs it a little.
  expect(finding.chance!).toBeCloseTo((5 / time - 0.8) / 0.4, 1);
  expect(finding.policies).toContain('capacitor-tolerance');
  expect(finding.doubts![0]!.source).toBe('supply.capacitance');
  const sheet = why(assess(printed), 'machine.discharge')!;
  expect(sheet.policies.map(({ id }) => id)).toContain('capacitor-tolerance');
  const stated = withFacts(lathe, { 'supply.capacitance': '18 mF ± 0.5 %', 'supply.bleeder': '680 ohm' });
  expect(find(stated, 'machine.discharge')!.policies).not.toContain('capacitor-tolerance');
});
