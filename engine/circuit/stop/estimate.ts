/** How far a circuit could go by its structure among the categories of ISO 13849-1, and the simplified estimate. An indication, no more. */
import { formatNumber, formatQuantity } from '../../quantity/index.ts';
import type { StopCircuit } from '../../refit/types.ts';
import type { NamedFault } from './faults.ts';
import * as iso from './iso-13849.ts';
import type { Judgement } from './judge.ts';
import { isKind, kindSpec } from './kinds.ts';
import { type Read, readSettings } from './settings.ts';

export interface EstimatePart {
  readonly element: string;
  /** Years. */
  readonly mttfd: number;
  readonly coverage: number;
  readonly says: string;
  /** 'ISO 13849-1:2015, Table C.1 (recalled, check the standard)', or its maker. */
  readonly source: string;
}

export interface Estimate {
  /** What its structure would allow, were all else there; it claims nothing. */
  readonly atMost: 'B or 1' | '3' | '4' | 'none';
  readonly why: string;
  /** What is not there yet of what that category asks for: 'the coverage is high (at least 99 %); here it is 91 %'. */
  readonly claim: readonly string[];
  readonly channels: number;
  readonly parts: readonly EstimatePart[];
  /** Years for each channel, capped. */
  readonly mttfd: number | undefined;
  readonly coverage: number | undefined;
  readonly commonCause: number;
  /** The level by the simplified chart; undefined where there is none. */
  readonly level: iso.Level | undefined;
  /** What was left out, and what would be needed. */
  readonly missing: readonly string[];
  /** What it rests on, with the clause of each. */
  readonly sources: readonly { readonly what: string; readonly source: string }[];
}

const DEFAULT_USES = 500;
/** An average of equal shares may miss them by its last bits. */
const ROUNDING = 1e-9;

export function estimateOf(
  circuit: StopCircuit,
  answers: Read,
  judged: readonly (readonly [NamedFault, Judgement])[],
): Estimate {
  // Holding an axis up is a function of its own, beside stopping.
  const counted = judged.filter(([fault]) => !fault.mayExclude && fault.group !== 'brake');
  const dangerous = counted.filter(([, { verdict }]) => verdict === 'dangerous').length;
  const unnoticed = counted.filter(([, { verdict }]) => verdict === 'unnoticed').length;
  const channels = dangerous > 0 ? 1 : 2;
  const atMost = counted.length === 0 ? 'none' : dangerous > 0 ? 'B or 1' : unnoticed > 0 ? '3' : '4';
  const uses = answers['uses-a-year'] ?? DEFAULT_USES;
  const missing: string[] = [];
  if (answers['uses-a-year'] === undefined)
    missing.push(`how often it is used: ${DEFAULT_USES} times a year is taken`);
  const parts: EstimatePart[] = [];
  for (const element of Object.values(circuit.elements)) {
    const part = partOf(element, uses, judged, missing);
    if (part) parts.push(part);
  }
  const commonCause = Object.entries(iso.COMMON_CAUSE).reduce(
    (sum, [id, { points }]) => sum + (answers[id] === 1 ? points : 0),
    0,
  );
  const category: iso.Category =
    atMost === '4' || atMost === '3' ? atMost : answers['ccf-proven'] === 1 ? '1' : 'B';
  const switches = parts.filter(({ element }) =>
    ['contactor', 'relay'].includes(circuit.elements[element]!.kind),
  );
  const others = parts.filter((part) => !switches.includes(part));
  const years = parts.length === 0 ? undefined : channelsOf(others, switches, channels);
  const mttfd = years === undefined ? undefined : iso.capped(years, category);
  const coverage =
    parts.length === 0 || channels === 1
      ? undefined
      : iso.averageCoverage(parts.map((part) => [part.coverage, part.mttfd]));
  const claim = atMost === 'none' ? [] : lacking(category, { mttfd, coverage, commonCause, missing });
  const level = claim.length > 0 || mttfd === undefined ? undefined : levelOf(category, coverage ?? 0, mttfd);
  return {
    atMost,
    why:
      atMost === 'none'
        ? 'Nothing could be examined.'
        : dangerous > 0
          ? `${dangerous === 1 ? 'One single fault is' : `${dangerous} single faults are`} dangerous, so it counts as one channel.`
          : unnoticed > 0
            ? `No single fault that was examined is dangerous, and ${unnoticed} are not noticed.`
            : 'No single fault that was examined is dangerous, and all are noticed.',
    claim,
    channels,
    parts,
    mttfd,
    coverage,
    commonCause,
    level,
    missing,
    sources: Object.values(iso.CLAUSES).map((each) => ({ what: each.what, source: iso.sayClause(each) })),
  };
}

