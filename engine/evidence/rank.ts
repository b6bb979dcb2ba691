/** Which kind of thing it is, from what was seen: Bayes' rule over a table of how often each kind shows each sign. */
import { capital } from '../quantity/words.ts';
import type { Candidate } from './types.ts';

/** How often a thing of this kind shows this sign, 0 to 1: judgements of the bench, no source. */
export type Signs<Kind extends string> = Readonly<
  Record<string, Readonly<Record<string, Readonly<Record<Kind, number>>>>>
>;

export interface Kinds<Kind extends string> {
  readonly names: Readonly<Record<Kind, string>>;
  /** How common each is on old machines: judgements, no source. */
  readonly common: Readonly<Record<Kind, number>>;
  readonly signs: Signs<Kind>;
}

export interface RankedKind<Kind extends string> extends Candidate {
  readonly kind: Kind;
}

/** `seen` has one option for each sign that was looked for; a sign that was not is left out. */
export function rankKinds<Kind extends string>(
  { names, common, signs }: Kinds<Kind>,
  seen: Readonly<Record<string, string>>,
): RankedKind<Kind>[] {
  const kinds = Object.keys(names) as Kind[];
  const weights = new Map(
    kinds.map((kind) => [
      kind,
      Object.entries(seen).reduce(
        (weight, [sign, option]) => weight * (signs[sign]?.[option]?.[kind] ?? 1),
        common[kind],
      ),
    ]),
  );
  const total = [...weights.values()].reduce((sum, weight) => sum + weight, 0);
  return kinds
    .map((kind) => ({
      kind,
      name: names[kind],
      likely: weights.get(kind)! / total,
      why: whyOf(kind, signs, seen),
    }))
    .sort((a, b) => b.likely - a.likely);
}

/** The signs that speak for and against, by their part in it. */
function whyOf<Kind extends string>(
  kind: Kind,
  signs: Signs<Kind>,
  seen: Readonly<Record<string, string>>,
): string {
  const against = Object.entries(seen).filter(([sign, option]) => (signs[sign]?.[option]?.[kind] ?? 1) < 0.1);
  const fits = Object.entries(seen).filter(([sign, option]) => (signs[sign]?.[option]?.[kind] ?? 0) >= 0.5);
  const said = (list: [string, string][]): string => list.map(([sign]) => sign).join(', ');
  if (Object.keys(seen).length === 0) return 'nothing was looked at yet';
  if (against.length > 0) return `against it: ${said(against)}`;
  return fits.length > 0 ? `fits: ${said(fits)}` : 'nothing speaks clearly for or against';
}

/** The sign, not looked for yet, that would part the two likeliest best. */
export function decidingSign<Kind extends string>(
  { signs }: Kinds<Kind>,
  [first, second]: readonly RankedKind<Kind>[],
  seen: Readonly<Record<string, string>>,
): string | undefined {
  if (!first || !second) return undefined;
  const open = Object.entries(signs).filter(([sign]) => seen[sign] === undefined);
  const gain = (options: Signs<Kind>[string]): number =>
    Object.values(options).reduce((sum, by) => sum + Math.abs(by[first.kind] - by[second.kind]), 0);
  return open.sort((a, b) => gain(b[1]) - gain(a[1]))[0]?.[0];
}

/** 'a resolver', 'an induction motor'. */
export const withArticle = (name: string): string => `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;

/** 'count its leads' as a sentence of its own. */
export const asSentence = (text: string): string => `${capital(text)}${/[.?]$/.test(text) ? '' : '.'}`;
