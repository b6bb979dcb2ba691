import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../../refit/types.ts';
import { analyseStop, type StopAnalysis } from '../analyse.ts';
import { dangerousPairs } from '../pairs.ts';
import { testSheet, testSheetHtml, testSheetText } from '../test-sheet.ts';
import { PATTERNS } from './index.ts';

const MOTIONS = [
  {
    id: 'X',
    kind: 'axis' as const,
    name: 'X axis',
    settings: {
      speed: '6 m/min',
      lead: '5 mm',
      inertia: '1.276e-3 kg·m²',
      friction: '0.25 N·m',
      deceleration: '2 m/s²',
    },
  },
  {
    id: 'spindle',
    kind: 'spindle' as const,
    name: 'spindle',
    settings: { speed: '1500 r/min', inertia: '0.12 kg·m²', friction: '1.5 N·m', deceleration: '2 s' },
  },
];
const looked = new Map<string, StopAnalysis>(
  PATTERNS.map((pattern) => {
    const found = analyseStop(pattern.make(MOTIONS));
    if (!found.ok) throw new Error(`${pattern.id}: ${found.problem.message} ${found.problem.where}`);
    return [pattern.id, found.value];
  }),
);
const dangers = (id: string) =>
  looked
    .get(id)!
    .faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && !fault.mayExclude)
    .map(({ fault }) => fault.id);

describe.each(PATTERNS)('$id', ({ id, warning, make }) => {
  const { base, findings, races, truth } = looked.get(id)!;
  test('derived: everything can be started, everything stops, nothing starts unasked, nothing races or chatters', () => {
    expect(base.runs).toHaveLength(2);
    expect(truth.complete).toBe(true);
    expect(races).toEqual([]);
    expect(base.restless).toEqual([]);
    expect(findings.find((each) => each.id === 'restart')!.verdict).toBe('fits');
    for (const finding of findings.filter((each) => each.id.startsWith('stop.')))
      if (!(warning && finding.id === 'stop.S1'))
        expect.soft(finding.verdict, finding.sentence).not.toBe('fails');
    expect(truth.neverOn).toEqual([]);
  });

  test('derived: only patterns with two channels keep stopping with any one fault', () => {
    const one = id === 'asks-the-control' || id === 'one-contactor';
    // A broken brake and a broken lock are beyond any wiring; the patterns say so.
    const beyond =
      id === 'vertical-axis'
        ? ['Y1 does not close']
        : id === 'locked-door'
          ? ['S3 lock stays pulled in']
          : [];
    if (one) expect(dangers(id).length).toBeGreaterThan(3);
    else expect(dangers(id)).toEqual(beyond);
  });

  test('derived: drawn again it is the same', () => {
    expect(make(MOTIONS)).toEqual(make(MOTIONS));
  });
});

test('derived: stop categories: coasting, braked, held by its brake first', () => {
  const category = (id: string) => looked.get(id)!.stops.find(({ role }) => role === 'emergency')!.stops[0]!;
  expect(category('asks-the-control').category).toBe('2');
  expect(category('one-contactor').category).toBe('0');
  expect(category('safety-relay').category).toBe('0');
  expect(category('braked-stop').category).toBe('1');
  const vertical = category('vertical-axis');
  expect(vertical.brakeOn).toBeLessThan(vertical.torqueOff);
  expect(vertical.drop).toBe(0);
});

test('derived: an axis that drops: with its brake first it is held, without it or with a late brake that is said', () => {
  const verdict = (change: (circuit: StopCircuit) => StopCircuit): string | undefined => {
    const drawn = PATTERNS.find(({ id }) => id === 'vertical-axis')!.make(MOTIONS);
    const found = analyseStop(change(drawn));
    if (!found.ok) throw new Error(found.problem.message);
    const { verdict: is, sentence } = found.value.findings.find(({ id }) => id === 'X.brake')!;
    return `${is}: ${sentence}`;
  };
  expect(verdict((same) => same)).toMatch(/^fits/);
  const brake = (engage: string) => (circuit: StopCircuit) => ({
    ...circuit,
    elements: { ...circuit.elements, Y1: { ...circuit.elements.Y1!, settings: { engage } } },
  });
  // The power goes 520 ms after the button, its hold-up 100 ms later; on a power cut there are only those 100 ms.
  expect(verdict(brake('60 ms'))).toMatch(/^fits/);
  expect(verdict(brake('120 ms'))).toMatch(/^fails: After “switch the power off”/);
  expect(
    verdict((circuit) => ({
      ...circuit,
      motions: { ...circuit.motions, X: { ...circuit.motions.X!, brake: null } },
    })),
  ).toMatch(/^fails: X drops when nothing holds it/);
});

