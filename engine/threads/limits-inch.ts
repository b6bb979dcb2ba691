/** Limits of Unified, Whitworth and parallel pipe threads. */
import { threadToleranceUnified } from '../handbook/thread-tolerance-unified.ts';
import { threadToleranceWhitworth } from '../handbook/thread-tolerance-whitworth.ts';
import type { Result } from '../quantity/index.ts';
import { ISO_228, PIPE_SIZES } from '../tables/thread-pipe.ts';
import { ONE_DIAMETER } from '../tables/thread-unified.ts';
import { basicSizes, work } from './dimensions.ts';
import { INCH, MM, problem } from './text.ts';
import type { Limits, Thread } from './types.ts';

const UNIFIED_FACTOR: Readonly<Record<string, number>> = { 1: 1.5, 2: 1, 3: 0.75 };

const rounded = (inch: number, digits: number): number =>
  Math.round(inch * 10 ** digits + 1e-7) / 10 ** digits;
/** To a ten-thousandth of an inch, as the standard prints its limits; a half goes up. */
const toTenth = (metres: number): number => rounded(metres / INCH, 4) * INCH;
/** Bores of classes 1B and 2B are printed to a thousandth from #6 on. */
const toThou = (metres: number): number => rounded(metres / INCH, 3) * INCH;

export function unifiedLimits(thread: Thread, text: string): Result<Limits> {
  const found = /^([123])([AB])$/i.exec(text);
  if (!found)
    return problem(
      'unknown-name',
      `“${text.slice(0, 12)}” is not a class of Unified threads: they are 1A, 2A, 3A outside and 1B, 2B, 3B inside.`,
      ['2A', '2B'],
    );
  const [, grade, letter] = found;
  const { diameter: D, pitch: P } = thread;
  const oneDiameter =
    thread.series === 'UNC' ||
    thread.series === 'UNF' ||
    (thread.series === 'UN' && ONE_DIAMETER.includes(thread.threadsPerInch!));
  const t = work(threadToleranceUnified, { D, P, LE: oneDiameter ? D : 9 * P });
  const factor = UNIFIED_FACTOR[grade!]!;
  // The standard works with six digits, then rounds each tolerance before it is added to a rounded size.
  const base = rounded(t.T_d2 / INCH, 6) * INCH;
  const bore = toTenth(grade === '3' ? t.T_D1_3 : t.T_D1);
  const basic = basicSizes(thread);
  const common = {
    className: text.toUpperCase(),
    source: 'ASME B1.1-2003, formulas of clause 5, rounded as its tables are',
    status: 'published' as const,
  };
  if (letter!.toUpperCase() === 'B') {
    const small = D < 0.138 * INCH;
    const low = small ? toTenth : toThou;
    const high = small || grade === '3' ? toTenth : toThou;
    return {
      ok: true,
      value: {
        ...common,
        side: 'internal',
        rows: [
          { key: 'D', name: 'major diameter', low: toTenth(D) },
          {
            key: 'D2',
            name: 'pitch diameter',
            low: toTenth(basic.pitchDiameter),
            high: toTenth(basic.pitchDiameter) + toTenth(1.3 * factor * base),
          },
          {
            key: 'D1',
            name: 'bore (minor diameter)',
            low: low(toTenth(basic.bore)),
            high: high(toTenth(basic.bore) + bore),
          },
        ],
      },
    };
  }
  const gap = grade === '3' ? 0 : toTenth(0.3 * base);
  const outside = grade === '1' ? t.T_d_1 : t.T_d;
  const pitchHigh = toTenth(basic.pitchDiameter) - gap;
  return {
    ok: true,
    value: {
      ...common,
      side: 'external',
      rows: [
        {
          key: 'd',
          name: 'outside (major diameter)',
          low: toTenth(D - gap - toTenth(outside)),
          high: toTenth(D - gap),
        },
        {
          key: 'd2',
          name: 'pitch diameter',
          low: toTenth(pitchHigh - toTenth(factor * base)),
          high: toTenth(pitchHigh),
        },
        // Largest root of the rounded form: 11/16 of the sharp height on each side.
        {
          key: 'd3',
          name: 'root (rounded, UNR)',
          high: toTenth(D - (((11 / 8) * Math.sqrt(3)) / 2) * P - gap),
        },
      ],
    },
  };
}

