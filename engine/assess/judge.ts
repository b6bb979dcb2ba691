/** A check against one chain: its finding, or why it is not asked. */
import type {
  BandCheck,
  Check,
  Condition,
  FactCheck,
  Facts,
  RatioCheck,
  Sentences,
} from '../checks/check.ts';
import { factSpec, type PlaceId } from '../parts/index.ts';
import { formatQuantity } from '../quantity/index.ts';
import { partIn, pathOf, readPath } from './context.ts';
import type { Amount, Finding, NotAsked, Verdict } from './finding.ts';
import { normalBelow } from './normal.ts';
import { resolve, type Scope } from './resolve.ts';
import { combine, type Known, restsOf, uncertainty, union, type Value } from './value.ts';
import { missingSentence } from './words.ts';

export type Judged = { readonly finding: Finding } | { readonly notAsked: NotAsked };

/** Chance of fitting below which a verdict is at best tight. */
export const SURE = 0.95;

const idOf = (scope: Scope, check: Check): string => `${scope.context.chain?.id ?? 'machine'}.${check.id}`;

/** 'holds', a reason why not, or the facts that would tell. */
function condition(
  scope: Scope,
  c: Condition,
): 'holds' | { reason: string } | { missing: readonly string[] } {
  if ('above' in c) {
    const value = resolve(scope, c.above);
    if (value.state === 'missing') return { missing: [...value.facts] };
    if (value.state === 'known') return value.value > 0 ? 'holds' : { reason: c.else };
    return value.state === 'curve' ? 'holds' : { reason: value.reason };
  }
  if ('fitted' in c) {
    const part = partIn(scope.context, c.place);
    if (part === null) return { missing: [pathOf(scope.context.chain, c.place)] };
    if ((part !== 'none') === c.fitted) return 'holds';
    return { reason: c.fitted ? `There is no ${c.place} here.` : `There is a ${c.place} here.` };
  }
  const reading = readPath(scope.context, c.place, c.fact);
  if (reading.state === 'missing') return { missing: [...reading.facts] };
  if (reading.state === 'inapplicable') return { reason: reading.reason };
  if (reading.state === 'bad') return { missing: [reading.path] };
  const option = reading.read.kind === 'choice' ? reading.read.option : '';
  if (c.is.includes(option)) return 'holds';
  const spec = factSpec(c.place, c.fact);
  const words = spec?.kind === 'choice' ? spec.options[option] : option;
  return { reason: `The ${c.place} is “${words ?? option}”.` };
}

interface Frame {
  readonly id: string;
  readonly check: Check;
  readonly chain: string | null;
}

const base = (frame: Frame) => ({
  id: frame.id,
  check: frame.check.id,
  chain: frame.chain,
  place: frame.check.place,
  title: frame.check.title,
  form: frame.check.form,
});

const unknown = (
  frame: Frame,
  missing: readonly string[],
  sentence: string,
  policies: readonly string[] = [],
): Judged => ({
  finding: { ...base(frame), verdict: 'unknown', sentence, facts: [], guesses: [], missing, policies },
});

/** Values that stop a numeric verdict, dealt with in one place. */
function stopped(frame: Frame, values: readonly Value[]): Judged | undefined {
  const inapplicable = values.find((value) => value.state === 'inapplicable');
  if (inapplicable?.state === 'inapplicable') {
    return { notAsked: { id: frame.id, title: frame.check.title, reason: inapplicable.reason } };
  }
  let missing: ReadonlySet<string> = new Set();
  for (const value of values) if (value.state === 'missing') missing = union(missing, value.facts);
  const refused = values.find((value) => value.state === 'no-answer');
  if (missing.size > 0) return unknown(frame, [...missing], missingSentence([...missing]));
  if (refused?.state === 'no-answer') return unknown(frame, [], `No answer: ${refused.reason}`);
  return undefined;
}

interface Compared {
  readonly margin: number | null;
  readonly range?: readonly [number, number];
  readonly chance?: number;
  readonly verdict: Verdict;
}

/** Capacity against demand, both with their doubt. */
export function compare(demand: Known, capacity: Known, tight: number): Compared {
  if (demand.value <= 0) return { margin: null, verdict: 'fits' };
  const margin = Math.max(0, capacity.value / demand.value);
  const spare = uncertainty(combine(1, capacity.doubt, -1, demand.doubt));
  let verdict: Verdict = margin < 1 ? 'fails' : margin < tight ? 'tight' : 'fits';
  if (spare === 0) return { margin, verdict };
  const chance = normalBelow((capacity.value - demand.value) / spare);
  if (verdict === 'fits' && chance < SURE) verdict = 'tight';
  const relative = uncertainty(
    combine(1 / Math.max(capacity.value, Number.MIN_VALUE), capacity.doubt, -1 / demand.value, demand.doubt),
  );
  const reach = Math.exp(Math.min(1.96 * relative, 20));
  return { margin, verdict, chance, range: [margin / reach, margin * reach] };
}

const amount = (value: Known, unit: string): Amount => ({
  value: value.value,
  doubt: uncertainty(value.doubt),
  unit,
});

/** Puts numbers into a sentence. */
export function fill(sentence: string, asked: Amount, there: Amount, margin: number | null): string {
  const say = (a: Amount): string => formatQuantity(a.value, a.unit);
  return sentence
    .replaceAll('{asked}', say(asked))
    .replaceAll('{there}', say(there))
    .replaceAll('{margin}', margin === null ? '–' : margin.toPrecision(3));
}

