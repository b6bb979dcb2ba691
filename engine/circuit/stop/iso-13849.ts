/**
 * Numbers of ISO 13849-1 for an indication only. The editions of 2015 and 2023 number tables differently; clauses here are
 * those of 2015, recalled from memory unless said otherwise. Nothing that comes out of this is a certificate.
 */

/** Where a number comes from, and how far it may be trusted. */
export interface Clause {
  readonly what: string;
  /** 'ISO 13849-1:2015, 4.5.2, Table 4' */
  readonly clause: string;
  readonly status: 'value found quoted by a maker, clause recalled' | 'recalled, check the standard';
}

const recalled = (what: string, clause: string): Clause => ({
  what,
  clause: `ISO 13849-1:2015, ${clause}`,
  status: 'recalled, check the standard',
});
const quoted = (what: string, clause: string): Clause => ({
  ...recalled(what, clause),
  status: 'value found quoted by a maker, clause recalled',
});

/** Everything of the standard that the estimate rests on. The edition of 2023 numbers its tables otherwise. */
export const CLAUSES = {
  categories: recalled('what each category asks for, and the level it ends at', '6.2 and Table 10'),
  operations: quoted('operations a year until one in ten has failed', 'C.4.2, formula C.1'),
  usualSmallLoad: quoted('usual operations of a relay at small load', 'Table C.1'),
  usualB10d: recalled('usual operations of other parts', 'Table C.1'),
  channel: recalled('parts of one channel taken together', 'D.1, formula D.1'),
  symmetric: recalled('two unlike channels as one', 'D.2, formula D.2'),
  cap: quoted('no channel counts for more than 100 years, 2500 in category 4', '4.5.2'),
  mttfdBand: quoted('years: low from 3, medium from 10, high from 30', '4.5.2, Table 4'),
  coverageBand: recalled('coverage: low from 60 %, medium from 90 %, high from 99 %', '4.5.3, Table 5'),
  coverage: recalled(
    'coverage of a part: 99 % by mirror or force-guided contacts, 90 % by comparing two channels',
    'Table E.1',
  ),
  averageCoverage: recalled('coverage of all parts together', 'E.2, formula E.1'),
  commonCause: quoted('65 points against a common cause are asked for from category 2 on', 'Annex F, F.2'),
  commonCausePoints: recalled('the points themselves; the 15 for separation found quoted', 'Table F.1'),
  chart: recalled('level from category, coverage and years', '4.5.4, Figure 5 and Table 6'),
} as const satisfies Readonly<Record<string, Clause>>;

export const sayClause = ({ clause, status }: Clause): string => `${clause} (${status})`;

/** ISO 13849-1:2015, C.4.2: n_op, operations a year. */
export const operationsAYear = (days: number, hours: number, cycleSeconds: number): number =>
  (days * hours * 3600) / cycleSeconds;

/** ISO 13849-1:2015, formula C.1: years. */
export const mttfdOf = (b10d: number, operations: number): number => b10d / (0.1 * operations);

/** ISO 13849-1:2015, D.1: parts of one channel. Years. */
export const channelMttfd = (parts: readonly number[]): number =>
  1 / parts.reduce((sum, each) => sum + 1 / each, 0);

/** ISO 13849-1:2015, 4.5.2: no channel counts for more than 100 years (2500 in category 4). */
export const capped = (mttfd: number, category: Category): number =>
  Math.min(mttfd, category === '4' ? 2500 : 100);

/** ISO 13849-1:2015, formula D.2: two channels that differ, as one. */
export const symmetric = (one: number, two: number): number =>
  (2 / 3) * (one + two - 1 / (1 / one + 1 / two));

/** ISO 13849-1:2015, formula E.1: coverage and years of each part. */
export const averageCoverage = (parts: readonly (readonly [coverage: number, mttfd: number])[]): number =>
  parts.reduce((sum, [dc, m]) => sum + dc / m, 0) / parts.reduce((sum, [, m]) => sum + 1 / m, 0);

/** ISO 13849-1:2015, 4.5.2, Table 4 (bands found quoted in a component catalogue). */
export function mttfdBand(years: number): 'low' | 'medium' | 'high' | undefined {
  return years < 3 ? undefined : years < 10 ? 'low' : years < 30 ? 'medium' : 'high';
}

/** ISO 13849-1:2015, 4.5.3, Table 5 (from memory). */
export function coverageBand(dc: number): 'none' | 'low' | 'medium' | 'high' {
  return dc < 0.6 ? 'none' : dc < 0.9 ? 'low' : dc < 0.99 ? 'medium' : 'high';
}

export type Category = 'B' | '1' | '2' | '3' | '4';
export type Level = 'a' | 'b' | 'c' | 'd' | 'e';

