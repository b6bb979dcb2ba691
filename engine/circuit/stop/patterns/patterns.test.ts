import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../../refit/types.ts';
import { analyseStop, type StopAnalysis } from '../analyse.ts';
import { compileStop } from '../compile.ts';
import type { Offers } from '../motion-numbers.ts';
import { dangerousPairs } from '../pairs.ts';
import { testSheetHtml, testSheetText } from '../test-paper.ts';
import { testSheet } from '../test-sheet.ts';
import { sayEstimate } from '../words.ts';
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
    expect(findings.find((each) => each.id === 'stop.restart')!.verdict).toBe('fits');
    for (const finding of findings.filter((each) => /^stop\.(act\.|power$|emergency$|reach$)/.test(each.id)))
      if (!(warning && finding.id === 'stop.act.S1'))
        expect.soft(finding.verdict, finding.sentence).not.toBe('fails');
    expect(truth.neverOn).toEqual([]);
  });

  test('derived: only patterns with two channels keep stopping with any one fault', () => {
    const one = id === 'asks-the-control' || id === 'one-contactor';
    // A broken brake and a broken lock are beyond any wiring; the patterns say so.
    const beyond =
      id === 'vertical-axis' || id === 'limits-with-brake'
        ? ['Y1 does not close']
        : id === 'locked-door'
          ? ['S3 lock stays pulled in']
          : [];
    if (id === 'limits-with-release') return;
    if (one) expect(dangers(id).length).toBeGreaterThan(3);
    else expect(dangers(id)).toEqual(beyond);
  });

  test('derived: drawn again it is the same', () => {
    expect(make(MOTIONS)).toEqual(make(MOTIONS));
  });
});

test('derived: limit switches that only ask: no single fault touches the emergency stop, those that are dangerous concern the switches', () => {
  const { faults } = looked.get('limits-with-release')!;
  const dangerous = faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && !fault.mayExclude);
  expect(dangerous.map(({ fault }) => fault.id)).toContain('S3 stuck pressed');
  for (const { fault, judged } of dangerous)
    for (const { kind, after } of judged.happenings)
      if (kind !== 'rougher' && kind !== 'power-returns' && kind !== 'ignored')
        expect(after, `${fault.id}: ${kind}`).toMatch(/(run onto|come off) S\d+ \(X, (lower|upper) end\)/);
});

test('derived: limit switches in the channels: power goes, category 0; asking: braked, power stays, category 2; the run-on is that of the switch', () => {
  for (const [id, category] of [
    ['limits-in-channels', '0'],
    ['limits-with-release', '2'],
  ] as const) {
    const { stops, axes, base } = looked.get(id)!;
    expect(base.model.limits.map(({ element, axis, end }) => `${element} ${axis} ${end}`)).toEqual([
      'S11 X lower',
      'S12 X upper',
    ]);
    const onto = stops.find(({ act }) => act.says === 'run onto S11 (X, lower end)')!;
    const x = onto.stops.find(({ motion }) => motion === 'X')!;
    expect(x.category).toBe(category);
    expect(axes[0]!.runOn).toBe(x.distance);
    expect(axes[0]!.after).toMatch(/^run onto S1[12]/);
    expect(axes[0]!.marks.map(({ name }) => name)).toContain('upper limit switch S12');
    expect(axes[0]!.marks.map(({ name }) => name)).toContain('home switch S13');
  }
});

test('derived: a slide on one limit switch cannot run onto the other; a switch on an axis that is not there is refused', () => {
  const { base, truth } = looked.get('limits-in-channels')!;
  expect(truth.rows.some(({ from }) => from.includes('on S11') && from.includes('on S12'))).toBe(false);
  expect(truth.rows.some(({ from }) => from.includes('on S12'))).toBe(true);
  const drawn = PATTERNS.find(({ id }) => id === 'limits-in-channels')!.make(MOTIONS);
  const s11 = drawn.elements.S11!;
  for (const axis of ['Q', 'spindle', '__proto__', 'constructor']) {
    const refused = analyseStop({
      ...drawn,
      elements: { ...drawn.elements, S11: { ...s11, settings: { ...s11.settings, axis } } },
    });
    expect(refused).toMatchObject({ ok: false, problem: { where: 'stop.elements.S11.settings.axis' } });
  }
  expect(base.model.homes).toEqual([{ element: 'S13', axis: 'X' }]);
});