/** In category B years above the medium band count as medium: it ends at level b. */
const levelOf = (category: iso.Category, coverage: number, mttfd: number): iso.Level | undefined =>
  iso.levelOf(category, coverage, category === 'B' && iso.mttfdBand(mttfd) === 'high' ? 10 : mttfd);

/** What a category asks for and is not there, each to follow 'not claimable until'. */
function lacking(
  category: iso.Category,
  { mttfd, coverage, commonCause, missing }: Pick<Estimate, 'mttfd' | 'coverage' | 'commonCause' | 'missing'>,
): readonly string[] {
  const asks = iso.CATEGORY_ASKS[category];
  const two = asks.commonCause > 0;
  const percent = (share: number): string => formatQuantity(share, '%', { digits: 3 });
  const here = (value: string | undefined): string =>
    value === undefined ? 'here it is not known' : `here it is ${value}`;
  return [
    ...(two && (coverage ?? 0) < asks.coverage - ROUNDING
      ? [
          `its parts find at least ${percent(asks.coverage)} of their own dangerous failures (coverage; ${here(coverage === undefined ? undefined : percent(coverage))})`,
        ]
      : []),
    ...(commonCause < asks.commonCause
      ? [
          `${asks.commonCause} of 100 points against a common cause are answered with yes (annex F; here ${commonCause})`,
        ]
      : []),
    ...(mttfd === undefined || mttfd < asks.mttfd
      ? [
          `each channel has at least ${asks.mttfd} years to a dangerous failure (${here(mttfd === undefined ? undefined : `${formatNumber(mttfd, 3)} years`)})`,
        ]
      : []),
    ...(missing.length > 0 ? ['what is listed as not known below is known'] : []),
  ];
}

function channelsOf(
  others: readonly EstimatePart[],
  switches: readonly EstimatePart[],
  channels: number,
): number {
  const years = (list: readonly EstimatePart[]) => list.map(({ mttfd }) => mttfd);
  if (channels === 1 || switches.length < 2) return iso.channelMttfd(years([...others, ...switches]));
  const half = Math.ceil(switches.length / 2);
  return iso.symmetric(
    iso.channelMttfd(years([...others, ...switches.slice(0, half)])),
    iso.channelMttfd(years([...others, ...switches.slice(half)])),
  );
}

function partOf(
  { id, kind, settings }: StopCircuit['elements'][string],
  uses: number,
  judged: readonly (readonly [NamedFault, Judgement])[],
  missing: string[],
): EstimatePart | undefined {
  if (!isKind(kind)) return undefined;
  const usual =
    kind === 'contactor'
      ? iso.USUAL_B10D.contactor
      : kind === 'relay'
        ? iso.USUAL_B10D['small load']
        : kind === 'mushroom'
          ? iso.USUAL_B10D['emergency stop']
          : kind === 'door' || kind === 'limit' || kind === 'locked-door'
            ? iso.USUAL_B10D['position switch']
            : undefined;
  const own = readSettings(kindSpec(kind).settings, settings, '');
  const read = own.ok ? own.value : {};
  const coverage = coverageOf(id, kind === 'contactor' || kind === 'relay', judged);
  if (usual === undefined) {
    if (kind !== 'safety-relay' && kind !== 'delayed-relay') return undefined;
    if (read.mttfd === undefined) {
      missing.push(`${id}: the maker’s mean time to a dangerous failure; it is left out`);
      return undefined;
    }
    return {
      element: id,
      mttfd: read.mttfd,
      coverage: 0.99,
      says: `${formatNumber(read.mttfd)} years`,
      source: 'by its maker',
    };
  }
  const b10d = read.b10d ?? usual;
  return {
    element: id,
    mttfd: iso.mttfdOf(b10d, uses),
    coverage,
    says: `${formatNumber(b10d)} operations until one in ten has failed`,
    source:
      read.b10d === undefined
        ? iso.sayClause(iso.CLAUSES[kind === 'relay' ? 'usualSmallLoad' : 'usualB10d'])
        : 'by its maker',
  };
}

/** Table E.1 (recalled): 0.99 where mirror or force-guided contacts tell, 0.9 where two channels are compared, else 0. */
function coverageOf(
  element: string,
  isSwitch: boolean,
  judged: readonly (readonly [NamedFault, Judgement])[],
): number {
  const own = judged.filter(
    ([{ element: of, faults, mayExclude }]) =>
      of === element && !mayExclude && faults.some(({ kind }) => kind === 'contact-closed'),
  );
  const told = own.length > 0 && own.every(([, { verdict }]) => verdict === 'noticed' || verdict === 'stops');
  return told ? (isSwitch ? 0.99 : 0.9) : 0;
}
