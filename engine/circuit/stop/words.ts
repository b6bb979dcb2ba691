/** What was looked through, in the words that screen, command line and test sheet share. */
import { formatQuantity } from '../../quantity/index.ts';
import type { AxisDistances, Mark } from './distances.ts';
import type { Estimate } from './estimate.ts';
import type { GuardDistance } from './guards.ts';
import type { Verdict } from './judge.ts';
import type { FaultPair } from './pairs.ts';
import { length, sayStopping, seconds } from './say-stopping.ts';
import type { TruthRow } from './truth.ts';

/** Kinds of outcome of a fault, worst first. */
export const FAULT_GROUPS: readonly { readonly verdict: Verdict; readonly title: string }[] = [
  { verdict: 'dangerous', title: 'Dangerous' },
  { verdict: 'unnoticed', title: 'Still stops, and nobody is told' },
  { verdict: 'noticed', title: 'Still stops, and does not start again' },
  { verdict: 'stops', title: 'Stops it, or keeps it from starting' },
];

/** What one act in one state does: 'X: stop category 0: …', 'X starts, and nobody asked', 'K1 chatters'. */
export const sayRow = ({ stops, starts, unasked, restless }: TruthRow): readonly string[] => [
  ...stops.map(sayStopping),
  ...starts.map((id) => `${id} starts${unasked ? ', and nobody asked' : ''}`),
  ...(restless.length > 0 ? [`${restless.join(', ')} chatters`] : []),
];

/** 'K1 welded, then K2 welded: X, after “press S1”' */
export function sayPair({ first, second, judged }: FaultPair): string {
  const [happening] = judged.happenings;
  return `${first.id}, then ${second.id}: ${happening?.motions.join(', ') ?? ''}, after “${happening?.after ?? ''}”`;
}

/** How far an axis runs on and after what, or what has to be known for it. */
export function sayRunOn({ runOn, time, after, needs }: AxisDistances): string {
  if (runOn === undefined) return `How far it runs on is not known: ${needs.join(', ')}.`;
  if (!Number.isFinite(runOn)) return `It never stands: nothing brakes it after “${after}”.`;
  return `From the highest speed it runs on ${length(runOn)} in ${seconds(time!)}, ${after === 'any stop' ? 'the longest of all its stops' : `after “${after}”`}.`;
}

/** '3.2 mm left over', '1.1 mm too little', '' where it is not known. */
export const sayReserve = ({ reserve }: Mark): string =>
  reserve === undefined
    ? ''
    : reserve < 0
      ? `${length(-reserve)} too little`
      : `${length(reserve)} left over`;

/** 'at 4 mm', 'must stand at 12 mm or further in'. */
export function sayPlace({ id, at, needed }: Mark): string {
  if (at !== undefined) return `at ${length(at)}`;
  if (needed === undefined) return 'not known';
  return `not known; ${length(needed)} or further ${id.endsWith('high') ? 'down' : 'up'} would do`;
}

export function sayGuard({ time, needed, says }: GuardDistance): string {
  return time !== undefined && needed !== undefined
    ? `It stands after ${seconds(time)}: without a lock the guard must be ${formatQuantity(needed, 'm', { digits: 3 })} away (ISO 13855). ${says}`
    : says;
}

export const ESTIMATE_TITLE = 'What it resembles (an indication, no certificate)';

/** What the circuit resembles, a sentence each. */
export function sayEstimate(estimate: Estimate): readonly string[] {
  const { why, resembles, mttfd, coverage, commonCause, level } = estimate;
  return [
    `${why} That resembles category ${resembles} of ISO 13849-1.`,
    ...(mttfd === undefined
      ? []
      : [
          `Years to a dangerous failure of a channel: ${mttfd.toPrecision(3)}${coverage === undefined ? '' : `; coverage ${(100 * coverage).toFixed(0)} %`}; points against a common cause: ${commonCause}.`,
        ]),
    level ? `The simplified chart would give level ${level}.` : 'The simplified chart gives no level.',
  ];
}
