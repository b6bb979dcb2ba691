/** Findings about a piece of work: as those of the checks, with the link of the machine each belongs to. */

import { marginText } from '../assess/index.ts';
import type { Basis } from '../quantity/types.ts';
import { byVerdict, type Judged, type Verdict, worstVerdict } from '../quantity/verdict.ts';
import { say } from './say.ts';

/** Where in the machine a finding belongs, in the order of a chain from program to metal. */
export const LINKS = {
  settings: 'what was typed',
  control: 'control',
  feedback: 'spindle feedback',
  spindle: 'spindle drive and motor',
  speed: 'spindle speed',
  chuck: 'chuck',
  axis: 'axis',
  travel: 'travel',
  hole: 'hole and tap',
} as const;
export type Link = keyof typeof LINKS;

export interface WorkAmount {
  /** SI. */
  readonly value: number;
  readonly unit: string;
}

export interface WorkFinding {
  /** 'thread-1.axis-speed'. */
  readonly id: string;
  readonly check: string;
  readonly link: Link;
  readonly title: string;
  readonly verdict: Verdict;
  /** One plain sentence with the numbers in it. */
  readonly sentence: string;
  readonly asked?: WorkAmount;
  readonly there?: WorkAmount;
  /** Capacity over demand; null when nothing is asked. */
  readonly margin?: number | null;
  /** Where the margin lies with 95 % probability, where it was drawn and something in it is in doubt. */
  readonly marginRange?: readonly [low: number, high: number];
  /** Share of the draws in which it does not fail, where it was drawn and something in it is in doubt. */
  readonly chance?: number;
  /** What it rests on, a sentence each. */
  readonly because: readonly string[];
  /** Paths of facts that would have to be known. */
  readonly needs: readonly string[];
  /** The weakest basis among its facts. */
  readonly basis?: Basis;
}

interface Common {
  readonly check: string;
  readonly link: Link;
  readonly title: string;
  readonly because?: readonly string[];
  readonly needs?: readonly string[];
  readonly basis?: Basis | undefined;
}

const common = (work: string, of: Common) => ({
  id: `${work}.${of.check}`,
  check: of.check,
  link: of.link,
  title: of.title,
  because: of.because ?? [],
  needs: of.needs ?? [],
  ...(of.basis === undefined ? {} : { basis: of.basis }),
});

/** A yes-or-no, or something that is not known. */
export const told = (
  work: string,
  of: Common & { readonly verdict: Verdict; readonly sentence: string },
): WorkFinding => ({ ...common(work, of), verdict: of.verdict, sentence: of.sentence });

/**
 * Demand against capacity, both above zero or the demand nothing. `tight`: the margin below which it counts as tight.
 * Sentences hold `{asked}` and `{there}`.
 */
export function ratio(
  work: string,
  of: Common & {
    readonly asked: number;
    readonly there: number;
    readonly unit: string;
    readonly tight: number;
    readonly says: { readonly fits: string; readonly fails: string };
  },
): WorkFinding {
  const { asked, there, unit, says } = of;
  const margin = asked > 0 ? there / asked : null;
  const verdict: Verdict = margin === null || margin >= of.tight ? 'fits' : margin >= 1 ? 'tight' : 'fails';
  const template = verdict === 'fails' ? says.fails : says.fits;
  return {
    ...common(work, of),
    verdict,
    // Made where it is read: hundreds of draws never are.
    get sentence() {
      return template
        .replaceAll('{asked}', say(asked, unit))
        .replaceAll('{there}', Number.isFinite(there) ? say(there, unit) : 'any');
    },
    asked: { value: asked, unit },
    there: { value: there, unit },
    margin,
  };
}

export const missing = (
  work: string,
  of: Common & { readonly sentence: string; readonly needs: readonly string[] },
): WorkFinding => told(work, { ...of, verdict: 'unknown' });

export const worstOf = (findings: readonly Judged[]): Verdict => worstVerdict(findings) ?? 'fits';

/** Worst first; within a verdict the smallest margin first. */
export const inOrder = (findings: readonly WorkFinding[]): readonly WorkFinding[] =>
  [...findings].sort(
    (a, b) =>
      byVerdict(a, b) || (a.margin ?? Number.POSITIVE_INFINITY) - (b.margin ?? Number.POSITIVE_INFINITY),
  );

/** 'the chance that it fits is 83 %'; empty where it is as good as sure. A chance from draws is no finer than a percent. */
export function sayChance({ chance, verdict }: Pick<WorkFinding, 'chance' | 'verdict'>): string {
  if (chance === undefined || chance > 0.995) return '';
  const percent = chance < 0.005 ? 'under 0.5 %' : `${(100 * chance).toFixed(0)} %`;
  return `With what is doubtful, the chance that it ${verdict === 'fails' ? 'fits all the same' : 'fits'} is ${percent}.`;
}

/** 'nothing fails in 83 % of them', of the draws. */
export const sayShare = (chance: number): string =>
  chance === 1
    ? 'nothing fails in any of them'
    : chance === 0
      ? 'something fails in every one of them'
      : `nothing fails in ${(100 * chance).toFixed(chance > 0.99 || chance < 0.01 ? 1 : 0)} % of them`;

/** '0.94 to 1.5': where a margin lies. */
export const sayRange = ([low, high]: readonly [low: number, high: number]): string =>
  marginText(low) === marginText(high)
    ? marginText(low)
    : `${marginText(low)} to ${high >= 100 ? 'over 99' : marginText(high)}`;

export const sayMargin = (finding: WorkFinding): string =>
  finding.margin === undefined
    ? '–'
    : finding.margin === null || !Number.isFinite(finding.margin)
      ? 'nothing asked'
      : marginText(finding.margin);
