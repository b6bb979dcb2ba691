/** Unified and Whitworth threads, and inch sizes without a name. */
import type { Result } from '../quantity/index.ts';
import { CONSTANT_PITCHES, UNIFIED_SIZES, type UnifiedSize } from '../tables/thread-unified.ts';
import { WHITWORTH_SIZES } from '../tables/thread-whitworth.ts';
import type { Common } from './parse.ts';
import { DEGREE, INCH, inches, NUMBER, number, orList, plainNumber, problem, SIZE } from './text.ts';
import type { Family, Thread } from './types.ts';

interface Inch {
  readonly size: string;
  readonly numbered: boolean;
  readonly tpi?: number;
}

/** Size and threads per inch of what is left when the name is out; undefined where it is not such a text. */
function readInch(text: string): Inch | undefined {
  const found = new RegExp(
    `^(${SIZE})(?: ?(?:"|in|inch))?(?:(?: ?[x-] ?| )(${NUMBER})(?: ?(?:tpi|threads?(?: per inch)?))?)?$`,
    'i',
  ).exec(text.replace(/^[ ,x-]+|[ ,x-]+$/g, ''));
  if (!found) return undefined;
  const [, sizeText, tpiText] = found;
  const tpi = tpiText === undefined ? undefined : number(tpiText);
  if (tpiText !== undefined && tpi === undefined) return undefined;
  const numbered = /^(?:#|no)/i.test(sizeText!);
  const size = sizeText!.replace(/^(?:#|no\.? ?)/i, '').replace(/^(\d+)-(?=\d+\/)/, '$1 ');
  return { size, numbered, ...(tpi === undefined ? {} : { tpi }) };
}

const PITCHES = ['unc', 'unf', 'unef'] as const;
type Series = (typeof PITCHES)[number];

function make(
  family: Family,
  name: {
    size: string;
    series: string;
    angle: number;
    notes: readonly string[];
    className?: string | undefined;
  },
  d: number,
  tpi: number,
  common: Common,
): Result<Thread> {
  const P = 1 / tpi;
  const fromLead = common.lead === undefined ? undefined : common.lead / (P * INCH);
  const starts = common.starts ?? (fromLead === undefined ? 1 : Math.round(fromLead));
  if (fromLead !== undefined && (starts < 1 || Math.abs(fromLead - starts) > 1e-3))
    return problem('out-of-domain', 'The lead must be a whole number of pitches.');
  const plain = `${name.size}-${plainNumber(tpi)} ${name.series}`;
  return {
    ok: true,
    value: {
      designation: `${plain}${starts > 1 ? ` ${starts}-start` : ''}${common.hand === 'left' ? ' LH' : ''}`,
      family,
      series: name.series,
      size: name.size,
      diameter: d * INCH,
      pitch: P * INCH,
      starts,
      lead: starts * P * INCH,
      hand: common.hand,
      flankAngle: name.angle * DEGREE,
      taper: 0,
      threadsPerInch: tpi,
      ...(name.className === undefined ? {} : { className: name.className }),
      notes: name.notes,
    },
  };
}

/** Sizes that the text may mean: 10 is a number size, 1 is both #1 and one inch. */
function unifiedSizes({ size, numbered }: Inch): UnifiedSize[] {
  const value = inches(size);
  if (value === undefined) return [];
  return UNIFIED_SIZES.filter(
    (each) => (!numbered && Math.abs(each.d - value) < 1e-5) || each.size === `#${Number(size)}`,
  );
}

const pairsOf = (size: UnifiedSize): [Series, number][] =>
  PITCHES.flatMap((series) =>
    size[series] === undefined ? [] : [[series, size[series]] as [Series, number]],
  );

const nameOf = (size: UnifiedSize, series: Series, tpi: number): string =>
  `${size.size}-${plainNumber(tpi)} ${series.toUpperCase()}`;

export function parseUnified(text: string, common: Common): Result<Thread> {
  const classed = /[ -]*\b([123][ab])\b/i.exec(text);
  const className = classed?.[1]?.toUpperCase();
  let rest = classed ? text.replace(classed[0], ' ') : text;
  const word = /un(?:r|j)?(c|f|ef|s)?\b/i.exec(rest);
  if (/unj/i.test(rest))
    return problem(
      'unknown-name',
      'UNJ threads have a root of their own that is not in the book; UNC and UNF are, such as 1/4-20 UNC.',
    );
  const series = word?.[1] === undefined ? 'un' : (`un${word[1].toLowerCase()}` as Series | 'uns' | 'un');
  rest = rest
    .replace(/un(?:r)?(?:c|f|ef|s)?\b/i, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const read = readInch(rest);
  if (!read)
    return problem(
      'malformed',
      'That is not how a Unified thread is written; write 1/4-20 UNC, #10-32 UNF or 1 1/8-7 UNC-2A.',
      ['1/4-20 UNC'],
    );
  const sizes = unifiedSizes(read);
  const named = (each: Series): boolean => series === each;
  const fits = sizes.flatMap((size) =>
    pairsOf(size)
      .filter(([each]) => series === 'un' || series === 'uns' || named(each))
      .map(([each, tpi]) => ({ size, each, tpi })),
  );
  if (series === 'un' || series === 'uns') {
    const value = inches(read.size);
    const fine = (each: UnifiedSize): boolean => read.tpi === undefined || 0.3 * each.d * read.tpi >= 1;
    // 6-12 UN is six inches: no number size has so coarse a thread.
    const size =
      sizes.find((each) => each.size.startsWith('#') && fine(each)) ??
      sizes.find((each) => !each.size.startsWith('#'));
    const d = size?.d ?? value;
    if (d === undefined || d < 0.06 || d > 6)
      return problem('out-of-domain', 'The diameter must be from #0 to 6 in, such as 3/4-12 UN.');
    if (read.tpi === undefined)
      return problem(
        'ambiguous',
        `Say the threads per inch: ${orList(fits.map(({ size: s, each, tpi }) => nameOf(s, each, tpi)))}.`,
        fits.map(({ size: s, each, tpi }) => nameOf(s, each, tpi)),
      );
    if (!(read.tpi >= 2.5 && read.tpi <= 80 && 1.5 / read.tpi <= d))
      return problem(
        'out-of-domain',
        `${plainNumber(read.tpi)} threads per inch do not go with that size; they must be from 2.5 to 80.`,
      );
    const constant = CONSTANT_PITCHES.includes(read.tpi);
    return make(
      'unified',
      {
        size: size?.size ?? read.size,
        series: constant ? 'UN' : 'UNS',
        angle: 60,
        className,
        notes: constant ? [] : ['Not a series of the standard: taps and gauges for it are special.'],
      },
      d,
      read.tpi,
      common,
    );
  }
  if (fits.length === 0)
    return problem(
      'out-of-domain',
      sizes.length > 0
        ? `${sizes[0]!.size} has no ${series.toUpperCase()} thread; it has ${orList(sizes.flatMap((size) => pairsOf(size).map(([each, tpi]) => nameOf(size, each, tpi))))}.`
        : `“${read.size}” is not a size of the Unified series, such as 1/4, #10 or 1 1/8.`,
      sizes.flatMap((size) => pairsOf(size).map(([each, tpi]) => nameOf(size, each, tpi))),
    );
  const right = read.tpi === undefined ? fits : fits.filter(({ tpi }) => Math.abs(tpi - read.tpi!) < 1e-9);
  const [one, ...more] = right;
  if (!one)
    return problem(
      'out-of-domain',
      `${plainNumber(read.tpi!)} threads per inch is not ${series.toUpperCase()} of that size; it is ${orList(fits.map(({ size, each, tpi }) => nameOf(size, each, tpi)))}.`,
      fits.map(({ size, each, tpi }) => nameOf(size, each, tpi)),
    );
  if (more.length > 0) {
    const readings = right.map(({ size, each, tpi }) => nameOf(size, each, tpi));
    return problem('ambiguous', `That can be ${orList(readings)}; say which.`, readings);
  }
  return make(
    'unified',
    { size: one.size.size, series: one.each.toUpperCase(), angle: 60, className, notes: [] },
    one.size.d,
    one.tpi,
    common,
  );
}

export function parseWhitworth(text: string, common: Common): Result<Thread> {
  const classed = /[ -]*\b(close|medium|free|normal)\b/i.exec(text);
  const className = classed?.[1]?.toLowerCase();
  const rest0 = classed ? text.replace(classed[0], ' ') : text;
  const series = /bsf/i.test(rest0) ? 'bsf' : 'bsw';
  const rest = rest0
    .replace(/b\.?s\.?[wf]\.?|whit(?:worth)?\.?|^w(?= ?\d)/i, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const read = readInch(rest);
  const value = read && !read.numbered ? inches(read.size) : undefined;
  if (!read || value === undefined)
    return problem(
      'malformed',
      'That is not how a Whitworth thread is written; write 5/16 BSW, 5/16-18 BSW or 3/8 BSF.',
      ['5/16 BSW'],
    );
  const size = WHITWORTH_SIZES.find((each) => Math.abs(each.d - value) < 1e-5);
  const tpi = size?.[series];
  if (!size || tpi === undefined) {
    const other = size && (series === 'bsw' ? size.bsf : size.bsw);
    return problem(
      'out-of-domain',
      other === undefined
        ? `“${read.size}” is not a Whitworth size, such as 1/4, 5/16 or 1 1/8.`
        : `${size!.size} has no ${series.toUpperCase()} thread; it has ${size!.size}-${plainNumber(other)} ${series === 'bsw' ? 'BSF' : 'BSW'}.`,
    );
  }
  if (read.tpi !== undefined && Math.abs(read.tpi - tpi) > 1e-9)
    return problem(
      'out-of-domain',
      `${size.size} ${series.toUpperCase()} has ${plainNumber(tpi)} threads per inch, not ${plainNumber(read.tpi)}.`,
      [`${size.size}-${plainNumber(tpi)} ${series.toUpperCase()}`],
    );
  return make(
    'whitworth',
    { size: size.size, series: series.toUpperCase(), angle: 55, className, notes: [] },
    size.d,
    tpi,
    common,
  );
}

/** '1/4" x 20 tpi', '1/2': an inch size without a name. Only what is one thread alone is taken. */
export function parseBareInch(text: string, common: Common): Result<Thread> {
  const read = readInch(text);
  const value = read ? inches(read.size) : undefined;
  const unknown = problem(
    'unknown-name',
    'Which thread that is was not understood. Begin with its kind: M10x1.25, 1/4-20 UNC, 5/16 BSW, G 1/2, R 1/2, 1/2-14 NPT, Tr 40x7.',
  );
  if (!read || value === undefined) {
    const metric = new RegExp(`^(${NUMBER}) ?(?:mm)? ?x ?(${NUMBER}) ?(?:mm)?$`, 'i').exec(text);
    return metric
      ? problem('ambiguous', 'A thread by diameter and pitch alone does not say its profile.', [
          `M${metric[1]}x${metric[2]}`,
          `Tr ${metric[1]}x${metric[2]}`,
        ])
      : unknown;
  }
  const close = (tpi: number | undefined): boolean =>
    tpi !== undefined && (read.tpi === undefined || Math.abs(tpi - read.tpi) < 1e-9);
  const unified = unifiedSizes(read).flatMap((size) =>
    pairsOf(size)
      .filter(([, tpi]) => close(tpi))
      .map(([each, tpi]) => nameOf(size, each, tpi)),
  );
  const inch = read.numbered ? [] : WHITWORTH_SIZES.filter((each) => Math.abs(each.d - value) < 1e-5);
  const whitworth = inch.flatMap((size) => [
    ...(close(size.bsw) ? [`${size.size}-${plainNumber(size.bsw!)} BSW`] : []),
    ...(close(size.bsf) ? [`${size.size}-${plainNumber(size.bsf!)} BSF`] : []),
  ]);
  const pipe = read.tpi === undefined && inch.length > 0 ? [`G ${inch[0]!.size}`, `R ${inch[0]!.size}`] : [];
  const readings = [...unified, ...whitworth, ...pipe];
  if (readings.length > 1)
    return problem(
      'ambiguous',
      `That can be several threads that do not fit each other (60° or 55° flanks). Say which: ${orList(readings)}.`,
      readings,
    );
  if (unified.length === 1) return noted(parseUnified(unified[0]!, common));
  if (whitworth.length === 1) return noted(parseWhitworth(whitworth[0]!, common));
  if (/x/i.test(text) && read.tpi !== undefined && !read.size.includes('/') && !/"|in\b|tpi/i.test(text))
    return problem('ambiguous', 'A thread by diameter and pitch alone does not say its profile.', [
      `M${read.size}x${plainNumber(read.tpi)}`,
      `Tr ${read.size}x${plainNumber(read.tpi)}`,
    ]);
  return unknown;
}

const noted = (result: Result<Thread>): Result<Thread> =>
  result.ok
    ? {
        ok: true,
        value: {
          ...result.value,
          notes: [`The only thread with that size and pitch is ${result.value.designation}.`],
        },
      }
    : result;
