/** What both samples answer to the work that is wanted of them. */
import { expect, test } from 'vitest';
import { assess } from '../engine/assess/index.ts';
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

test('frozen: verdicts of the mill’s work', () => {
  expect(verdicts('boatyard-mill')).toEqual({
    'thread-1': 'fails',
    'thread-2': 'fails',
    'thread-3': 'fails',
    'thread-4': 'fails',
    'thread-5': 'fails',
    'tap-1': 'fails',
    'tap-2': 'fails',
    'tap-3': 'fails',
    'cut-1': 'unknown',
    'cut-2': 'unknown',
  });
});
