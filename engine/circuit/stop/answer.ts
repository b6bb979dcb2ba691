/** The answer to the whole circuit in a sentence: what one single fault can do, and which is the worst. */
import type { Verdict } from '../../quantity/verdict.ts';
import { andList } from '../../quantity/words.ts';
import type { StopAnalysis } from './analyse.ts';

export interface StopAnswer {
  readonly verdict: Verdict;
  readonly sentence: string;
  /** The worst single fault, to be shown behind `sentence`; absent where none is dangerous. */
  readonly worst?: {
    /** What stands before its name. */
    readonly lead: string;
    /** Id of the fault, which is its name as well: 'K1 welded'. */
    readonly fault: string;
  };
  /** What fails without any fault, to be shown last. */
  readonly also?: string;
}

type Looked = Pick<StopAnalysis, 'findings' | 'faults'>;

/** Where a switch or a guard must stand is a question of its own. */
const OF_PLACES = /\.(switches|guard)$/;

export function stopAnswer({ findings, faults }: Looked): StopAnswer {
  const [runs] = findings;
  // Without something that runs no fault was tried.
  if (faults.length === 0)
    return { verdict: runs?.verdict ?? 'unknown', sentence: runs?.sentence ?? 'Nothing was looked through.' };
  const dangerous = faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && !fault.mayExclude);
  const resting = faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && fault.mayExclude);
  const silent = faults.filter(({ judged }) => judged.verdict === 'unnoticed').length;
  const broken = findings.filter(
    ({ id, verdict }) => verdict === 'fails' && id !== 'faults' && !OF_PLACES.test(id),
  );
  const also =
    broken.length > 0
      ? { also: `Even with no fault this fails: ${broken.map(({ title }) => title).join(' ')}` }
      : {};
  const [worst] = dangerous;
  if (worst)
    return {
      verdict: 'fails',
      sentence: `${dangerous.length} of ${faults.length} single faults ${dangerous.length === 1 ? 'leaves' : 'leave'} the machine able to move when it should stand still.`,
      worst: { lead: 'The worst:', fault: worst.fault.id },
      ...also,
    };
  const rest =
    resting.length > 0
      ? ` ${resting.length} more ${resting.length === 1 ? 'rests' : 'rest'} on how a device is made: ${andList(resting.map(({ fault }) => fault.id))}.`
      : '';
  const unseen =
    silent > 0
      ? ` With ${silent} of them nobody is told, and the next fault can end stopping.`
      : ' Each of them is noticed.';
  return {
    verdict: broken.length > 0 ? 'fails' : silent > 0 ? 'tight' : 'fits',
    sentence: `None of the ${faults.length - resting.length} single faults that were tried leaves the machine able to move when it should stand still.${unseen}${rest}`,
    ...also,
  };
}

/** What stands in its place while there is no circuit. */
export const NO_CIRCUIT = 'No stop circuit is drawn yet.';

/** The whole answer as one text. */
export const sayStopAnswer = ({ sentence, worst, also }: StopAnswer): string =>
  [sentence, worst ? `${worst.lead} ${worst.fault}.` : '', also ?? ''].filter(Boolean).join(' ');
