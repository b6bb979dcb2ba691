/** What was looked through, in the words that screen, command line and test sheet share. */
import { formatNumber, formatQuantity } from '../../quantity/index.ts';
import type { Verdict } from '../../quantity/verdict.ts';
import { andList } from '../../quantity/words.ts';
import { ANY_STOP, type AxisDistances, type Mark } from './distances.ts';
import type { Estimate } from './estimate.ts';
import type { GuardDistance } from './guards.ts';
import type { FaultPair } from './pairs.ts';
import { length, sayStopping, seconds } from './say-stopping.ts';
import type { TruthRow } from './truth.ts';

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

/** 'after any stop', 'after “press S1”' */
export const afterWhat = (act: string): string => (act === ANY_STOP ? `after ${act}` : `after “${act}”`);

/** How far an axis runs on and after what, or what has to be known for it. */
export function sayRunOn({ runOn, drops, time, travel, after, needs }: AxisDistances): string {
  if (runOn === undefined) return `How far it runs on is not known: ${needs.join(', ')}.`;
  if (drops)
    return `It drops ${afterWhat(after)}: nothing holds it, and it ends at its hard stop. No place of a switch helps; give it a brake first.`;
  if (!Number.isFinite(runOn)) return `It never stands: nothing brakes it ${afterWhat(after)}.`;
  const far =
    travel !== undefined && runOn > travel
      ? ` That is more than its travel of ${length(travel)}: it runs into its hard stop.`
      : '';
  return `From the highest speed it runs on ${length(runOn)} in ${seconds(time!)}, ${after === ANY_STOP ? 'the longest of all its stops' : afterWhat(after)}.${far}`;
}

/** What a reserve is left over before, and what the lack of it means. */
const RESERVE: Readonly<Record<string, readonly [left: string, short: string]>> = {
  limit: ['between the end of its run-on and the hard stop', 'its run-on ends in the hard stop'],
  soft: ['before the limit switch acts', 'the limit switch acts first'],
  home: [
    'to the next limit switch, running past home at the speed of looking for it',
    'running past home at the speed of looking for it reaches a limit switch',
  ],
};

/** '3.2 mm left over before the limit switch acts', '1.1 mm too little: …', '' where it is not known. */
export function sayReserve({ id, reserve }: Mark): string {
  if (reserve === undefined) return '';
  const [left, short] = RESERVE[id.split('-')[0]!] ?? ['', ''];
  return reserve < 0 ? `${length(-reserve)} too little: ${short}` : `${length(reserve)} left over ${left}`;
}

/** Whether a place will do; undefined of a hard stop, of which nothing is asked. */
export function markVerdict(
  { runOn }: Pick<AxisDistances, 'runOn'>,
  { id, at, reserve }: Mark,
): Verdict | undefined {
  if (id.startsWith('hard')) return undefined;
  // What never stands ends at its hard stop, wherever its limit switch is.
  if (id.startsWith('limit') && runOn === Number.POSITIVE_INFINITY) return 'fails';
  if (at === undefined || reserve === undefined) return 'unknown';
  return reserve < 0 ? 'fails' : 'fits';
}

/** Why a place has its verdict. */
export function sayMargin(axis: Pick<AxisDistances, 'runOn'>, mark: Mark): string {
  const verdict = markVerdict(axis, mark);
  if (verdict === 'fails' && mark.reserve === undefined) return 'no place would do: it ends at the hard stop';
  if (verdict === 'unknown')
    return mark.at === undefined ? 'place not known' : 'not known how much is left over';
  return sayReserve(mark);
}

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

/** How far the circuit could go by its structure, a sentence each. */
export function sayEstimate(estimate: Estimate): readonly string[] {
  const { why, atMost, claim, mttfd, coverage, commonCause, level } = estimate;
  return [
    `${why} ${SAY_AT_MOST[atMost]}`,
    ...(claim.length > 0 ? [`Not claimable until ${andList(claim)}.`] : []),
    ...(mttfd === undefined
      ? []
      : [
          `Years to a dangerous failure of a channel: ${formatNumber(mttfd, 3)}${coverage === undefined ? '' : `; coverage ${formatQuantity(coverage, '%', { digits: 2 })}`}; points against a common cause: ${commonCause}.`,
        ]),
    level ? `The simplified chart would give level ${level}.` : 'The simplified chart gives no level.',
  ];
}

const SAY_AT_MOST: Readonly<Record<Estimate['atMost'], string>> = {
  none: 'No category of ISO 13849-1 can be named.',
  'B or 1':
    'By ISO 13849-1 that is category B or 1, in which one fault can take the stop away. Category B ends at level b, whatever its parts; category 1 reaches level c, and asks for parts and principles that are well tried.',
  '3': 'By its structure it could be at most category 3 of ISO 13849-1.',
  '4': 'By its structure it could be at most category 4 of ISO 13849-1.',
};
