/** What would make a finding fit: each value is sought through the whole assessment, so that all it touches is seen. */

import { factSpec, type QuantityFact } from '../parts/index.ts';
import { convert, formatQuantity, parseQuantity } from '../quantity/index.ts';
import type { Verdict } from '../quantity/verdict.ts';
import { findFact, findPlace } from '../refit/place.ts';
import { readFact } from '../refit/read-fact.ts';
import type { Refit } from '../refit/types.ts';
import { type Assessment, assess, reassess } from './assess.ts';
import { withFact, withOption } from './change.ts';
import type { Finding } from './finding.ts';
import { sayPath } from './words.ts';

export interface Changed {
  readonly id: string;
  readonly title: string;
  readonly before: Verdict;
  readonly after: Verdict;
}

interface RemedyBase {
  /** In words: 'rapid speed wanted of the X axis’ duty: 6.4 m/min or less'. */
  readonly says: string;
  /** A wish or setting the person is free to change, rather than a property of a part that would have to be replaced. */
  readonly free: boolean;
  /** Other findings whose verdict would change. */
  readonly changes: readonly Changed[];
}

export interface ValueRemedy extends RemedyBase {
  readonly kind: 'value';
  readonly path: string;
  /** Text to enter. */
  readonly text: string;
  /** Where the finding fits, SI: from, to. Either end may be the end of what is plausible. */
  readonly from: number;
  readonly to: number;
}

export interface OptionRemedy extends RemedyBase {
  readonly kind: 'choice' | 'part';
  readonly path: string;
  /** Option of the choice, or id of the part. */
  readonly text: string;
}

export type Remedy = ValueRemedy | OptionRemedy;

/** Points at which a quantity is tried before the edges are sought. */
const GRID = 12;
/** Enough for the three digits a remedy is given in. */
const HALVINGS = 14;
/** Counted things come in whole numbers. */
const WHOLE = new Set(['teeth', 'lines', 'pulses', 'counts', 'starts']);

const verdictOf = (assessment: Assessment, id: string): Verdict | undefined =>
  assessment.findings.find((finding) => finding.id === id)?.verdict;

function changed(before: Assessment, after: Assessment, except: string): Changed[] {
  const out: Changed[] = [];
  for (const finding of before.findings) {
    if (finding.id === except) continue;
    const now = verdictOf(after, finding.id);
    if (now && now !== finding.verdict) {
      out.push({ id: finding.id, title: finding.title, before: finding.verdict, after: now });
    }
  }
  return out;
}

interface Trial {
  readonly assessment: Assessment;
  readonly finding: Finding;
  readonly refit: Refit;
}

/** Whether the finding fits in a changed refit; only what it needs is worked out. */
const fitsIn = ({ assessment, finding }: Trial, refit: Refit): boolean =>
  reassess(assessment, refit, finding)?.verdict === 'fits';

/** All that a change would change, or undefined when the finding does not fit after all. */
function outcome({ assessment, finding }: Trial, refit: Refit): Changed[] | undefined {
  const after = assess(refit, { previous: assessment });
  return verdictOf(after, finding.id) === 'fits' ? changed(assessment, after, finding.id) : undefined;
}

/** Values at which a quantity is tried: over its plausible range, evenly in its logarithm where it has one. */
function grid(spec: QuantityFact, now: number): number[] {
  const ends = spec.plausible.map((text) => {
    const read = parseQuantity(text, spec.unit);
    return read.ok ? read.value.value : Number.NaN;
  });
  const low = Math.min(ends[0]!, now);
  const high = Math.max(ends[1]!, now);
  if (!(high > low)) return [];
  const points: number[] = [];
  const floor = low > 0 ? low : high / 1e4;
  if (low <= 0) points.push(low);
  for (let k = 0; k <= GRID; k++) points.push(floor * (high / floor) ** (k / GRID));
  return [...new Set([...points, now])].sort((a, b) => a - b);
}

/** Rounds to three digits in the unit, towards the side that fits. */
function roundInto(value: number, unit: string, up: boolean): string {
  const shown = convert(value, unit);
  if (shown === 0) return `0 ${unit}`;
  const scale = WHOLE.has(unit) ? 1 : 10 ** (2 - Math.floor(Math.log10(Math.abs(shown))));
  const rounded = (up ? Math.ceil(shown * scale - 1e-9) : Math.floor(shown * scale + 1e-9)) / scale;
  const text = String(Number(rounded.toPrecision(6)));
  return unit === '1' ? text : `${text} ${unit}`;
}