function numbers(
  scope: Scope,
  frame: Frame,
  check: RatioCheck | BandCheck,
  demand: Known,
  capacity: Known,
  says: Sentences,
  tight: Known,
): Finding {
  const compared = compare(demand, capacity, tight.value);
  const rests = restsOf([demand, capacity, tight]);
  const facts = [...rests.facts].sort();
  const asked = amount(demand, check.unit);
  const there = amount(capacity, check.unit);
  const sentence =
    compared.margin === null
      ? 'Nothing is asked of it here.'
      : fill(
          says[compared.verdict === 'unknown' ? 'fails' : compared.verdict],
          asked,
          there,
          compared.margin,
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
    ...(rests.basis ? { basis: rests.basis } : {}),
    facts,
    guesses: guessed(scope, facts),
    missing: [],
    policies: [...rests.policies].sort(),
  };
}

/** Which of these facts are only guessed. */
function guessed(scope: Scope, paths: readonly string[]): string[] {
  return paths.filter((path) => {
    const pieces = path.split('.');
    const name = pieces.at(-1)!;
    const place = pieces.at(-2)!;
    const chain = pieces.length === 3 ? scope.context.refit.chains.find((c) => c.id === pieces[0]) : null;
    if (!factSpec(place, name)) return false;
    const reading = readPath({ ...scope.context, chain: chain ?? null }, place, name);
    return reading.state === 'read' && reading.fact.basis === 'guess';
  });
}

function ratio(scope: Scope, frame: Frame, check: RatioCheck): Judged {
  const values = [check.demand, check.capacity, { kind: 'policy', policy: check.tight } as const].map((ref) =>
    resolve(scope, ref),
  );
  const stop = stopped(frame, values);
  if (stop) return stop;
  const [demand, capacity, tight] = values as [Known, Known, Known];
  return { finding: numbers(scope, frame, check, demand, capacity, check.says, tight) };
}

function band(scope: Scope, frame: Frame, check: BandCheck): Judged {
  const values = [check.value, check.low, check.high, { kind: 'policy', policy: check.tight } as const].map(
    (ref) => resolve(scope, ref),
  );
  const stop = stopped(frame, values);
  if (stop) return stop;
  const [value, low, high, tight] = values as [Known, Known, Known, Known];
  const lower = numbers(scope, frame, check, low, value, check.saysLow, tight);
  const upper = numbers(scope, frame, check, value, high, check.saysHigh, tight);
  const worse = (lower.margin ?? Number.POSITIVE_INFINITY) < (upper.margin ?? Number.POSITIVE_INFINITY);
  const rests = restsOf([value, low, high]);
  const facts = [...rests.facts].sort();
  const finding = worse ? lower : upper;
  return {
    finding: {
      ...finding,
      side: worse ? 'low' : 'high',
      facts,
      guesses: guessed(scope, facts),
      policies: [...union(rests.policies, tight.policies)].sort(),
    },
  };
}

function factCheck(scope: Scope, frame: Frame, check: FactCheck): Judged {
  const missing = new Set<string>();
  const facts = new Set<string>();
  const bases: Known['basis'][] = [];
  const option = (place: PlaceId, name: string) => {
    const reading = readPath(scope.context, place, name);
    if (reading.state === 'missing') for (const path of reading.facts) missing.add(path);
    else if (reading.state === 'bad') missing.add(reading.path);
    else if (reading.state === 'read') {
      facts.add(reading.path);
      bases.push(reading.fact.basis);
      return reading.read;
    }
    return undefined;
  };
  const reader: Facts = {
    choice: (place, name) => {
      const read = option(place, name);
      return read?.kind === 'choice' ? read.option : undefined;
    },
    choices: (place, name) => {
      const read = option(place, name);
      return read?.kind === 'choices' ? read.options : undefined;
    },
    say: (place, name, id) => {
      const spec = factSpec(place, name);
      return (spec && 'options' in spec ? spec.options[id] : undefined) ?? id;
    },
    fitted: (place) => {
      const part = partIn(scope.context, place);
      if (part === null) missing.add(pathOf(scope.context.chain, place));
      return part === null ? undefined : part !== 'none';
    },
  };
  const judged = check.judge(reader);
  if (!judged) return unknown(frame, [...missing], missingSentence([...missing]));
  const verdict: Verdict = judged.answer === 'yes' ? 'fits' : judged.answer === 'no' ? 'fails' : 'tight';
  const paths = [...facts].sort();
  const { basis } = restsOf(bases.map((b) => ({ facts, policies: new Set<string>(), basis: b })));
  return {
    finding: {
      ...base(frame),
      verdict,
      sentence: judged.sentence,
      ...(basis ? { basis } : {}),
      facts: paths,
      guesses: guessed(scope, paths),
      missing: [],
      policies: [],
    },
  };
}

/** Asks one check of one chain (or of the machine). */
export function judge(scope: Scope, check: Check): Judged {
  const frame: Frame = { id: idOf(scope, check), check, chain: scope.context.chain?.id ?? null };
  let missing: readonly string[] = [];
  for (const each of check.onlyIf ?? []) {
    const state = condition(scope, each);
    if (state === 'holds') continue;
    if ('reason' in state) return { notAsked: { id: frame.id, title: check.title, reason: state.reason } };
    if (missing.length === 0) missing = state.missing;
  }
  if (missing.length > 0) return unknown(frame, missing, missingSentence(missing));
  switch (check.form) {
    case 'ratio':
      return ratio(scope, frame, check);
    case 'band':
      return band(scope, frame, check);
    case 'fact':
      return factCheck(scope, frame, check);
  }
}