const WHITWORTH_FACTOR: Readonly<Record<string, number>> = {
  close: 2 / 3,
  medium: 1,
  free: 1.5,
  normal: 1.5,
};

export function whitworthLimits(thread: Thread, text: string, side: 'external' | 'internal'): Result<Limits> {
  const name = text.toLowerCase();
  const allowed = side === 'external' ? ['close', 'medium', 'free'] : ['medium', 'normal'];
  const factor = allowed.includes(name) ? WHITWORTH_FACTOR[name] : undefined;
  if (factor === undefined)
    return problem(
      'unknown-name',
      `“${text.slice(0, 12)}” is not a class of Whitworth threads: they are close, medium and free outside, medium and normal inside.`,
      ['medium'],
    );
  const { diameter: D, pitch: P } = thread;
  const t = work(threadToleranceWhitworth, { D, P, L: D });
  const basic = basicSizes(thread);
  const crest = factor * t.T;
  const common = {
    className: name,
    side,
    source: 'BS 84, formulas from memory',
    status: 'from memory' as const,
    note: 'Recalled, check the standard before you rely on it.',
  };
  return {
    ok: true,
    value: {
      ...common,
      rows:
        side === 'external'
          ? [
              { key: 'd', name: 'outside (major diameter)', low: D - crest - (t.T_d - t.T), high: D },
              {
                key: 'd2',
                name: 'pitch diameter',
                low: basic.pitchDiameter - crest,
                high: basic.pitchDiameter,
              },
              { key: 'd1', name: 'root', low: basic.root - crest - (t.T_d1 - t.T), high: basic.root },
            ]
          : [
              { key: 'D', name: 'major diameter', low: D },
              {
                key: 'D2',
                name: 'pitch diameter',
                low: basic.pitchDiameter,
                high: basic.pitchDiameter + crest,
              },
              { key: 'D1', name: 'bore (minor diameter)', low: basic.bore, high: basic.bore + t.T_D1 },
            ],
    },
  };
}

/** G threads: class A or B outside, one class inside. */
export function pipeLimits(thread: Thread, text: string, side: 'external' | 'internal'): Result<Limits> {
  const size = PIPE_SIZES.find((each) => each.size === thread.size)!;
  const name = text.toUpperCase();
  if (name !== 'A' && name !== 'B')
    return problem(
      'unknown-name',
      `“${text.slice(0, 12)}” is not a class of G threads: they are A (close) and B (twice as wide), outside only.`,
      ['A', 'B'],
    );
  const basic = basicSizes(thread);
  const tolerance = size.pitchTolerance * MM;
  const wide = name === 'B' ? 2 : 1;
  const common = { source: ISO_228, status: 'published' as const };
  return {
    ok: true,
    value:
      side === 'internal'
        ? {
            ...common,
            side,
            className: 'the only one',
            rows: [
              { key: 'D', name: 'major diameter', low: thread.diameter },
              {
                key: 'D2',
                name: 'pitch diameter',
                low: basic.pitchDiameter,
                high: basic.pitchDiameter + tolerance,
              },
              {
                key: 'D1',
                name: 'bore (minor diameter)',
                low: basic.bore,
                high: basic.bore + size.boreTolerance * MM,
              },
            ],
          }
        : {
            ...common,
            side,
            className: name,
            rows: [
              {
                key: 'd',
                name: 'outside (major diameter)',
                low: thread.diameter - 2 * tolerance,
                high: thread.diameter,
              },
              {
                key: 'd2',
                name: 'pitch diameter',
                low: basic.pitchDiameter - wide * tolerance,
                high: basic.pitchDiameter,
              },
            ],
          },
  };
}
