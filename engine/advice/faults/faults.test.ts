import { describe, expect, test } from 'vitest';
import { type Diagnosis, dangerIn, diagnose, findSymptoms, SKIP, SYMPTOMS, type Symptom } from './index.ts';
import { symptom } from './types.ts';

const at = (of: Symptom, answers: Readonly<Record<string, string>>): Diagnosis => {
  const found = diagnose(of, answers);
  if (!found.ok) throw new Error(found.problem.message);
  return found.value;
};

/** Every way through the proposed tests; `skips` tests at most are passed over. */
function* paths(
  of: Symptom,
  answers: Readonly<Record<string, string>> = {},
  skips = 1,
): Generator<Diagnosis> {
  const now = at(of, answers);
  if (!now.next) {
    yield now;
    return;
  }
  for (const answer of now.next.possible) yield* paths(of, { ...answers, [now.next.id]: answer }, skips);
  if (skips > 0) yield* paths(of, { ...answers, [now.next.id]: SKIP }, skips - 1);
}

describe.each(SYMPTOMS.map((each) => [each.id, each] as const))('%s', (_, of) => {
  test('derived: every path ends in a cause or in whom to ask, in as many tests as there are at most', () => {
    let count = 0;
    const reached = new Set<string>();
    for (const { end, remaining, asked } of paths(of)) {
      count++;
      expect(end).toBeDefined();
      expect(asked.length).toBeLessThanOrEqual(Object.keys(of.tests).length);
      if (end!.is === 'cause') reached.add(remaining[0]!.id);
      else expect(end!.sentence).toContain(`ask ${of.ask}`);
    }
    expect(count).toBeGreaterThan(5);
    // Each cause is the end of some path: none is on the list that no test could ever single out.
    expect([...reached].sort(), of.id).toEqual(Object.keys(of.causes).sort());
  });

  test('derived: each test can tell something, each answer fits a cause, each cause is touched by a test', () => {
    const touched = new Set<string>();
    for (const [id, { answers, trouble, how, question }] of Object.entries(of.tests)) {
      expect(Object.keys(answers).length, id).toBeGreaterThan(1);
      expect([1, 2, 3, 4, 5]).toContain(trouble);
      expect(how, id).toMatch(/[.]$/);
      expect(question, id).toMatch(/[?]$/);
      for (const [answer, { fits }] of Object.entries(answers)) {
        expect(fits.length, `${id} ${answer}`).toBeGreaterThan(0);
        expect(answer).not.toBe(SKIP);
        for (const cause of fits) {
          expect(of.causes, `${id} ${answer}`).toHaveProperty(cause);
          touched.add(cause);
        }
      }
    }
    expect([...touched].sort()).toEqual(Object.keys(of.causes).sort());
  });

  test('derived: a cause that answers truly is never ruled out', () => {
    for (const cause of Object.keys(of.causes)) {
      const answers: Record<string, string> = {};
      for (let now = at(of, answers); now.next; now = at(of, answers)) {
        const { id, test: asked } = now.next;
        const entries = Object.entries(asked.answers);
        answers[id] = (entries.find(([, { fits }]) => fits.includes(cause)) ?? entries[0]!)[0];
        expect(
          at(of, answers).remaining.map((each) => each.id),
          `${cause} after ${id}`,
        ).toContain(cause);
      }
    }
  });

  test('what can hurt carries its caution', () => {
    for (const [id, { how, tool, caution }] of Object.entries(of.tests))
      if (
        /bus empty|Locked off|locked off|electrician|insulation test|current limit|Drives off:/i.test(
          `${how} ${tool}`,
        )
      )
        expect(caution ?? how, id).toMatch(/.{20}/);
  });
});

const coins = symptom({
  id: 'coins',
  title: 'coins',
  about: '',
  words: '',
  ask: 'a friend with scales',
  causes: {
    a: { says: 'A', is: 'dead', often: 4, mend: 'a.' },
    b: { says: 'B', is: 'dead', often: 2, mend: 'b.' },
    c: { says: 'C', is: 'asleep', often: 2, mend: 'c.' },
  },
  tests: {
    cheap: {
      question: 'q?',
      how: 'h.',
      tool: 't',
      trouble: 1,
      answers: { yes: { says: 'y', fits: ['a'] }, no: { says: 'n', fits: ['b', 'c'] } },
    },
    dear: {
      question: 'q?',
      how: 'h.',
      tool: 't',
      trouble: 4,
      answers: { b: { says: 'b', fits: ['b'] }, c: { says: 'c', fits: ['c'] } },
    },
  },
});

