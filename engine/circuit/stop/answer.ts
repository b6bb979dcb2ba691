/** The answer to the whole circuit in a sentence: what one single fault can do, and which is the worst. */
import { type Verdict, worstVerdict } from '../../quantity/verdict.ts';
import { andList } from '../../quantity/words.ts';
import type { StopAnalysis } from './analyse.ts';
import { groupOf } from './fault-groups.ts';

export interface StopAnswer {
  /** The worst of the faults and of all findings; what is not known stands before what is tight. */
  readonly verdict: Verdict;
  readonly sentence: string;
  /** The worst single fault, to be shown behind `sentence`; absent where none is dangerous. */
  readonly worst?: {
    /** What stands before its name. */
    readonly lead: string;
    /** Id of the fault, which is its name as well: 'K1 welded'. */
    readonly fault: string;
  };
  /** What fails without any fault, and what is not known, to be shown last. */
  readonly also?: string;
  /** What to do before the power goes, to be shown in any case. */
  readonly caution?: string;
}

/** Findings that take the ground from under all others while they fail. */
const GROUNDS = ['stop.rest', 'stop.races'];

type Looked = Pick<StopAnalysis, 'findings' | 'faults'>;

export function stopAnswer({ findings, faults }: Looked): StopAnswer {
  const runs = findings.find(({ id }) => id === 'stop.runs') ?? findings[0];
  const first = (findings.find(({ id }) => id === 'stop.power') ?? runs)?.caution;
  const caution = first === undefined ? {} : { caution: first };
  const unsettled = findings.find(({ id, verdict }) => GROUNDS.includes(id) && verdict === 'fails');
  if (unsettled)
    return {
      verdict: 'fails',
      sentence: unsettled.sentence,
      ...(unsettled.remedy ? { also: unsettled.remedy } : {}),
      ...caution,
    };
  // Without something that runs no fault was tried.
  if (faults.length === 0)
    return {
      verdict: runs?.verdict ?? 'unknown',
      sentence: runs?.sentence ?? 'Nothing was looked through.',
      ...caution,
    };
  const of = (group: ReturnType<typeof groupOf>) => faults.filter((each) => groupOf(each) === group);
  const [dangerous, resting, ending] = [of('dangerous'), of('rests'), of('adds-up')];
  const silent = of('unnoticed').length + ending.length;
  const others = findings.filter(({ id }) => id !== 'stop.faults' && id !== 'stop.unnoticed');
  const titles = (verdict: Verdict): readonly string[] =>
    others.filter((each) => each.verdict === verdict).map(({ title }) => title);
  const also = [
    count(
      titles('fails'),
      'Even with no fault this fails:',
      (n) => `Even with no fault ${n} questions fail; the first:`,
    ),
    count(titles('unknown'), 'Not known yet:', (n) => `${n} questions cannot be answered yet; the first:`),
  ]
    .filter(Boolean)
    .join(' ');
  const verdict = worstVerdict([
    ...others,
    { verdict: dangerous.length > 0 || ending.length > 0 ? 'fails' : silent > 0 ? 'tight' : 'fits' },
  ])!;
  const [worst] = dangerous;
  if (worst)
    return {
      verdict,
      sentence: `${dangerous.length} of ${faults.length} single faults ${dangerous.length === 1 ? 'leaves' : 'leave'} the machine able to move when it should stand still.${ending.length > 0 ? ` With ${ending.length} more nobody is told, and the next fault ends stopping.` : ''}`,
      worst: { lead: 'The worst:', fault: worst.fault.id },
      ...(also ? { also } : {}),
      ...caution,
    };
  const rest =
    resting.length > 0
      ? ` ${resting.length} more ${resting.length === 1 ? 'rests' : 'rest'} on how a device is made: ${andList(resting.map(({ fault }) => fault.id))}.`
      : '';
  const unseen =
    ending.length > 0
      ? ` With ${silent} of them nobody is told, and with ${ending.length} of these the next fault ends stopping.`
      : silent > 0
        ? ` With ${silent} of them nobody is told.`
        : ' Each of them is noticed.';
  return {
    verdict,
    sentence: `None of the ${faults.length - resting.length} single faults that were tried leaves the machine able to move when it should stand still.${unseen}${rest}`,
    ...(ending[0] ? { worst: { lead: 'The worst of them:', fault: ending[0].fault.id } } : {}),
    ...(also ? { also } : {}),
    ...caution,
  };
}

/** The first of them, and how many there are where there is more than one. */
function count(titles: readonly string[], one: string, many: (n: number) => string): string {
  return titles.length === 0 ? '' : `${titles.length === 1 ? one : many(titles.length)} ${titles[0]}`;
}

/** What stands in its place while there is no circuit. */
export const NO_CIRCUIT = 'No stop circuit is drawn yet.';

/** The whole answer as one text. */
export const sayStopAnswer = ({ sentence, worst, also, caution }: StopAnswer): string =>
  [sentence, worst ? `${worst.lead} ${worst.fault}.` : '', also ?? '', caution ?? '']
    .filter(Boolean)
    .join(' ');
