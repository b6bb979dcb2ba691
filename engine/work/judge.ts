/** Every piece of work of a refit, judged on its machine. */
import type { Verdict } from '../quantity/verdict.ts';
import type { Refit, Work } from '../refit/types.ts';
import { type CutDetail, judgeCut } from './cuts.ts';
import { inOrder, LINKS, sayChance, told, type WorkFinding, worstOf } from './finding.ts';
import type { WorkMachine } from './machine.ts';
import type { MilledDetail } from './milled.ts';
import { judgeTap, type TapDetail } from './taps.ts';
import { judgeThread, type ThreadDetail } from './threads.ts';
import type { WayRound } from './ways-round.ts';

export interface JudgedWork {
  readonly work: Work;
  readonly verdict: Verdict;
  /** Worst first. */
  readonly findings: readonly WorkFinding[];
  /** One sentence for a list: what is wrong first, or that it fits and what gives way first. */
  readonly summary: string;
  readonly detail: CutDetail | ThreadDetail | MilledDetail | TapDetail | null;
  readonly ways: readonly WayRound[];
  /** Draws in all, and the share in which nothing fails; absent until it is drawn, or where nothing is in doubt. */
  readonly draws?: { readonly lanes: number; readonly chance: number };
}

export function judgeOne(machine: WorkMachine, work: Work): JudgedWork {
  const { findings, detail, ways } = parts(machine, work);
  const ordered = inOrder(findings);
  const verdict = worstOf(ordered);
  return { work, verdict, findings: ordered, summary: summaryOf(ordered, detail), detail, ways };
}

function parts(
  machine: WorkMachine,
  work: Work,
): Pick<JudgedWork, 'findings' | 'detail'> & { readonly ways: readonly WayRound[] } {
  switch (work.kind) {
    case 'thread':
      return judgeThread(machine, work);
    case 'tap':
      return judgeTap(machine, work);
    case 'cut':
      return { ...judgeCut(machine, work), ways: [] };
    default:
      return {
        findings: [
          told((work as Work).id, {
            check: 'kind',
            link: 'settings',
            title: 'Kind of work',
            verdict: 'fails',
            sentence: 'A piece of work is a cut, a thread or a tap.',
          }),
        ],
        detail: null,
        ways: [],
      };
  }
}

/** `chance`: that nothing fails, where it was drawn. */
export function summaryOf(
  findings: readonly WorkFinding[],
  detail: JudgedWork['detail'],
  verdict: Verdict = worstOf(findings),
  chance = 1,
): string {
  const worst = findings[0];
  if (!worst) return 'Nothing was asked.';
  if (worst.verdict === 'tight') return [worst.sentence, sayChance(worst)].filter(Boolean).join(' ');
  if (worst.verdict !== 'fits') return worst.sentence;
  if (verdict === 'tight')
    return `Each link fits by itself, but that all of them do has a chance of only ${(100 * chance).toFixed(0)} %.`;
  if (detail?.kind === 'cut' && detail.links[0])
    return `It can be done; the ${detail.links[0].name} gives way first.`;
  const speed = findings.find(({ check }) => check === 'speed');
  return speed ? speed.sentence : worst.sentence;
}

/** In the order of the refit. */
export const judgeWork = (machine: WorkMachine): readonly JudgedWork[] =>
  Object.values(machine.refit.work ?? ({} as Refit['work'])).map((work) => judgeOne(machine, work));

export const sayLink = (finding: WorkFinding): string => LINKS[finding.link];