describe('derived: narrowing', () => {
  test('shares are the weights, the test with most bits for its trouble comes first', () => {
    const start = at(coins, {});
    expect(start.remaining.map(({ id, share }) => [id, share])).toEqual([
      ['a', 0.5],
      ['b', 0.25],
      ['c', 0.25],
    ]);
    expect(start.next).toMatchObject({ id: 'cheap', possible: ['yes', 'no'] });
    // One even question tells one bit.
    expect(start.next!.bits).toBeCloseTo(1, 12);
    expect(at(coins, { cheap: 'no' }).next!.id).toBe('dear');
    expect(at(coins, { cheap: 'no', dear: 'c' }).end).toEqual({ is: 'cause', sentence: 'C. c.' });
  });

  test('a test passed over is not proposed again; answers that contradict end in whom to ask', () => {
    expect(at(coins, { cheap: SKIP }).next!.id).toBe('dear');
    expect(at(coins, { cheap: SKIP, dear: SKIP }).end!.sentence).toContain('ask a friend with scales');
    const flat = symptom({
      ...coins,
      tests: {
        ...coins.tests,
        again: {
          ...coins.tests.cheap!,
          answers: { yes: { says: 'y', fits: ['a', 'b'] }, no: { says: 'n', fits: ['c'] } },
        },
      },
    });
    expect(at(flat, { cheap: 'yes', again: 'no' })).toMatchObject({ remaining: [], end: { is: 'ask' } });
  });

  test('a test or an answer that is not there is refused with the nearest', () => {
    for (const [answers, says] of [
      [{ chep: 'yes' }, 'Did you mean “cheap”?'],
      [{ cheap: 'yess' }, 'Did you mean “yes”?'],
      [{ __proto__x: 'yes' }, 'There is no test'],
      [{ cheap: 'constructor' }, 'There is no answer'],
      [{ ['x'.repeat(10_000)]: 'y' }, 'There is no test'],
    ] as const) {
      const found = diagnose(coins, answers);
      expect(found.ok ? '' : found.problem.message).toContain(says);
      expect(found.ok ? 0 : found.problem.message.length).toBeLessThan(400);
    }
  });
});

describe('derived: symptoms by words', () => {
  test.each([
    ['it falls', 'axis-drops'],
    ['falling', 'axis-drops'],
    ['Z dropped!', 'axis-drops'],
    ['the head sags', 'axis-drops'],
    ['noise', 'hums'],
    ['smoke', 'trips'],
    ['the fuse blows', 'trips'],
    ['motor gets hot', 'hums'],
    ['black screen', 'screen-dark'],
    ['lost steps', 'loses-position'],
  ])('%s', (typed, id) => {
    expect(findSymptoms(SYMPTOMS, typed).map((each) => each.id)).toContain(id);
  });

  test('what falls is one symptom; words that say nothing and hostile ones find none', () => {
    expect(findSymptoms(SYMPTOMS, 'it falls').map(({ id }) => id)).toEqual(['axis-drops']);
    for (const typed of ['', 'it is the', 'qwertz', '__proto__', '%%%', 'x'.repeat(1_000_000)])
      expect(findSymptoms(SYMPTOMS, typed), typed.slice(0, 20)).toEqual([]);
  });

  test('each symptom is found by its own title, and burning comes with what to do first', () => {
    for (const of of SYMPTOMS) expect(findSymptoms(SYMPTOMS, of.title)[0]!.id, of.title).toBe(of.id);
    expect(dangerIn('smoke comes out')).toMatch(/^Main switch off/);
    expect(dangerIn('it falls')).toBeUndefined();
  });

  test('an axis that drops is propped before any test, and every test says so', () => {
    const drops = SYMPTOMS.find(({ id }) => id === 'axis-drops')!;
    expect(drops.about).toMatch(/prop it.*nobody beneath/);
    for (const [id, { caution }] of Object.entries(drops.tests))
      expect(caution, id).toMatch(/nobody beneath/);
  });
});
