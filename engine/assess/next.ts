/**
 * What to find out next: the facts that would settle or sharpen the most findings for the least trouble. What is unknown and what
 * is in doubt stand in one list.
 */
import { factSpec } from '../parts/index.ts';
import type { Assessment } from './assess.ts';
import { partIn, placeOf } from './context.ts';
import type { Finding } from './finding.ts';
import { sayPath } from './words.ts';

export interface Step {
  readonly path: string;
  /** 'root diameter of the X screw'. */
  readonly name: string;
  readonly findOut: string;
  readonly caution?: string;
  /** 1 read a plate … 5 ask far. */
  readonly trouble: number;
  /** Ids of the findings that get a verdict once this and the steps before it are known. */
  readonly settles: readonly string[];
  /** Ids of all findings that wait for it, or whose doubt it carries. */
  readonly waiting: readonly string[];
  /** Known only as a guess or with too much doubt, rather than unknown. */
  readonly doubtful: boolean;
  /** What it is worth: findings settled or made sure, for each step of trouble. */
  readonly worth: number;
  /** For what is in doubt: its part in the doubt of each finding, the largest first. */
  readonly carries?: readonly Carried[];
}

export interface Carried {
  readonly finding: string;
  readonly title: string;
  /** Share of the variance, 0 to 1. */
  readonly share: number;
  /** The chance that the finding fits as it stands. */
  readonly chance: number;
}

interface Described {
  readonly name: string;
  readonly findOut: string;
  readonly caution?: string;
  readonly trouble: number;
}

function describe(path: string): Described {
  const pieces = path.split('.');
  const spec = factSpec(pieces.at(-2) ?? '', pieces.at(-1)!);
  const name = sayPath(path);
  if (!spec) {
    return { name, trouble: 1, findOut: `Look whether the machine has one. Answer “fitted” or “none”.` };
  }
  return {
    name,
    findOut: spec.findOut,
    trouble: spec.trouble,
    ...(spec.caution ? { caution: spec.caution } : {}),
  };
}

/** Steps that belong together: only with the last one does any finding get its verdict. */
interface Group {
  readonly worth: number;
  readonly steps: readonly Step[];
}

/** Facts in the order that settles most for least, taking together what one finding needs. */
function unknownGroups(unknown: readonly Finding[]): Group[] {
  const groups: Group[] = [];
  const known = new Set<string>();
  let open = unknown.filter((finding) => finding.missing.length > 0);
  while (open.length > 0) {
    let best: { needs: string[]; settled: Finding[]; worth: number } | undefined;
    for (const finding of open) {
      const needs = finding.missing.filter((path) => !known.has(path));
      const all = new Set([...known, ...needs]);
      const settled = open.filter((other) => other.missing.every((path) => all.has(path)));
      const cost = needs.reduce((sum, path) => sum + describe(path).trouble, 0);
      const worth = settled.length / Math.max(1, cost);
      if (!best || worth > best.worth) best = { needs, settled, worth };
    }
    if (!best) break;
    const { settled, worth } = best;
    // Of what belongs together the easiest first; the last one completes them.
    const needs = best.needs.sort((a, b) => describe(a).trouble - describe(b).trouble);
    for (const path of needs) known.add(path);
    const ids = settled.map((finding) => finding.id);
    const steps = needs.map((path, i) => ({
      path,
      ...describe(path),
      settles: i === needs.length - 1 ? ids : [],
      waiting: unknown.filter((finding) => finding.missing.includes(path)).map((finding) => finding.id),
      doubtful: false,
      worth,
    }));
    if (steps.length > 0) groups.push({ worth, steps });
    open = open.filter((finding) => !settled.includes(finding));
  }
  return groups;
}

/** How open a finding still is: 1 where it fits with a chance of one half, 0 where it is certain either way. */
const openness = (chance: number): number => 4 * chance * (1 - chance);

/** A share of the doubt, or of openness, too small to be worth a measurement. */
const SLIGHT = 0.02;
/** What a guessed choice (which motor?) counts in a finding that is close: no variance tells what else it might be. */
const GUESSED_CHOICE = 0.25;

function doubtfulGroups(assessment: Assessment): Group[] {
  const gains = new Map<string, { gain: number; carries: Carried[] }>();
  const add = (path: string, gain: number, carried: Carried): void => {
    const so = gains.get(path) ?? { gain: 0, carries: [] };
    so.gain += gain;
    so.carries.push(carried);
    gains.set(path, so);
  };
  for (const finding of assessment.findings) {
    if (finding.verdict === 'unknown') continue;
    const { id, title, chance = finding.verdict === 'fails' ? 0 : 1 } = finding;
    const open = openness(chance);
    for (const { source, share } of finding.doubts ?? []) {
      const path = source.startsWith('table ') ? undefined : source;
      if (path === undefined || share * open < SLIGHT) continue;
      add(path, share * open, { finding: id, title, share, chance });
    }
    const isClose = finding.verdict !== 'fits' || (finding.margin ?? 9) < 2;
    const carried = new Set(finding.doubts?.map(({ source }) => source));
    for (const path of isClose ? finding.guesses : [])
      if (!carried.has(path) && isChoice(path))
        add(path, GUESSED_CHOICE, { finding: id, title, share: 0, chance });
  }
  return [...gains].map(([path, { gain, carries }]) => {
    const described = describe(path);
    const worth = gain / described.trouble;
    const sorted = carries.sort((a, b) => b.share * openness(b.chance) - a.share * openness(a.chance));
    const waiting = sorted.map(({ finding }) => finding);
    return {
      worth,
      steps: [{ path, ...described, settles: [], waiting, doubtful: true, worth, carries: sorted }],
    };
  });
}

function isChoice(path: string): boolean {
  const [place, name] = path.split('.').slice(-2);
  return factSpec(place ?? '', name ?? '')?.kind === 'choice';
}

/** True for a fact that is still there to be found out: its part was not taken out meanwhile. */
function isAskable(assessment: Assessment, path: string): boolean {
  const pieces = path.split('.');
  const [place, chainId] = pieces.length === 3 ? [pieces[1]!, pieces[0]] : [pieces[0]!, undefined];
  const chain = assessment.refit.chains.find(({ id }) => id === chainId) ?? null;
  const context = { refit: assessment.refit, chain };
  return placeOf(context, place) === undefined || partIn(context, place) !== 'none';
}

/**
 * The next facts to find out, best first. A choice that is unknown (which motor?) may hide further facts: ask again
 * after each answer.
 */
export function next(assessment: Assessment, most = 5): Step[] {
  const unknown = assessment.findings.filter((finding) => finding.verdict === 'unknown');
  const groups = [...unknownGroups(unknown), ...doubtfulGroups(assessment)];
  // Sorting keeps the order of equals: what is unknown stands before what is only in doubt.
  groups.sort((a, b) => b.worth - a.worth);
  return groups
    .flatMap(({ steps }) => steps)
    .filter(({ path }) => isAskable(assessment, path))
    .slice(0, most);
}
