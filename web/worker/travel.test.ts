/** Snapshots travel as changes and arrive whole. */

import { expect, test } from 'vitest';
import { answer, assess, next } from '../../engine/assess/index.ts';
import { setPath } from '../../engine/assess/set-policy.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import { applyEdit } from '../../engine/refit/edit.ts';
import { sample } from '../../samples/read.fixture.ts';
import type { Snapshot } from './protocol.ts';
import { Receiver, Sender } from './travel.ts';

const snapshot = (assessment: ReturnType<typeof assess>): Snapshot => ({
  findings: assessment.findings,
  notAsked: assessment.notAsked,
  problems: assessment.problems,
  questions: assessment.questions,
  next: next(assessment, 8),
  answers: { all: answer(assessment.findings) },
  counts: countVerdicts(assessment.findings),
});

test('derived: after each edit the page has what the worker has, and what did not change is the same object', () => {
  const base = assess(sample('carriage-works-lathe'));
  const [sender, receiver] = [new Sender(), new Receiver()];
  const send = (now: Snapshot): Snapshot => receiver.take(structuredClone(sender.change(now)));
  let before = send(snapshot(base));
  expect(before).toEqual(snapshot(base));
  for (const text of ['2 m/min', '5 m/min', '1 m/min', 'unknown']) {
    const set = setPath(base.refit, 'X.duty.rapid', text, {});
    const edited = applyEdit(base.refit, { changes: set.ok ? set.value.changes : [] });
    const now = snapshot(assess(edited.ok ? edited.value : base.refit, { previous: base }));
    const got = send(now);
    expect(got).toEqual(now);
    const kept = got.findings.filter((finding) => before.findings.includes(finding)).length;
    expect(kept).toBeGreaterThan(got.findings.length / 3);
    expect(kept).toBeLessThan(got.findings.length);
    before = got;
  }
  const again = send(snapshot(base));
  expect(send(snapshot(base)).findings).toBe(again.findings);
});
