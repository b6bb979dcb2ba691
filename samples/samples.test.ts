import { describe, expect, test } from 'vitest';
import { assess, type Finding, next, remedies, setPath, withOption } from '../engine/assess/index.ts';
import { applyEdit, type Refit } from '../engine/refit/index.ts';
import { SAMPLES } from './index.ts';
import { entries, sample, without } from './read.fixture.ts';

const refits = new Map(SAMPLES.map(({ id }) => [id, sample(id)]));
const assessments = new Map([...refits].map(([id, refit]) => [id, assess(refit)]));
const LATHE = 'carriage-works-lathe';
const MILL = 'boatyard-mill';
const find = (id: string, finding: string): Finding =>
  assessments.get(id)!.findings.find((each) => each.id === finding)!;

describe.each(SAMPLES)('$id', ({ id, name }) => {
  test('is read without problems or questions and carries its name', () => {
    expect(refits.get(id)!.name).toBe(name);
    expect(refits.get(id)!.id).toBe(id);
    expect(assessments.get(id)!.problems).toEqual([]);
    expect(assessments.get(id)!.questions).toEqual([]);
  });

  test('frozen: findings, verdicts and margins', async () => {
    const lines = assessments
      .get(id)!
      .findings.map(
        ({ id: finding, verdict, margin }) =>
          `${finding.padEnd(24)}${verdict.padEnd(9)}${typeof margin === 'number' ? margin.toPrecision(3) : '–'}`,
      );
    await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot(`${id}.findings.txt`);
  });

  test('every part is an option of a place', () => {
    const refit = refits.get(id)!;
    const used = new Set(
      [refit.places, ...refit.chains.map((chain) => chain.places)].flatMap((places) =>
        Object.values(places).flatMap((place) => place.options),
      ),
    );
    // A part that stood for feedback or brake before it was known that there is none stays an option.
    expect([...used].sort()).toEqual(Object.keys(refit.parts).sort());
  });
});

test('the planned traps of the lathe', () => {
  const traps = {
    'X.speed': 'fails',
    'X.volts': 'fails',
    'X.stays': 'fails',
    'machine.discharge': 'fails',
    'X.control-pulses': 'tight',
    'X.bus-high': 'tight',
    'Z.bus-high': 'tight',
    'X.regeneration': 'tight',
    'machine.braking-all': 'tight',
    'X.life': 'unknown',
    'X.resonance': 'unknown',
    'Z.speed': 'fits',
    'Z.volts': 'fits',
    'Z.lead': 'fits',
    'Z.life': 'fits',
    'S.run-down': 'tight',
    'S.winding-volts': 'fits',
    'S.spindle-index': 'fits',
  };
  for (const [finding, verdict] of Object.entries(traps))
    expect.soft(find(LATHE, finding).verdict, finding).toBe(verdict);
  expect(find(LATHE, 'X.bus-high').guesses).toEqual(['supply.regulation']);
});

test('the planned traps of the mill', () => {
  const traps = {
    'X.rounding': 'fails',
    'Y.rounding': 'fails',
    'Z.rounding': 'fails',
    'Z.drop': 'fails',
    'Z.brake': 'fits',
    'Z.pull-out-cut': 'tight',
    'Y.resonance': 'unknown',
    'S.winding-volts': 'fails',
    'S.thread-feedback': 'fails',
    'S.overspeed': 'fits',
    'S.overspeed-drive': 'fails',
  };
  for (const [finding, verdict] of Object.entries(traps))
    expect.soft(find(MILL, finding).verdict, finding).toBe(verdict);
  const onX = assessments.get(MILL)!.findings.filter((finding) => finding.chain === 'X');
  expect(onX.filter((finding) => finding.verdict !== 'fits').map((finding) => finding.id)).toEqual([
    'X.rounding',
  ]);
});

test('what to find out next is unknown now, and settles a finding', () => {
  for (const [id, assessment] of assessments) {
    const known = new Set(entries(refits.get(id)!).map((entry) => entry.path));
    const steps = next(assessment).filter((step) => !step.doubtful);
    expect(steps.length).toBeGreaterThan(0);
    for (const step of steps) expect(known.has(step.path), step.path).toBe(false);
    expect(steps.flatMap((step) => step.settles).length).toBeGreaterThan(0);
  }
  expect(next(assessments.get(LATHE)!)[0]!.path).toBe('X.screw.dynamicRating');
});

const changed = (refit: Refit, path: string, text: string): Refit => {
  const setting = setPath(refit, path, text);
  if (!setting.ok) throw new Error(setting.problem.message);
  const after = applyEdit(refit, { changes: setting.value.changes });
  if (!after.ok) throw new Error(after.problem.message);
  return after.value;
};