test('derived: a braked axis runs on by v·t + v²/2a from the moment the drive obeys', () => {
  const { stops } = looked.get('braked-stop')!;
  const x = stops.find(({ role }) => role === 'emergency')!.stops[0]!;
  // The unit lets go after 20 ms, the drive obeys 5 ms later.
  expect(x.distance).toBeCloseTo(0.1 * 0.025 + 0.1 ** 2 / 4, 9);
  expect(x.time).toBeCloseTo(0.025 + 0.05, 9);
});

test('derived: two unnoticed faults that are dangerous together are found in pieces, and the search can be cut short', () => {
  const { base, faults } = looked.get('two-contactors')!;
  const judged = faults.map(({ fault, judged: each }) => [fault, each] as const);
  const mirror = judged.filter(
    ([{ id }]) => id === 'K1 51-52 welded' || id === 'K1 welded' || id === 'K2 welded',
  );
  const pieces = [...dangerousPairs(base, mirror)];
  expect(pieces.at(-1)).toMatchObject({ done: 3, all: 3 });
  expect(judged.find(([{ id }]) => id === 'K1 51-52 welded')![1].verdict).toBe('unnoticed');
  const search = dangerousPairs(base, judged);
  const first = search.next();
  expect(first.value).toMatchObject({ done: 20 });
  expect(first.value!.all).toBeGreaterThan(1000);
  expect(search.return().done).toBe(true);
});

test('derived: the estimate says what it rests on and never claims a level that cannot be claimed', () => {
  const { estimate } = looked.get('two-contactors')!;
  expect(estimate.resembles).toBe('3');
  expect(estimate.level).toBeUndefined();
  expect(estimate.missing.join(' ')).toMatch(/common cause/);
  expect(looked.get('one-contactor')!.estimate.resembles).toBe('B or 1');
  expect(looked.get('safety-relay')!.estimate.missing.join(' ')).toMatch(/U1: the maker/);
  // With the maker's years and the points answered there is a level, from the parts by D.1 and D.2.
  const drawn = PATTERNS.find(({ id }) => id === 'safety-relay')!.make(MOTIONS);
  const u1 = drawn.elements.U1!;
  const answered = analyseStop({
    ...drawn,
    elements: { ...drawn.elements, U1: { ...u1, settings: { ...u1.settings, mttfd: '150' } } },
    settings: {
      'uses-a-year': '500',
      'ccf-separation': 'yes',
      'ccf-protection': 'yes',
      'ccf-environment': 'yes',
      'ccf-other': 'yes',
    },
  });
  if (!answered.ok) throw new Error(answered.problem.message);
  const { mttfd, commonCause, level, resembles } = answered.value.estimate;
  expect(commonCause).toBe(65);
  // Button 2000 years, unit 150, one contactor 26 000: alike in both channels.
  expect(mttfd).toBeCloseTo(1 / (1 / 2000 + 1 / 150 + 1 / 26_000), 6);
  expect(resembles).toBe('4');
  // The button is only compared, so the coverage is not that of category 4 and the chart gives nothing.
  expect(level).toBeUndefined();
});

test('derived: the test sheet: one action a line, cautions at the step, escaped', () => {
  const pattern = PATTERNS.find(({ id }) => id === 'vertical-axis')!;
  const sheet = testSheet('Lathe <b>"&', pattern.make(MOTIONS), looked.get('vertical-axis')!, '2026-01-31');
  expect(sheet.due).toBe('2027-01-31');
  expect(sheet.lines.some(({ act }) => /prop 20 mm/.test(act))).toBe(true);
  expect(
    sheet.lines
      .filter(({ act }) => /Take off|armature/.test(act))
      .every(({ caution }) => caution?.includes('locked')),
  ).toBe(true);
  const html = testSheetHtml(sheet);
  expect(html).not.toContain('<b>"');
  expect(html).not.toMatch(/<script/i);
  expect(testSheetText(sheet)).toMatch(/signature/);
});

test('derived: nothing is ever called safe or certified', () => {
  const words = JSON.stringify(
    [...looked.values()].map(({ findings, faults, estimate, notExamined }) => [
      findings,
      faults.map(({ says, catches }) => [says, catches]),
      estimate,
      notExamined,
    ]),
  );
  for (const [, near] of words.matchAll(/(.{0,30}\b(?:certified|is safe|achieved)\b)/gi))
    expect(near).toMatch(/neither|no /);
});
