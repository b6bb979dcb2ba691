/** What both samples answer to the work that is wanted of them. */
import { expect, test } from 'vitest';
import { assess, withOption } from '../engine/assess/index.ts';
import { type JudgedWork, judgeWork, workMachineOf } from '../engine/work/index.ts';
import { sample } from './read.fixture.ts';

const judged = new Map(
  ['carriage-works-lathe', 'boatyard-mill'].map((id): [string, readonly JudgedWork[]] => [
    id,
    judgeWork(workMachineOf(assess(sample(id)))),
  ]),
);
const verdicts = (id: string): Record<string, string> =>
  Object.fromEntries(judged.get(id)!.map(({ work, verdict }) => [work.id, verdict]));

test.each([...judged.keys()])('%s answers for five threads and three taps or more', (id) => {
  const all = judged.get(id)!;
  expect(all.filter(({ work }) => work.kind === 'thread').length).toBeGreaterThanOrEqual(5);
  expect(all.filter(({ work }) => work.kind === 'tap').length).toBeGreaterThanOrEqual(3);
  for (const { findings } of all)
    for (const { check, sentence } of findings) {
      expect(check).not.toMatch(/^setting-/);
      expect(sentence).not.toMatch(/NaN|undefined|\{/);
    }
});

test('one that each control cannot do comes with ways round, one is spoilt as the spindle runs on', () => {
  for (const [, all] of judged) {
    const cannot = all.filter(({ findings }) =>
      findings.some(({ link, verdict }) => link === 'control' && verdict === 'fails'),
    );
    expect(cannot.length).toBeGreaterThan(0);
    for (const { ways } of cannot) expect(ways.length).toBeGreaterThan(1);
    expect(
      all.some(
        ({ work, findings }) =>
          work.kind === 'tap' &&
          findings.some(({ link, verdict }) => link === 'hole' && verdict === 'fails') &&
          !findings.some(({ link, verdict }) => link === 'control' && verdict === 'fails'),
      ),
    ).toBe(true);
  }
});

test('frozen: verdicts of the lathe’s work', () => {
  expect(verdicts('carriage-works-lathe')).toEqual({
    'thread-1': 'fits',
    'thread-2': 'fits',
    'thread-3': 'unknown',
    'thread-4': 'fails',
    'thread-5': 'fits',
    'thread-6': 'fits',
    'tap-1': 'fits',
    'tap-2': 'fits',
    'tap-3': 'fails',
    'tap-4': 'unknown',
    'tap-5': 'fails',
    'cut-1': 'fails',
    'cut-2': 'fits',
    'cut-3': 'fails',
    'cut-4': 'tight',
  });
});

/** The link that gives way first, where something does. */
const first = (id: string, work: string): string => {
  const { findings } = judged.get(id)!.find((each) => each.work.id === work)!;
  return findings[0]!.check;
};

test('the mill’s work shows a different lesson each', () => {
  const lessons = {
    'thread-3': 'spindle-torque',
    'thread-4': 'threading-taper',
    'thread-5': 'threading-straight',
    'tap-1': 'spindle-torque',
    'tap-2': 'spindle-stop',
    'tap-3': 'rigid-tapping',
    'cut-2': 'thrust-z',
    'cut-3': 'thrust-y',
  };
  for (const [work, check] of Object.entries(lessons))
    expect.soft(first('boatyard-mill', work), work).toBe(check);
});

test('without a mark on its holder the mill has no permission for any tap or cut', () => {
  const refit = withOption(sample('boatyard-mill'), 'S', 'chuck', 's-chuck');
  for (const { work, findings } of judgeWork(workMachineOf(assess(refit)))) {
    const limit = findings.find(({ check }) => check === 'limit-chuck');
    expect.soft(limit, work.id).toMatchObject({ verdict: 'unknown', needs: ['S.chuck.topSpeed'] });
  }
});

test('frozen: verdicts of the mill’s work', () => {
  expect(verdicts('boatyard-mill')).toEqual({
    'thread-1': 'fails',
    'thread-2': 'fails',
    'thread-3': 'fails',
    'thread-4': 'fails',
    'thread-5': 'fails',
    // What the control cannot cut in step with the spindle it mills, three axes together.
    'thread-6': 'fits',
    'thread-7': 'fits',
    'tap-1': 'fails',
    'tap-2': 'fails',
    'tap-3': 'fails',
    'tap-4': 'fits',
    'tap-5': 'fits',
    'cut-1': 'fits',
    'cut-2': 'tight',
    'cut-3': 'fails',
  });
});
