/** Single faults in the groups that people are shown, worst first. */
import type { Verdict as Colour } from '../../quantity/verdict.ts';
import type { FaultReport } from './analyse.ts';
import type { Verdict } from './judge.ts';

/**
 * 'rests': dangerous, were it to happen; how a device is made lets it be left out, if the device is made so. 'adds-up': it
 * still stops and nobody is told, and one more fault ends stopping.
 */
export type FaultGroup = Verdict | 'rests' | 'adds-up';

export const FAULT_GROUPS: readonly {
  readonly group: FaultGroup;
  readonly title: string;
  readonly verdict: Colour;
}[] = [
  { group: 'dangerous', title: 'Dangerous', verdict: 'fails' },
  { group: 'adds-up', title: 'Nobody is told, and the next fault ends stopping', verdict: 'fails' },
  { group: 'rests', title: 'Rests on how the device is made', verdict: 'tight' },
  {
    group: 'unnoticed',
    title: 'Nobody is told; with any one fault more it still stops',
    verdict: 'tight',
  },
  { group: 'noticed', title: 'Still stops, and does not start again', verdict: 'fits' },
  { group: 'stops', title: 'Stops it, or keeps it from starting', verdict: 'fits' },
];

export const groupOf = ({
  fault,
  judged,
  next,
}: Pick<FaultReport, 'fault' | 'judged' | 'next'>): FaultGroup =>
  judged.verdict === 'dangerous' && fault.mayExclude
    ? 'rests'
    : judged.verdict === 'unnoticed' && next
      ? 'adds-up'
      : judged.verdict;
