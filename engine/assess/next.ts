/** What to find out next: the few facts that would settle the most findings for the least trouble. */
import { factSpec } from '../parts/index.ts';
import type { Assessment } from './assess.ts';
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
  /** Ids of all findings that wait for it. */
  readonly waiting: readonly string[];
  /** Known only as a guess or with too much doubt, rather than unknown. */
  readonly doubtful: boolean;
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

/** Facts in the order that settles most for least, taking together what one finding needs. */
function order(unknown: readonly Finding[]): { path: string; settles: string[] }[] {
  const steps: { path: string; settles: string[] }[] = [];
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
    // Of what belongs together the easiest first; the last one completes them.
    const needs = best.needs.sort((a, b) => describe(a).trouble - describe(b).trouble);
    for (const path of needs) known.add(path);
    const ids = best.settled.map((finding) => finding.id);
    needs.forEach((path, i) => {
      steps.push({ path, settles: i === needs.length - 1 ? ids : [] });
    });
    open = open.filter((finding) => !best.settled.includes(finding));
  }
  return steps;
}

/**
 * The next facts to find out, best first. A choice that is unknown (which motor?) may hide further facts: ask again
 * after each answer.
 */
export function next(assessment: Assessment, most = 5): Step[] {
  const unknown = assessment.findings.filter((finding) => finding.verdict === 'unknown');
  const steps: Step[] = order(unknown)
    .slice(0, most)
    .map(({ path, settles }) => ({
      path,
      ...describe(path),
      settles,
      waiting: unknown.filter((finding) => finding.missing.includes(path)).map((finding) => finding.id),
      doubtful: false,
    }));
  if (steps.length >= most) return steps;
  const guesses = new Map<string, string[]>();
  for (const finding of assessment.findings) {
    const shaky = finding.verdict !== 'unknown' && (finding.verdict !== 'fits' || (finding.margin ?? 9) < 2);
    if (!shaky) continue;
    for (const path of finding.guesses) guesses.set(path, [...(guesses.get(path) ?? []), finding.id]);
  }
  const doubtful = [...guesses].sort(
    (a, b) => b[1].length / describe(b[0]).trouble - a[1].length / describe(a[0]).trouble,
  );
  for (const [path, ids] of doubtful.slice(0, most - steps.length)) {
    steps.push({ path, ...describe(path), settles: [], waiting: ids, doubtful: true });
  }
  return steps;
}
