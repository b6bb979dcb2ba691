/** The findings on a spindle: what fits, what is amiss, and what explains itself. */
import { describe, expect, test } from 'vitest';
import type { Refit } from '../refit/index.ts';
import { assess, assessDrawn, next, remedies, why } from './index.ts';
import { FACTS, refitWith } from './spindle.fixture.ts';

const whole = refitWith(FACTS);
const base = assess(whole);
const findingOf = (refit: Refit, id: string) => assess(refit).findings.find((each) => each.id === `S.${id}`);
const found = (facts: Readonly<Record<string, string>>, id: string) =>
  findingOf(refitWith(facts, whole), id)!;

test('a whole spindle is judged throughout: nothing unknown, nothing fails', () => {
  const own = base.findings.filter(({ chain }) => chain === 'S');
  expect(own.filter(({ verdict }) => verdict === 'unknown')).toEqual([]);
  expect(own.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
  expect(own.length).toBeGreaterThan(20);
});

test('no axis question is asked of a spindle, and no spindle question of an axis', () => {
  for (const { id, chain, place } of base.findings) {
    const isSpindle = place.startsWith('spindle') || ['belts', 'chuck'].includes(place);
    expect(isSpindle, id).toBe(chain === 'S');
  }
});

describe('star and delta', () => {
  test('star on a 230 V inverter runs out of volts and torque; delta is its remedy', () => {
    const star = assess(refitWith({ 'S.spindle-motor.connection': 'star' }, whole));
    const finding = star.findings.find(({ id }) => id === 'S.winding-volts')!;
    expect(finding.verdict).toBe('fails');
    expect(finding.side).toBe('low');
    expect(finding.sentence).toContain('a third');
    const delta = remedies(star, 'S.winding-volts').find(({ path }) => path === 'S.spindle-motor.connection');
    expect(delta?.text).toBe('delta');
    // Less torque above 29 Hz: the cut at 1000 r/min of the motor gets less than before.
    const torque = star.findings.find(({ id }) => id === 'S.spindle-torque')!;
    const before = base.findings.find(({ id }) => id === 'S.spindle-torque')!;
    // 230 of 400 V last to 822 r/min, and 500 r/min behind 2 : 1 are 1000 of the motor: the power of 822 is left.
    // The drag of 1 N·m is taken off both.
    expect((torque.there!.value + 1) / (before.there!.value + 1)).toBeCloseTo(0.82225, 4);
  });
  test('delta on 400 V says that it burns', () => {
    const burnt = found(
      {
        'S.spindle-drive.outputVoltage': '400 V',
        'S.spindle-drive.inputVoltage': '400 V',
        'site.mains': '400 V',
      },
      'winding-volts',
    );
    expect(burnt).toMatchObject({ verdict: 'fails', side: 'high' });
    expect(burnt.sentence).toContain('burns');
  });
});

describe('limits of speed', () => {
  test('an unmarked chuck gives no permission, said plainly', () => {
    for (const id of ['overspeed', 'overspeed-drive']) {
      const finding = found({ 'S.chuck.topSpeed': 'unknown' }, id);
      expect(finding.verdict).toBe('unknown');
      expect(finding.sentence).toMatch(/^No permission/);
      expect(finding.missing).toEqual(['S.chuck.topSpeed']);
    }
  });
  test.each([
    [{ 'S.chuck.topSpeed': '2000 r/min' }, 'marked on the chuck', 2000],
    [{ 'S.chuck.grip': '4 kN' }, 'jaws', 1814.22],
    [{ 'S.spindle.topSpeed': '1800 r/min' }, 'bearings', 1800],
    [{ 'S.belts.pulleySpeed': '2400 r/min' }, 'wheel', 2400],
  ])('%j: the least is named', (facts, word, speed) => {
    const finding = found(facts, 'overspeed');
    expect(finding.verdict).toBe('fails');
    expect(finding.sentence).toContain(word);
    expect((finding.there!.value * 30) / Math.PI).toBeCloseTo(speed, 1);
  });
  test('without a chuck, and with a coupling, only the bearings count', () => {
    const finding = found({ 'S.chuck': 'none', 'S.belts.type': 'direct' }, 'overspeed');
    expect(finding).toMatchObject({ verdict: 'fits' });
    expect(finding.sentence).toContain('bearings');
  });
  test('what the drive is set to counts, whatever is wanted; its remedy is a lower frequency', () => {
    const fast = assess(refitWith({ 'S.spindle-drive.highestFrequency': '100 Hz' }, whole));
    const finding = fast.findings.find(({ id }) => id === 'S.overspeed-drive')!;
    expect(finding.verdict).toBe('fails');
    const lower = remedies(fast, finding.id).find(({ path }) => path === 'S.spindle-drive.highestFrequency');
    // Idling it turns with its field: 3000 · 0.75 ÷ 30, rounded down from the edge that was bracketed.
    expect(['75 Hz', '74.9 Hz']).toContain(lower?.text);
  });
  test('a lowest speed of 0 r/min explains itself; a drive with an encoder holds it', () => {
    const still = found({ 'S.spindle-duty.lowestSpeed': '0 r/min' }, 'lowest-speed');
    expect(still.verdict).toBe('fails');
    expect(still.sentence).toContain('encoder on the motor');
    const held = found(
      { 'S.spindle-duty.lowestSpeed': '0 r/min', 'S.spindle-drive.mode': 'closed' },
      'lowest-speed',
    );
    expect(held.verdict).toBe('fits');
  });
  test('a top speed of 0 r/min in a file is a problem that names the field, and no verdict', () => {
    const part = whole.parts['s-spindle-duty']!;
    const topSpeed = { value: { kind: 'quantity', text: '0 r/min' }, basis: 'told' } as const;
    const refit = {
      ...whole,
      parts: { ...whole.parts, [part.id]: { ...part, facts: { ...part.facts, topSpeed } } },
    };
    const assessment = assess(refit);
    expect(assessment.problems.map(({ where }) => where)).toContain('S.spindle-duty.topSpeed');
    for (const id of ['overspeed', 'reach', 'run-up'])
      expect(assessment.findings.find((each) => each.id === `S.${id}`)!.verdict).toBe('unknown');
  });
});

describe('feedback', () => {
  const pulse = {
    'S.spindle-feedback.type': 'pulse',
    'S.spindle-feedback.driven': 'spindle',
    'S.spindle-feedback.lines': '1 lines',
  };
  test('one pulse a turn: light passes only, no rigid tapping, and no smooth thread', () => {
    expect(found(pulse, 'thread-feedback')).toMatchObject({ verdict: 'tight' });
    expect(found(pulse, 'thread-feedback').sentence).toContain('sags');
    const tapping = found({ ...pulse, 'S.spindle-duty.threading': 'tapping' }, 'thread-feedback');
    expect(tapping.verdict).toBe('fails');
    expect(tapping.sentence).toContain('only once a turn');
    const counts = found(pulse, 'thread-counts');
    expect(counts.verdict).toBe('fails');
    // 2 mm over four edges.
    expect(counts.asked!.value).toBeCloseTo(0.5e-3, 9);
    expect(found(pulse, 'spindle-index').verdict).toBe('fits');
  });
  test.each([
    [36, 28, 'fails', '9 turns for 7 turns'],
    [36, 24, 'fails', '3 turns for 2 turns'],
    [36, 18, 'fails', '2 different angles'],
    [18, 36, 'tight', 'every 2 turns'],
    [36, 36, 'fits', 'one to one'],
  ])('an encoder geared %i to %i: %s', (spindle, encoder, verdict, words) => {
    const finding = found(
      {
        'S.spindle-feedback.spindleTeeth': `${spindle} teeth`,
        'S.spindle-feedback.encoderTeeth': `${encoder} teeth`,
      },
      'spindle-index',
    );
    expect(finding.verdict).toBe(verdict);
    expect(finding.sentence).toContain(words);
    expect(finding.facts).toContain('S.spindle-feedback.encoderTeeth');
  });
  test.each([
    [{ 'S.spindle-feedback.index': 'no' }, 'spindle-index'],
    [{ 'S.spindle-feedback.driven': 'motor' }, 'spindle-index'],
    [{ 'S.spindle-feedback.driven': 'motor' }, 'thread-feedback'],
    [{ 'S.spindle-feedback.driven': 'v-belt' }, 'spindle-index'],
    [{ 'S.spindle-feedback.driven': 'v-belt' }, 'thread-feedback'],
    [{ 'S.spindle-feedback.type': 'tacho' }, 'thread-feedback'],
    [{ 'S.spindle-feedback': 'none' }, 'thread-feedback'],
    [{ 'S.spindle-feedback': 'none' }, 'spindle-index'],
  ])('%j: %s fails with a reason', (facts, id) => {
    const finding = found(facts, id);
    expect(finding.verdict).toBe('fails');
    expect(finding.sentence.length).toBeGreaterThan(60);
  });
  test('without threads nobody asks', () => {
    const assessment = assess(refitWith({ 'S.spindle-duty.threading': 'none' }, whole));
    const asked = assessment.findings.map(({ check }) => check);
    for (const id of ['thread-feedback', 'spindle-index', 'thread-counts']) expect(asked).not.toContain(id);
  });
});

describe('drive and mains', () => {
  test.each([
    [{ 'S.spindle-drive.type': 'dc' }, 'spindle-suits', 'fails'],
    [{ 'S.spindle-drive.inputPhases': 'three' }, 'spindle-phases', 'fails'],
    [{ 'S.spindle-drive.inputPhases': 'three', 'site.phases': 'converter' }, 'spindle-phases', 'tight'],
    [{ 'S.spindle-drive.inputPhases': 'three', 'site.phases': 'three' }, 'spindle-phases', 'fits'],
    [{ 'site.mains': '400 V' }, 'spindle-mains', 'fails'],
    [{ 'site.breaker': '10 A' }, 'spindle-breaker', 'fails'],
    [{ 'S.spindle-drive.continuousCurrent': '7 A' }, 'spindle-current', 'fails'],
    [{ 'S.spindle-drive.resistor': '30 Ω' }, 'resistor-ohms', 'fails'],
    [{ 'S.spindle-duty.stopsPerMinute': '10 1/min' }, 'resistor-watts', 'fails'],
    [{ 'S.spindle-drive.braking': 'none' }, 'spindle-stop', 'fails'],
    [{ 'S.spindle.drag': '30 N·m' }, 'run-up', 'unknown'],
    [{ 'S.spindle-motor.insulation': '0.4 MΩ' }, 'spindle-insulation', 'fails'],
    [{ 'S.belts.ratio1': '40', 'S.spindle-drive.mode': 'vf' }, 'range-step', 'fails'],
    [{ 'S.spindle-duty.cutPower': '9 kW' }, 'spindle-torque', 'fails'],
    [{ 'S.spindle-duty.cutSpeed': '150 r/min' }, 'spindle-cooling', 'fails'],
    [{ 'S.chuck.grip': '4 kN', 'S.spindle-duty.gripDiameter': '30 mm' }, 'jaw-grip', 'fails'],
  ])('%j: %s %s', (facts, id, verdict) => {
    const finding = found(facts, id);
    expect(finding.verdict).toBe(verdict);
    expect(finding.sentence).not.toMatch(/NaN|undefined|Infinity|\{/);
  });
  test('more drag than torque is no answer but a reason', () => {
    expect(found({ 'S.spindle.drag': '30 N·m' }, 'run-up').sentence).toContain('never starts');
  });
  test('a DC motor is asked about its field, an induction motor is not', () => {
    const dc = refitWith(
      {
        'S.spindle-motor.type': 'dc',
        'S.spindle-drive.type': 'dc',
        'S.spindle-drive.fieldGuard': 'none',
        'S.spindle-motor.voltage': '180 V',
        'S.spindle-motor.current': '14 A',
        'S.spindle-drive.outputVoltage': '180 V',
        'S.spindle-drive.continuousCurrent': '15 A',
      },
      whole,
    );
    expect(findingOf(dc, 'field-loss')).toMatchObject({ verdict: 'fails' });
    expect(findingOf(dc, 'winding-volts')).toMatchObject({ verdict: 'fits' });
    expect(findingOf(whole, 'field-loss')).toBeUndefined();
  });
});

test('the working behind a time, a limit and a torque names formulas, facts and policies', () => {
  const runUp = why(base, 'S.run-up')!;
  expect(runUp.steps.length).toBeGreaterThan(8);
  expect(runUp.facts.map(({ path }) => path)).toContain('S.chuck.inertia');
  expect(why(base, 'S.spindle-cooling')!.policies.map(({ id }) => id)).toContain('own-fan-torque');
  for (const { id } of base.findings.filter(({ chain }) => chain === 'S'))
    expect(why(base, id)!.why).toMatch(/\.$/);
});

test('chances are drawn for a spindle as for an axis', () => {
  const doubtful = assessDrawn(refitWith({ 'S.spindle.drag': '1 ± 0.5 N·m' }, whole));
  const stop = doubtful.findings.find(({ id }) => id === 'S.run-down')!;
  expect(stop.chance).toBeGreaterThanOrEqual(0);
  expect(stop.doubts![0]!.source).toBe('S.spindle.drag');
});

test('an edit on the spindle works out only what it touches', () => {
  const after = assess(refitWith({ 'S.chuck.topSpeed': '3400 r/min' }, whole), { previous: base });
  expect(after.recomputed).toEqual(['S/spindle-limits']);
  const untouched = after.findings.find(({ id }) => id === 'S.run-up');
  expect(untouched).toBe(base.findings.find(({ id }) => id === 'S.run-up'));
});

test('a new refit asks for the spindle’s facts next, each with how to find it out', () => {
  const bare = assess(refitWith({}));
  const steps = next(bare, 200).filter(({ path }) => path.startsWith('S.'));
  expect(steps.length).toBeGreaterThan(10);
  for (const step of steps) expect(step.findOut).toMatch(/[.:]/);
});
