/** The controls that could fill the place, each answered row by row: has it, hasn't, nobody knows. */

import type { Assessment } from '../assess/index.ts';
import { type CountId, countFacts } from '../parts/control-abilities.ts';
import { formatQuantity } from '../quantity/index.ts';
import { type Verdict, worstVerdict } from '../quantity/verdict.ts';
import { capital } from '../quantity/words.ts';
import { findPlace } from '../refit/place.ts';
import type { Part } from '../refit/types.ts';
import { policyOf } from './census.ts';
import { factsOf, jobFacts, type OwnFacts } from './facts.ts';
import { CODE_NAMES, type Need, type Needs, needsOf } from './needs.ts';
import { share } from './share.ts';
import { SIGNAL_IDS, SIGNALS, type SignalId } from './signals.ts';

export interface Row {
  /** Id of the need, or of the sort of signal. */
  readonly id: string;
  readonly group: string;
  readonly name: string;
  readonly verdict: Verdict;
  /** 'has it', 'has not', 'not known', 'has 12, 3 spare'. */
  readonly says: string;
  /** What is needed, in words. */
  readonly asked: string;
  readonly waived: boolean;
  /** Facts to set for it: 'control@control-2.threading-taper'. */
  readonly paths: readonly string[];
}

export interface Candidate {
  readonly part: Part;
  readonly chosen: boolean;
  readonly verdict: Verdict;
  readonly sentence: string;
  readonly rows: readonly Row[];
  /** What the seller has to be asked, as text. */
  readonly ask: string;
}

export interface Signals {
  readonly sort: SignalId;
  readonly count: number;
  /** With the spares one wants. */
  readonly withSpares: number;
  readonly from: readonly string[];
}

export interface ControlReport {
  readonly needs: Needs;
  readonly signals: readonly Signals[];
  readonly candidates: readonly Candidate[];
}

export function compareControls(assessment: Assessment): ControlReport {
  const needs = needsOf(assessment);
  const { refit } = assessment;
  const spares = policyOf(refit, 'control-spares');
  const signals = SIGNAL_IDS.flatMap((sort): Signals[] => {
    const own = needs.census.signals.filter((each) => each.sort === sort);
    // A drive or an encoder is not plugged in by chance: no spares of those.
    const extra = ['pulses', 'encoder', '10v', '10v-both'].includes(sort)
      ? 0
      : Math.ceil(own.length * spares - 1e-9);
    return own.length > 0
      ? [{ sort, count: own.length, withSpares: own.length + extra, from: own.map(({ from }) => from) }]
      : [];
  });
  const place = findPlace(refit, null, 'control');
  const exact = policyOf(refit, 'margin-exact');
  const waived = new Set(jobFacts(refit).choices('control-waived') ?? []);
  const candidates = (place?.options ?? []).flatMap((id): Candidate[] => {
    const part = refit.parts[id];
    if (!part) return [];
    const facts = factsOf('control', part);
    const prefix = place!.chosen === id ? 'control' : `control@${id}`;
    const rows = [
      ...needs.needs.map((need) => answer(need, facts, prefix, exact)),
      ...signalRows(signals, facts, prefix, waived),
    ];
    const open = rows.filter((row) => !row.waived);
    const verdict = worstVerdict(open) ?? 'fits';
    return [
      {
        part,
        chosen: place!.chosen === id,
        verdict,
        sentence: sentenceOf(part.name, open),
        rows,
        ask: askText(part.name, open),
      },
    ];
  });
  return { needs, signals, candidates };
}