test('a slower rapid mends the X motor that runs out of volts', () => {
  const refit = refits.get(LATHE)!;
  const rapid = remedies(assessments.get(LATHE)!, 'X.speed').find(
    (remedy) => remedy.path === 'X.duty.rapid',
  )!;
  expect(rapid.free).toBe(true);
  const mended = assess(changed(refit, rapid.path, rapid.text));
  expect(mended.findings.find((each) => each.id === 'X.speed')!.verdict).toBe('fits');
  for (const change of rapid.changes)
    expect(mended.findings.find((each) => each.id === change.id)!.verdict).toBe(change.after);
});

test('the stepper and its drive change what is asked of X', () => {
  const refit = refits.get(LATHE)!;
  const place = (name: string) => refit.chains.find((chain) => chain.id === 'X')!.places[name]!;
  const other = (name: string): string => place(name).options.find((id) => id !== place(name).chosen)!;
  const motorOnly = withOption(refit, 'X', 'motor', other('motor'));
  const half = assess(motorOnly);
  expect(half.findings.find((each) => each.id === 'X.drive-motor')!.verdict).toBe('fails');
  const both = assess(withOption(motorOnly, 'X', 'drive', other('drive')));
  const verdict = (id: string) => both.findings.find((each) => each.id === id)?.verdict;
  expect(verdict('X.drive-motor')).toBe('fits');
  expect(verdict('X.speed')).toBeUndefined();
  expect(verdict('X.bus-high')).toBe('fails');
  expect(verdict('X.pull-out')).toBe('fails');
  expect(verdict('X.stays')).toBe('fails');
  const unknown = both.findings.filter((each) => each.chain === 'X' && each.verdict === 'unknown');
  expect(unknown.map((each) => each.id)).toEqual(['X.life', 'X.resonance']);
});

test('the unmarked holder of the mill is no permission to turn it fast', () => {
  const unmarked = assess(withOption(refits.get(MILL)!, 'S', 'chuck', 's-chuck'));
  const finding = unmarked.findings.find((each) => each.id === 'S.overspeed')!;
  expect(finding).toMatchObject({ verdict: 'unknown', missing: ['S.chuck.topSpeed'] });
  expect(finding.sentence).toMatch(/^No permission/);
});

/** Facts for which something else is taken when they are not known. */
const FALLBACK = new Set([
  'lead',
  'pitch',
  'starts',
  'efficiency',
  'dragTorque',
  'threadFriction',
  'friction',
  'sealDrag',
  'speedFactor',
  'brushDrop',
  'continuousTorque',
  'pullOut',
  'starCurrent',
]);
/** With its efficiency and drag known, a level screw’s kind and circle tell only what its friction does backwards. */
const NOT_NEEDED = new Set([`${MILL} X.screw.type`, `${MILL} X.screw.ballCircle`]);
/** Where another fact, less trouble to find, would do as well, that one is named. */
const INSTEAD: Readonly<Record<string, string>> = {
  ballCircle: 'efficiency',
  outside: 'efficiency',
  emf: 'peakTorque',
  emfAs: 'peakTorque',
  currentAs: 'peakTorque',
  peakCurrent: 'peakTorque',
  inductance: 'pullOut',
  resistance: 'pullOut',
  ratedTolerance: 'pullOut',
  preload: 'dragTorque',
};

describe.each(SAMPLES)('derived: $id with one fact less', ({ id }) => {
  test.each(entries(refits.get(id)!).map((entry) => [entry.path, entry] as const))('%s', (path, entry) => {
    const before = assessments.get(id)!;
    const after = assess(without(refits.get(id)!, entry), { previous: before });
    const now = new Map(after.findings.map((finding) => [finding.id, finding]));
    const wrong: string[] = [];
    for (const { id: which, sentence, asked, there, margin, chance, facts } of after.findings) {
      const numbers = [asked?.value, asked?.doubt, there?.value, there?.doubt, margin, chance];
      if (numbers.some((n) => typeof n === 'number' && !Number.isFinite(n))) wrong.push(`${which}: numbers`);
      if (/NaN|Infinity|undefined|\{/.test(sentence)) wrong.push(`${which}: ${sentence}`);
      if (facts.includes(path)) wrong.push(`${which} still rests on it`);
    }
    const fallback = FALLBACK.has(entry.name) || NOT_NEEDED.has(`${id} ${path}`);
    for (const finding of before.findings) {
      if (!finding.facts.includes(path)) continue;
      const then = now.get(finding.id);
      // What only holds two facts against each other is not asked without one of them.
      if (!then && entry.name === 'lead' && after.notAsked.some((each) => each.id === finding.id)) continue;
      if (fallback && then && then.verdict !== 'unknown') continue;
      const named = then?.missing.some((each) => each === path || each.endsWith(`.${INSTEAD[entry.name]}`));
      if (then?.verdict !== 'unknown' || !named)
        wrong.push(`${finding.id}: ${then?.verdict}, missing ${then?.missing}`);
    }
    expect(wrong).toEqual([]);
  });
});
