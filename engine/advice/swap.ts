/** Other ways to fill a place, each tried through the whole assessment. Parts that only go together are changed together. */

import { type Assessment, assess, type Finding, withOption } from '../assess/index.ts';
import type { Verdict } from '../quantity/verdict.ts';
import { findPlace } from '../refit/place.ts';
import type { Refit } from '../refit/types.ts';
import { billOf } from './bill.ts';
import type { Change, Swap } from './types.ts';

/** A motor is nothing without a drive that runs it and feedback that suits both. */
export const TOGETHER: readonly string[] = ['motor', 'drive', 'feedback'];
/** Questions that no wish and no setting mends: with a no here the parts do not go together. */
const SUITS = new Set(['drive-motor', 'commutation', 'feedback-drive', 'feedback-control']);
/** More than anybody compares; keeps a hostile file from asking for millions. */
const MOST_TRIED = 240;
const RANK: Readonly<Record<Verdict, number>> = { fits: 0, tight: 1, unknown: 2, fails: 3 };

const places = (chain: string | null, place: string): readonly string[] =>
  chain !== null && TOGETHER.includes(place)
    ? [place, ...TOGETHER.filter((each) => each !== place)]
    : [place];

/** Every finding that differs, those that get worse first. */
export function changesBetween(before: Assessment, after: Assessment): Change[] {
  const now = new Map(after.findings.map((finding) => [finding.id, finding]));
  const was = new Map(before.findings.map((finding) => [finding.id, finding]));
  const changes: (Change & { readonly worse: number })[] = [];
  for (const id of new Set([...was.keys(), ...now.keys()])) {
    const a = was.get(id);
    const b = now.get(id);
    if (a?.verdict === b?.verdict) continue;
    changes.push({
      id,
      title: (b ?? a)!.title,
      ...(a ? { before: a.verdict, ...margin('marginBefore', a) } : {}),
      ...(b ? { after: b.verdict, ...margin('marginAfter', b) } : {}),
      worse: (b ? RANK[b.verdict] : 0) - (a ? RANK[a.verdict] : 0),
    });
  }
  return changes.sort((a, b) => b.worse - a.worse).map(({ worse: _, ...change }) => change);
}

const margin = <K extends string>(key: K, { margin }: Finding): Partial<Record<K, number | null>> =>
  margin === undefined ? {} : ({ [key]: margin } as Record<K, number | null>);

interface Pick {
  readonly place: string;
  readonly part: string;
}

/** Choices of one option a place, those that change fewest parts first. */
function picks(refit: Refit, chain: string | null, all: readonly string[]): Pick[][] {
  let made: Pick[][] = [[]];
  for (const place of all) {
    const found = findPlace(refit, chain, place);
    const others = (found?.options ?? []).filter((id) => id !== found?.chosen);
    const longer = made.flatMap((pick) => others.map((part) => [...pick, { place, part }]));
    // The place asked about always changes; those beside it may stay.
    made = place === all[0] ? longer : [...made, ...longer];
    made = made.slice(0, MOST_TRIED);
  }
  return made.sort((a, b) => a.length - b.length);
}

/**
 * Every other option of a place, with the fewest parts that have to change along so that motor, drive and feedback go
 * together; alone where nothing on offer makes it go.
 */
export function swapsFor(assessment: Assessment, chain: string | null, place: string): Swap[] {
  const { refit } = assessment;
  const group = places(chain, place);
  const found = new Map<string, { least: number; suits: boolean; swaps: Swap[] }>();
  for (const pick of picks(refit, chain, group)) {
    const option = pick[0]!.part;
    const best = found.get(option);
    if (best?.suits && pick.length > best.least) continue;
    const after = assess(
      pick.reduce((changed, { place: at, part }) => withOption(changed, chain, at, part), refit),
      { previous: assessment },
    );
    const suits = !after.findings.some(
      ({ check, chain: axis, verdict }) => axis === chain && SUITS.has(check) && verdict === 'fails',
    );
    if (best && !suits) continue;
    const swap = describe(assessment, after, chain, group, pick);
    if (best?.suits) best.swaps.push(swap);
    else found.set(option, { least: pick.length, suits, swaps: [swap] });
  }
  return [...found.values()]
    .flatMap(({ swaps }) => swaps)
    .sort((a, b) => a.breaks - b.breaks || b.mends - a.mends || a.loses - b.loses);
}

function describe(
  before: Assessment,
  after: Assessment,
  chain: string | null,
  group: readonly string[],
  pick: readonly Pick[],
): Swap {
  const { refit } = before;
  const changes = changesBetween(before, after);
  const count = (is: (change: Change) => boolean): number => changes.filter(is).length;
  const parts = pick.map(({ place, part }) => ({
    at: chain === null ? place : `${chain}.${place}`,
    part,
    name: refit.parts[part]?.name ?? part,
  }));
  const bought = group.flatMap((place) => {
    const chosen = findPlace(after.refit, chain, place)?.chosen;
    return chosen && chosen !== 'none' ? [{ chain, place, part: chosen }] : [];
  });
  return {
    says: parts.map(({ name }) => name).join(', with '),
    parts,
    changes,
    mends: count(({ before, after }) => before === 'fails' && (after === 'fits' || after === 'tight')),
    breaks: count((change) => change.after === 'fails' && change.before !== 'fails'),
    loses: count((change) => change.after === 'unknown' && change.before !== 'unknown'),
    bill: billOf(refit, bought),
  };
}
