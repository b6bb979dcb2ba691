/** Single faults in the groups that people are shown, worst first. */
import type { FaultReport } from './analyse.ts';
import type { Verdict } from './judge.ts';

/** 'rests': dangerous, were it to happen; how a device is made lets it be left out, if the device is made so. */
export type FaultGroup = Verdict | 'rests';

export const FAULT_GROUPS: readonly { readonly group: FaultGroup; readonly title: string }[] = [
  { group: 'dangerous', title: 'Dangerous' },
  { group: 'rests', title: 'Rests on how the device is made' },
  { group: 'unnoticed', title: 'Still stops, and nobody is told' },
  { group: 'noticed', title: 'Still stops, and does not start again' },
  { group: 'stops', title: 'Stops it, or keeps it from starting' },
];

export const groupOf = ({ fault, judged }: Pick<FaultReport, 'fault' | 'judged'>): FaultGroup =>
  judged.verdict === 'dangerous' && fault.mayExclude ? 'rests' : judged.verdict;
