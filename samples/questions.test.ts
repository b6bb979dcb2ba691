/** What a proposal asks of the samples with their wiring taken away. */
import { describe, expect, test } from 'vitest';
import {
  type AskGroup,
  exampleOf,
  STAGES,
  settledOf,
  specAt,
  stateAll,
} from '../engine/circuit/whole/index.ts';
import { type AnswerPlace, checkWiring, proposeWiring } from '../engine/circuit/wiring/index.ts';
import { askedOfWiring } from '../engine/control/index.ts';
import { applyEdit, type Change, type Refit, type Wiring } from '../engine/refit/index.ts';
import { sample } from './read.fixture.ts';

const bare = (id: 'carriage-works-lathe' | 'boatyard-mill'): Refit => ({
  ...sample(id),
  wiring: { devices: {}, wires: {}, cables: {}, settings: {} },
});

const propose = (refit: Refit) => proposeWiring(refit, askedOfWiring(refit));

function record(refit: Refit, changes: readonly Change[]): Refit {
  const done = applyEdit(refit, { changes: [...changes] });
  if (!done.ok) throw new Error(done.problem.message);
  return done.value;
}

/** One answer for all members of a group. */
function answerAll(refit: Refit, { facts, id }: AskGroup, wiring: Wiring): Refit {
  const answers = facts.flatMap(({ questions }) =>
    questions.map(({ place }): [AnswerPlace, string] => {
      const spec = specAt(place, wiring)!;
      return [
        place,
        spec.kind === 'choice' ? (spec.options.find((each) => each !== 'none') ?? 'none') : exampleOf(spec),
      ];
    }),
  );
  const made = stateAll(refit, answers, wiring);
  if (!made.ok) throw new Error(`${id}: ${made.problem.message}`);
  return record(refit, made.value);
}

describe.each([
  ['carriage-works-lathe', 24],
  ['boatyard-mill', 15],
] as const)('%s, bare', (id, most) => {
  test(`derived: at most ${most} groups, in the order of the job, each with its questions once`, () => {
    const refit = bare(id);
    const settled = settledOf(propose(refit), refit);
    expect(settled.groups.length).toBeLessThanOrEqual(most);
    const stages = settled.groups.map(({ stage }) => STAGES.indexOf(stage));
    expect(stages).toEqual([...stages].sort());
    const inGroups = settled.groups.flatMap(({ facts }) =>
      facts.flatMap(({ questions }) => questions.map((each) => each.id)),
    );
    expect([...inGroups].sort()).toEqual(settled.open.map(({ question }) => question.id).sort());
    expect(new Set(settled.groups.map((each) => each.id)).size).toBe(settled.groups.length);
    expect(settled.answered).toBe(0);
  });

  test('derived: nothing fails by what is taken as usual, and none of it stands in the stop circuit or feeds something', () => {
    const refit = bare(id);
    const proposal = propose(refit);
    const { taken, findings, everything, wiring } = settledOf(proposal, refit);
    const failing = (all: typeof findings) =>
      all.filter(({ verdict }) => verdict === 'fails').map((each) => each.id);
    expect(failing(proposal.findings)).toEqual(expect.arrayContaining(failing(findings)));
    for (const { question, value } of taken) {
      const { place } = question;
      expect(place.setting).not.toMatch(/main-|^ac-|suppressor|clamp|mains|primary|output-level|form/);
      if (place.of === 'device' && Object.hasOwn(refit.stop!.elements, place.id))
        expect(place.setting).toMatch(/^(input-current|enable-current|termination)$/);
      if (place.of === 'device')
        expect(wiring.devices[place.id]!.kind).not.toMatch(/supply|bus|breaker|fuse/);
      expect(value).not.toBe('');
    }
    // What is shown is what is recorded.
    const kept = record(refit, everything);
    expect(kept.wiring).toEqual(wiring);
    expect(checkWiring(kept.wiring, kept)).toEqual(findings);
    expect(settledOf(propose(kept), kept).taken).toEqual([]);
  }, 60_000);

  test('derived: a group answered answers all its members; no question comes back, and the count goes up to all', () => {
    let refit = bare(id);
    const answered = new Set<string>();
    let before = 0;
    for (let round = 0; ; round++) {
      expect(round).toBeLessThan(7);
      const proposal = propose(refit);
      const { open, groups, wiring, changes, answered: count } = settledOf(proposal, refit);
      expect(
        open.filter(({ question }) => answered.has(question.id)).map((each) => each.question.id),
      ).toEqual([]);
      expect(count).toBeGreaterThanOrEqual(before);
      before = count;
      if (groups.length === 0) {
        expect(count).toBeGreaterThanOrEqual(14);
        break;
      }
      // Recorded in pieces, as a person does.
      refit = record(refit, changes);
      for (const group of groups) {
        refit = answerAll(refit, group, wiring);
        for (const { questions } of group.facts) for (const each of questions) answered.add(each.id);
      }
    }
  }, 180_000);
});

test('derived: one answer of a group alone leaves the others asked, and what is answered by itself is not asked again', () => {
  const refit = bare('carriage-works-lathe');
  const { groups, wiring } = settledOf(propose(refit), refit);
  const valves = groups.find(
    ({ facts, members }) => facts[0]!.setting === 'coil-current' && members.length > 3,
  )!;
  const [first, ...rest] = valves.facts[0]!.questions;
  const made = stateAll(refit, [[first!.place, '0.3 A']], wiring);
  if (!made.ok) throw new Error(made.problem.message);
  const now = record(refit, made.value);
  const left = settledOf(propose(now), now).groups.flatMap(({ facts }) =>
    facts.flatMap(({ questions }) => questions.map(({ id }) => id)),
  );
  expect(left).not.toContain(first!.id);
  expect(left).toEqual(expect.arrayContaining(rest.map(({ id }) => id)));
  // All or none: one that cannot be read stops the whole.
  expect(
    stateAll(
      refit,
      [
        [first!.place, '0.3 A'],
        [rest[0]!.place, '5 kg'],
      ],
      wiring,
    ).ok,
  ).toBe(false);
}, 60_000);
