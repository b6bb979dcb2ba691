/** Ratio and band checks against one chain. */
import type { BandCheck, RatioCheck, Sentences } from '../checks/check.ts';
import { policy, type Ref } from '../checks/refs.ts';
import { preferred } from '../quantity/index.ts';
import { compare } from './compare.ts';
import type { Amount, Finding } from './finding.ts';
import { base, type Frame, type Judged, stopped } from './frame.ts';
import { resolve, type Scope } from './resolve.ts';
import { marginText } from './say-margin.ts';
import { type Known, restsOf, uncertainty, union, type Value } from './value.ts';
import { sayBoth } from './words.ts';

const resolveAll = (scope: Scope, refs: readonly Ref[]): Value[] => refs.map((ref) => resolve(scope, ref));

const amount = (value: Known, unit: string): Amount => ({
  value: value.value,
  doubt: uncertainty(value.doubt),
  unit,
});

/** Puts numbers into a sentence. */
function fill(sentence: string, asked: Amount, there: Amount, margin: number | null, which: string): string {
  const [demand, capacity] = sayBoth(asked, there);
  return sentence
    .replaceAll('{which}', which)
    .replaceAll('{asked}', demand)
    .replaceAll('{there}', capacity)
    .replaceAll('{margin}', margin === null ? '–' : marginText(margin));
}

function numbers(
  scope: Scope,
  frame: Frame,
  check: RatioCheck | BandCheck,
  demand: Known,
  capacity: Known,
  says: Sentences,
  tight: Known,
  which = '',
): Finding {
  const compared = compare(demand, capacity, tight.value, scope.spread?.findings.get(frame.id));
  const rests = restsOf([demand, capacity, tight]);
  const facts = [...rests.facts].sort();
  const unit = preferred(check.unit, scope.system);
  const asked = amount(demand, unit);
  const there = amount(capacity, unit);
  const sentence =
    compared.margin === null && compared.verdict === 'fits'
      ? (says.nothing ?? 'Nothing is asked of it here.')
      : fill(
          says[compared.verdict === 'unknown' ? 'fails' : compared.verdict],
          asked,
          there,
          compared.margin,
          which,
        );
  return {
    ...base(frame),
    verdict: compared.verdict,
    sentence,
    asked,
    there,
    margin: compared.margin,
    ...(compared.range ? { marginRange: compared.range } : {}),
    ...(compared.chance === undefined ? {} : { chance: compared.chance }),
    ...(compared.doubts === undefined || compared.doubts.length === 0 ? {} : { doubts: compared.doubts }),
    ...(rests.basis ? { basis: rests.basis } : {}),
    facts,
    guesses: [],
    missing: [],
    policies: [...rests.policies].sort(),
  };
}

export function judgeRatio(scope: Scope, frame: Frame, check: RatioCheck): Judged {
  const values = resolveAll(scope, [check.demand, check.capacity, policy(check.tight)]);
  const least = resolveAll(scope, check.least?.map(([, ref]) => ref) ?? []);
  return scope.judged(
    frame.id,
    [...values, ...least],
    () =>
      stopped(frame, values) ??
      ratio(scope, frame, check, values as [Known, Known, Known], leastOf(check, least)),
  );
}

/** The name of the least of a check’s values; the earlier of equals. */
function leastOf({ least = [] }: RatioCheck, values: readonly Value[]): string {
  let which = '';
  let lowest = Number.POSITIVE_INFINITY;
  for (const [at, value] of values.entries()) {
    if (value.state !== 'known' || value.value >= lowest) continue;
    lowest = value.value;
    which = least[at]![0];
  }
  return which;
}

function ratio(
  scope: Scope,
  frame: Frame,
  check: RatioCheck,
  [demand, capacity, tight]: readonly [Known, Known, Known],
  which: string,
): Judged {
  return { finding: numbers(scope, frame, check, demand, capacity, check.says, tight, which) };
}

export function judgeBand(scope: Scope, frame: Frame, check: BandCheck): Judged {
  const values = resolveAll(scope, [check.value, check.low, check.high, policy(check.tight)]);
  return scope.judged(
    frame.id,
    values,
    () => stopped(frame, values) ?? band(scope, frame, check, values as [Known, Known, Known, Known]),
  );
}

function band(
  scope: Scope,
  frame: Frame,
  check: BandCheck,
  [value, low, high, tight]: readonly [Known, Known, Known, Known],
): Judged {
  const lower = numbers(scope, frame, check, low, value, check.saysLow, tight);
  const upper = numbers(scope, frame, check, value, high, check.saysHigh, tight);
  const worse = (lower.margin ?? Number.POSITIVE_INFINITY) < (upper.margin ?? Number.POSITIVE_INFINITY);
  const rests = restsOf([value, low, high]);
  const finding = worse ? lower : upper;
  return {
    finding: {
      ...finding,
      side: worse ? 'low' : 'high',
      facts: [...rests.facts].sort(),
      policies: [...union(rests.policies, tight.policies)].sort(),
    },
  };
}