test('derived: with eight axes and a spindle every pattern is drawn and read; without any axis too', () => {
  const many = Array.from({ length: 8 }, (_, n) => ({ ...MOTIONS[0]!, id: `A${n}`, name: `axis ${n}` }));
  for (const pattern of PATTERNS)
    for (const motions of [[...many, MOTIONS[1]!], [MOTIONS[1]!], []])
      expect(compileStop(pattern.make(motions)), pattern.id).toMatchObject({ ok: true });
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
  const strong = { X: { weight: { value: 1, from: '' }, 'brake-torque': { value: 2, from: '' } } };
  const verdict = (
    change: (circuit: StopCircuit) => StopCircuit,
    offers: Offers = {},
  ): string | undefined => {
    const drawn = PATTERNS.find(({ id }) => id === 'vertical-axis')!.make(MOTIONS);
    const found = analyseStop(change(drawn), offers);
    if (!found.ok) throw new Error(found.problem.message);
    const { verdict: is, sentence } = found.value.findings.find(({ id }) => id === 'stop.X.brake')!;
    return `${is}: ${sentence}`;
  };
  expect(verdict((same) => same, strong)).toMatch(/^fits/);
  const brake = (engage: string) => (circuit: StopCircuit) => ({
    ...circuit,
    elements: { ...circuit.elements, Y1: { ...circuit.elements.Y1!, settings: { engage } } },
  });
  // The power goes 520 ms after the button, its hold-up 100 ms later; on a power cut there are only those 100 ms.
  expect(verdict(brake('60 ms'), strong)).toMatch(/^fits/);
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
  expect(estimate.atMost).toBe('3');
  expect(estimate.level).toBeUndefined();
  expect(estimate.claim.join(' ')).toMatch(/common cause/);
  expect(sayEstimate(estimate).join(' ')).toMatch(
    /could be at most category 3.*Not claimable until .*annex F/,
  );
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
  const { mttfd, commonCause, level, atMost, claim } = answered.value.estimate;
  expect(commonCause).toBe(65);
  // Button 2000 years, unit 150, one contactor 26 000: alike in both channels.
  expect(mttfd).toBeCloseTo(1 / (1 / 2000 + 1 / 150 + 1 / 26_000), 6);
  expect(atMost).toBe('4');
  // The button is only compared, so the coverage is not that of category 4 and the chart gives nothing.
  expect(level).toBeUndefined();
  expect(claim).toEqual([expect.stringMatching(/at least 99 % of their own dangerous failures/)]);
});

test('published: ISO 13849-1:2015, 6.2 and Table 10 (from memory): one channel is category B, which ends at level b, or 1, which ends at c', () => {
  const { estimate } = looked.get('one-contactor')!;
  expect(estimate.atMost).toBe('B or 1');
  expect(sayEstimate(estimate).join(' ')).toMatch(/Category B ends at level b.*category 1 reaches level c/);
  const drawn = PATTERNS.find(({ id }) => id === 'one-contactor')!.make(MOTIONS);
  const levelOf = (settings: Readonly<Record<string, string>>) => {
    const found = analyseStop({ ...drawn, settings: { 'uses-a-year': '500', ...settings } });
    if (!found.ok) throw new Error(found.problem.message);
    return found.value.estimate.level;
  };
  expect(levelOf({})).toBe('b');
  expect(levelOf({ 'ccf-proven': 'yes' })).toBe('c');
});

test('published: ISO 13849-1:2015, 6.2.7, Table 10 and Annex F (from memory): nothing known of it, category 4 is not claimed', () => {
  const { estimate } = looked.get('safety-relay')!;
  expect(estimate.atMost).toBe('4');
  expect(estimate.level).toBeUndefined();
  const said = sayEstimate(estimate).join(' ');
  expect(said).not.toMatch(/resembles/);
  expect(said).toMatch(/at most category 4 .*Not claimable until .*99 %.*65 of 100 points.*is known/);
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