function valueRemedies(on: Trial, path: string, spec: QuantityFact): ValueRemedy[] {
  const { refit } = on;
  const fact = findFact(refit, path);
  const read = fact && readFact(spec, fact.value);
  if (!read?.ok || read.value.kind !== 'quantity') return [];
  const now = read.value.value;
  // Enough digits that the edge found is the edge of the entered text as well.
  const textOf = (value: number): string =>
    `${convert(value, spec.unit)} ${spec.unit === '1' ? '' : spec.unit}`.trim();
  const trial = (text: string): Refit => withFact(refit, path, { kind: 'quantity', text });
  // A value at which the question no longer arises (a level axis) answers it too.
  const fits = (value: number): boolean =>
    (reassess(on.assessment, trial(textOf(value)), on.finding)?.verdict ?? 'fits') === 'fits';
  const points = grid(spec, now);
  const good = points.map(fits);
  /** The last fitting value between one that fits and one that does not. */
  const edge = (inside: number, outside: number): number => {
    let a = inside;
    let b = outside;
    for (let k = 0; k < HALVINGS; k++) {
      const middle = a > 0 && b > 0 ? Math.sqrt(a * b) : (a + b) / 2;
      if (middle === a || middle === b) break;
      if (fits(middle)) a = middle;
      else b = middle;
    }
    return a;
  };
  const remedies: ValueRemedy[] = [];
  for (let k = 0; k < points.length; k++) {
    if (!good[k] || (k > 0 && good[k - 1])) continue;
    let last = k;
    while (last + 1 < points.length && good[last + 1]) last++;
    const opensBelow = k === 0;
    const opensAbove = last === points.length - 1;
    if (opensBelow && opensAbove) continue;
    const from = opensBelow ? points[k]! : edge(points[k]!, points[k - 1]!);
    const to = opensAbove ? points[last]! : edge(points[last]!, points[last + 1]!);
    const above = now < from;
    const text = roundInto(above ? from : to, spec.unit, above);
    const changes = outcome(on, trial(text));
    if (!changes) continue;
    const range =
      opensAbove && above
        ? `${text} or more`
        : opensBelow && !above
          ? `${text} or less`
          : `${roundInto(from, spec.unit, true)} to ${roundInto(to, spec.unit, false)}`;
    remedies.push({
      kind: 'value',
      path,
      text,
      from,
      to,
      free: spec.chosen === true,
      says: `${sayPath(path)}: ${range} (now ${formatQuantity(now, spec.unit)})`,
      changes,
    });
  }
  return remedies;
}

function choiceRemedies(on: Trial, path: string): OptionRemedy[] {
  const [place, name] = path.split('.').slice(-2) as [string, string];
  const spec = factSpec(place, name);
  if (spec?.kind !== 'choice' || spec.given) return [];
  const { refit } = on;
  const fact = findFact(refit, path);
  const remedies: OptionRemedy[] = [];
  for (const [option, words] of Object.entries(spec.options)) {
    if (fact?.value.kind === 'choice' && fact.value.option === option) continue;
    const trial = withFact(refit, path, { kind: 'choice', option });
    const changes = fitsIn(on, trial) ? outcome(on, trial) : undefined;
    if (!changes) continue;
    remedies.push({
      kind: 'choice',
      path,
      text: option,
      free: false,
      says: `${sayPath(path)}: ${words}`,
      changes,
    });
  }
  return remedies;
}

function partRemedies(on: Trial, where: string): OptionRemedy[] {
  const [place, chain = null] = where.split('.').reverse() as [string, string | null];
  const { refit } = on;
  const options = findPlace(refit, chain, place);
  const remedies: OptionRemedy[] = [];
  for (const option of options?.options ?? []) {
    if (option === options?.chosen) continue;
    const changes = outcome(on, withOption(refit, chain, place, option));
    if (!changes) continue;
    remedies.push({
      kind: 'part',
      path: where,
      text: option,
      free: true,
      says: `put “${refit.parts[option]?.name ?? option}” in the place ${where}`,
      changes,
    });
  }
  return remedies;
}

/**
 * Everything that alone would make a finding fit, wishes and settings first, then those that upset least.
 * Works in pieces and yields the share done, so that a long search can show progress and be given up.
 * Nothing for a finding that fits, is unknown or does not exist. With `only`, no more than those facts are tried, and no parts.
 */
export function* seekRemedies(
  assessment: Assessment,
  id: string,
  only: (path: string) => boolean = () => true,
): Generator<number, Remedy[]> {
  const finding = assessment.findings.find((each) => each.id === id);
  if (!finding || finding.verdict === 'fits' || finding.verdict === 'unknown') return [];
  const trial: Trial = { assessment, finding, refit: assessment.refit };
  const found: Remedy[] = [];
  const facts = finding.facts.filter(only);
  const all = facts.length === finding.facts.length;
  for (const [index, path] of facts.entries()) {
    const [place, name] = path.split('.').slice(-2) as [string, string];
    const spec = factSpec(place, name);
    // Neither the mains nor another axis is changed to mend this one; what is asked of all may be mended by what one is asked to do.
    const wish = place === 'duty' && finding.chain === null && path.split('.').length === 3;
    const own = path.startsWith(`${finding.chain}.`) || path.split('.').length === 2;
    if (place === 'site' || !(own || wish)) continue;
    if (spec?.kind === 'quantity') found.push(...valueRemedies(trial, path, spec));
    else found.push(...choiceRemedies(trial, path));
    yield (index + 1) / (facts.length + 1);
  }
  for (const where of new Set(all ? facts.map((path) => path.split('.').slice(0, -1).join('.')) : [])) {
    found.push(...partRemedies(trial, where));
  }
  const harm = (remedy: Remedy): number =>
    remedy.changes.filter(
      (change) => change.after === 'fails' || (change.before === 'fits' && change.after !== 'fits'),
    ).length;
  return found.sort((a, b) => Number(b.free) - Number(a.free) || harm(a) - harm(b));
}

/** The same in one go. */
export function remedies(assessment: Assessment, id: string): Remedy[] {
  const search = seekRemedies(assessment, id);
  for (;;) {
    const piece = search.next();
    if (piece.done) return piece.value;
  }
}