function answer(need: Need, facts: OwnFacts, prefix: string, exact: number): Row {
  const base = { id: need.id, group: need.group, name: need.name, waived: need.waived };
  switch (need.kind) {
    case 'ability': {
      const known = facts.choice(need.id);
      return {
        ...base,
        asked: 'yes',
        verdict: known === undefined ? 'unknown' : known === 'yes' ? 'fits' : 'fails',
        says: known === undefined ? 'not known' : known === 'yes' ? 'has it' : 'has not',
        paths: [`${prefix}.${need.id}`],
      };
    }
    case 'codes': {
      const reads = facts.choices('turret-codes');
      const free = facts.choice('free-sequences');
      const lacks = (need.codes ?? []).filter((code) => !reads?.includes(code));
      const verdict: Verdict =
        lacks.length === 0
          ? 'fits'
          : free === 'yes'
            ? 'fits'
            : reads === undefined || free === undefined
              ? 'unknown'
              : 'fails';
      return {
        ...base,
        asked: (need.codes ?? []).map((code) => CODE_NAMES[code] ?? code).join(', '),
        verdict,
        says:
          lacks.length === 0
            ? 'has it'
            : free === 'yes'
              ? 'you can write it'
              : verdict === 'unknown'
                ? 'not known'
                : 'has not',
        paths: [`${prefix}.turret-codes`, `${prefix}.free-sequences`],
      };
    }
    case 'pole': {
      const wanted = need.codes![0]!;
      const gives = facts.choice('outputs-give');
      // Free contacts serve either way.
      const free = facts.value('outputs-24v') === 0 && (facts.value('outputs-relay') ?? 0) > 0;
      const fits = free || gives === 'either' || gives === wanted;
      return {
        ...base,
        asked: wanted,
        verdict: fits ? 'fits' : gives === undefined ? 'unknown' : need.by === 'wiring' ? 'tight' : 'fails',
        says: free
          ? 'free contacts, either way'
          : gives === undefined
            ? 'not known'
            : `${{ plus: 'gives plus', minus: 'pulls to minus' }[gives] ?? 'either, as it is wired'}${!fits && need.by === 'wiring' ? ': what is drawn there would have to be wired the other way' : ''}`,
        paths: [`${prefix}.outputs-give`],
      };
    }
    case 'current': {
      const there = facts.value('output-current');
      const margin = there === undefined ? undefined : there / need.asked;
      return {
        ...base,
        asked: formatQuantity(need.asked, need.unit, { digits: 3 }),
        verdict: margin === undefined ? 'unknown' : margin < 1 ? 'fails' : margin < exact ? 'tight' : 'fits',
        says:
          there === undefined
            ? 'not known'
            : `has ${formatQuantity(there, need.unit, { digits: 3 })}${margin! < 1 ? ': a small relay between would do' : ''}`,
        paths: [`${prefix}.output-current`],
      };
    }
    case 'count': {
      const there = facts.value(need.id);
      return {
        ...base,
        asked: String(need.asked),
        verdict: there === undefined ? 'unknown' : there < need.asked ? 'fails' : 'fits',
        says: there === undefined ? 'not known' : `has ${there}`,
        paths: [`${prefix}.${need.id}`],
      };
    }
    case 'rate': {
      const fact = need.id === 'pulses' ? 'highestPulseRate' : 'highestEdgeRate';
      const there = facts.value(fact);
      const margin = there === undefined ? undefined : there / need.asked;
      return {
        ...base,
        asked: formatQuantity(need.asked, need.unit, { digits: 3 }),
        verdict: margin === undefined ? 'unknown' : margin < 1 ? 'fails' : margin < exact ? 'tight' : 'fits',
        says: there === undefined ? 'not known' : `has ${formatQuantity(there, need.unit, { digits: 3 })}`,
        paths: [`${prefix}.${fact}`],
      };
    }
  }
}