export interface CategoryAsks {
  /** Least coverage, 0 for none. */
  readonly coverage: number;
  /** Least years of each channel. */
  readonly mttfd: number;
  /** Points against a common cause. */
  readonly commonCause: number;
  /** Well-tried parts and principles. */
  readonly wellTried: boolean;
  /** The level it ends at. */
  readonly most: Level;
}

/** ISO 13849-1:2015, 6.2.3 to 6.2.7 and Table 10 (from memory). */
export const CATEGORY_ASKS: Readonly<Record<Category, CategoryAsks>> = {
  B: { coverage: 0, mttfd: 3, commonCause: 0, wellTried: false, most: 'b' },
  '1': { coverage: 0, mttfd: 30, commonCause: 0, wellTried: true, most: 'c' },
  '2': { coverage: 0.6, mttfd: 3, commonCause: 65, wellTried: false, most: 'd' },
  '3': { coverage: 0.6, mttfd: 3, commonCause: 65, wellTried: false, most: 'd' },
  '4': { coverage: 0.99, mttfd: 30, commonCause: 65, wellTried: false, most: 'e' },
};

/** ISO 13849-1:2015, 4.5.4, Figure 5 and Table 6 (simplified method; from memory, four of its cells found quoted in a component catalogue). */
const CHART: Readonly<Record<string, readonly [low: Level | '-', medium: Level | '-', high: Level | '-']>> = {
  'B none': ['a', 'b', '-'],
  '1 none': ['-', '-', 'c'],
  '2 low': ['a', 'b', 'c'],
  '2 medium': ['b', 'c', 'd'],
  '3 low': ['b', 'c', 'd'],
  '3 medium': ['c', 'd', 'd'],
  '4 high': ['-', '-', 'e'],
};

/** The level that the simplified chart gives; undefined where it gives none. Better coverage counts as the best column. */
export function levelOf(category: Category, dc: number, mttfd: number): Level | undefined {
  const band = mttfdBand(mttfd);
  if (band === undefined) return undefined;
  const coverage = coverageBand(dc);
  const column =
    category === 'B' || category === '1'
      ? 'none'
      : category === '4'
        ? coverage
        : coverage === 'high'
          ? 'medium'
          : coverage;
  const level = CHART[`${category} ${column}`]?.[{ low: 0, medium: 1, high: 2 }[band]];
  return level === undefined || level === '-' ? undefined : level;
}

/** Failures an hour of one channel without test: ISO 13849-1:2015, Table K.1, categories B and 1, exact by its formula. */
export const singleChannel = (mttfd: number): number => 1 / (mttfd * 8760);

/** Two channels by a Markov model (2 % common cause, 20 years): the plausibility of Table K.1, categories 3 and 4. */
export function twoChannels(mttfd: number, dc: number): number {
  const lam = 1 / (mttfd * 8760);
  const u = 2 * 0.98 * lam * (1 - dc);
  const q = u + lam;
  const T = 175_200;
  const p = (u / q) * (1 + Math.expm1(-q * T) / (q * T));
  return 0.02 * lam * (1 - p) + lam * p;
}

/** ISO 13849-1:2015, 4.5.1, Table 2 (quoted in a machine manual): the level of a rate of dangerous failures an hour. */
export const levelOfRate = (rate: number): Level | undefined =>
  rate < 1e-7
    ? 'e'
    : rate < 1e-6
      ? 'd'
      : rate < 3e-6
        ? 'c'
        : rate < 1e-5
          ? 'b'
          : rate < 1e-4
            ? 'a'
            : undefined;

/** Usual operations until one in ten has failed: ISO 13849-1:2015, Table C.1 (from memory). The maker's value comes first. */
export const USUAL_B10D = {
  contactor: 1_300_000,
  'small load': 20_000_000,
  'emergency stop': 100_000,
  'position switch': 20_000_000,
  'push button': 100_000,
} as const;

/** ISO 13849-1:2015, Table F.1 (from memory): points against common cause; 65 of 100 are asked for from category 2 on. */
export const COMMON_CAUSE: Readonly<Record<string, { readonly points: number; readonly asks: string }>> = {
  'ccf-separation': { points: 15, asks: 'the wires of the two channels run apart, in cables of their own' },
  'ccf-diversity': { points: 20, asks: 'the two channels work in different ways' },
  'ccf-protection': { points: 15, asks: 'nothing can get too high a voltage, current or pressure' },
  'ccf-proven': { points: 5, asks: 'all parts are well tried' },
  'ccf-analysis': { points: 5, asks: 'somebody has gone through its faults one by one' },
  'ccf-training': { points: 5, asks: 'whoever built it was taught about common causes' },
  'ccf-environment': { points: 25, asks: 'dirt and electrical noise are kept out, and that was tested' },
  'ccf-other': { points: 10, asks: 'heat, shock, vibration and damp are within what the parts allow' },
};
