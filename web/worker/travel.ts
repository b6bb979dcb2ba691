/** Snapshots on their way from the worker to the page: only what changed since the one before. */
import type { Snapshot, SnapshotChange } from './protocol.ts';

const EMPTY: Snapshot = {
  findings: [],
  notAsked: [],
  problems: [],
  questions: [],
  next: [],
  answers: {},
  counts: { fits: 0, tight: 0, fails: 0, unknown: 0 },
};

const LISTS = ['notAsked', 'problems', 'questions', 'next'] as const;

/** Keeps what was sent last. */
export class Sender {
  #last = EMPTY;

  change(now: Snapshot): SnapshotChange {
    const last = this.#last;
    this.#last = now;
    const places = new Map(last.findings.map((finding, at) => [finding, at]));
    return {
      answers: now.answers,
      counts: now.counts,
      findings: now.findings.map((finding) => places.get(finding) ?? finding),
      ...Object.fromEntries(
        LISTS.filter((list) => !sameList(last[list], now[list])).map((list) => [list, now[list]]),
      ),
    };
  }
}

/** Builds each snapshot from the one before; what did not change stays the same object. */
export class Receiver {
  #last = EMPTY;

  take(change: SnapshotChange): Snapshot {
    const last = this.#last;
    const findings = change.findings.map((each) => (typeof each === 'number' ? last.findings[each]! : each));
    this.#last = {
      answers: change.answers,
      counts: change.counts,
      findings: sameItems(findings, last.findings) ? last.findings : findings,
      notAsked: change.notAsked ?? last.notAsked,
      problems: change.problems ?? last.problems,
      questions: change.questions ?? last.questions,
      next: change.next ?? last.next,
    };
    return this.#last;
  }
}

const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, at) => item === b[at]);

/** Lists that say the same; they are short. */
const sameList = (a: readonly object[], b: readonly object[]): boolean =>
  a === b || (a.length === b.length && a.every((item, at) => sameEntries(item, b[at]!)));

function sameEntries(a: object, b: object): boolean {
  if (a === b) return true;
  const [these, those] = [Object.entries(a), Object.entries(b)];
  return (
    these.length === those.length &&
    these.every(([key, value], at) => those[at]![0] === key && same(value, those[at]![1]))
  );
}

const same = (a: unknown, b: unknown): boolean =>
  a === b || (Array.isArray(a) && Array.isArray(b) && sameItems(a, b));