/** Terminals shared among the signals; what is not known is tried as none and as plenty. */
function signalRows(
  signals: readonly Signals[],
  facts: OwnFacts,
  prefix: string,
  waived: ReadonlySet<string>,
): Row[] {
  const PLENTY = 1e6;
  const supplies = [...new Set(signals.flatMap(({ sort }) => SIGNALS[sort].serves as readonly CountId[]))];
  const count = (id: CountId): number | undefined => facts.value(id);
  const takes = facts.choice('inputs-take');
  const mayTake = (sort: SignalId, plenty: boolean): boolean =>
    (sort === 'pnp-24v' && (takes === undefined ? plenty : takes !== 'npn')) ||
    (sort === 'npn-24v' && (takes === undefined ? plenty : takes !== 'pnp')) ||
    (sort !== 'pnp-24v' && sort !== 'npn-24v');
  /** How much is left for one sort when the others have taken theirs: so a shortage shows at all that share it. */
  const leftFor = (n: number, wish: (each: Signals) => number, own: number, plenty: boolean): number => {
    const order = [...signals.filter((_, at) => at !== n), signals[n]!];
    const given = share(
      order.map((each, at) => (at === order.length - 1 ? own : wish(each))),
      supplies.map((id) => count(id) ?? (plenty ? PLENTY : 0)),
      order.map(({ sort }) =>
        mayTake(sort, plenty) ? SIGNALS[sort].serves.map((id) => supplies.indexOf(id)) : [],
      ),
    );
    return given.at(-1)!.reduce((sum, each) => sum + each, 0);
  };
  const needed = (each: Signals): number => each.count;
  return signals.map((each, n): Row => {
    const { sort, count: asked, withSpares } = each;
    const most = leftFor(n, needed, asked, true);
    const least = leftFor(n, needed, PLENTY, false);
    const spared = leftFor(n, (other) => other.withSpares, withSpares, false);
    const verdict: Verdict =
      most < asked ? 'fails' : least < asked ? 'unknown' : spared < withSpares ? 'tight' : 'fits';
    const serves = SIGNALS[sort].serves as readonly CountId[];
    const known = serves.filter((id) => count(id) !== undefined);
    const has =
      known.length === 0
        ? 'not known'
        : known.map((id) => `${count(id)} × ${countFacts[id].name}`).join(', ');
    const paths = [...serves, ...(sort === 'pnp-24v' || sort === 'npn-24v' ? ['inputs-take'] : [])].map(
      (id) => `${prefix}.${id}`,
    );
    return {
      id: sort,
      group: 'Inputs and outputs',
      name: SIGNALS[sort].name,
      asked: withSpares > asked ? `${asked}, ${withSpares} with spares` : String(asked),
      verdict,
      says:
        verdict === 'unknown'
          ? known.length === 0
            ? 'not known'
            : `not known in full: ${has}`
          : verdict === 'fails'
            ? takes !== undefined && !mayTake(sort, true)
              ? `its inputs do not take these sensors`
              : `has ${has}; with the rest of what is asked, ${most} of them ${most === 1 ? 'is' : 'are'} left where ${asked} ${asked === 1 ? 'is' : 'are'} wanted`
            : `${has}; room for ${least - asked} more`,
      waived: serves.every((id) => waived.has(id)),
      paths,
    };
  });
}

const list = (names: readonly string[]): string =>
  names.length > 4 ? `${names.slice(0, 4).join(', ')} and ${names.length - 4} more` : names.join(', ');

function sentenceOf(name: string, rows: readonly Row[]): string {
  const of = (verdict: Verdict): string[] =>
    rows.filter((row) => row.verdict === verdict).map((row) => row.name);
  const [lacks, open, few] = [of('fails'), of('unknown'), of('tight')];
  if (rows.length === 0) return 'Nothing is asked of it yet.';
  return [
    lacks.length > 0 ? `${name} lacks: ${list(lacks)}.` : '',
    open.length > 0 ? `Not known: ${list(open)}.` : '',
    few.length > 0 ? `Little to spare: ${list(few)}.` : '',
    lacks.length + open.length + few.length === 0 ? `${name} has all that is asked.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

/** Questions for the seller: what is not known, and what seems to be lacking, each with what it is for. */
function askText(name: string, rows: readonly Row[]): string {
  const asks = rows.filter(({ verdict }) => verdict === 'unknown' || verdict === 'fails');
  if (asks.length === 0) return '';
  const question = (row: Row): string =>
    row.id === 'outputs-give'
      ? `Do its 24 V outputs give plus, or pull to minus? I need them to ${row.asked === 'plus' ? 'give plus' : 'pull to minus'}.`
      : row.id === 'output-current'
        ? `How much current does one 24 V output switch, and a group of them together? I need ${row.asked}.`
        : row.group === 'Inputs and outputs'
          ? `How many of these does it have free, and which kind: ${row.name}? I need ${row.asked}.`
          : row.asked === 'yes'
            ? `Does it do this: ${row.name}? (It ${row.verdict === 'fails' ? 'seems not to' : 'is not said anywhere'}.)`
            : `${capital(row.name)}: how many, or which? I need ${row.asked}.`;
  return [
    `About the control “${name}”. Before I buy it I should like to know:`,
    ...asks.map((row, n) => `${n + 1}. ${question(row)}`),
    'Please answer with the page of the manual, or an option that has to be bought besides.',
  ].join('\n');
}
