/** All basic sizes of a thread, each from a sheet of the handbook. */
import { threadForm55 } from '../handbook/thread-form-55.ts';
import { threadForm60 } from '../handbook/thread-form-60.ts';
import { threadFormTrapezoidal } from '../handbook/thread-form-trapezoidal.ts';
import { threadHelix } from '../handbook/thread-helix.ts';
import { threadNpt } from '../handbook/thread-npt.ts';
import { threadTaper } from '../handbook/thread-taper.ts';
import { threadWires } from '../handbook/thread-wires.ts';
import { evaluate, type Given, type Sheet } from '../sheet/index.ts';
import { NPT_SIZES } from '../tables/thread-npt.ts';
import { ISO_7, PIPE_SIZES } from '../tables/thread-pipe.ts';
import { trapezoidalClearance } from '../tables/thread-trapezoidal.ts';
import { DEGREE, INCH, MM } from './text.ts';
import type { Dimension, Side, Thread } from './types.ts';

/** What the plans and drawings need, metres. */
export interface Basic {
  /** Outside of the bolt; of the nut's groove where it is another. */
  readonly major: number;
  readonly pitchDiameter: number;
  /** Root of the bolt. */
  readonly root: number;
  /** Bore of the nut. */
  readonly bore: number;
  /** Depth a single-point tool goes, on the radius. */
  readonly depth: Readonly<Record<Side, number>>;
  /** Width of the flat the tool may have at its tip; 0 for a V thread. */
  readonly tip: number;
}

/** Clearance beyond the slope of the thread that is usual for the side of a tool. */
const SIDE_CLEARANCE = 3 * DEGREE;

/** Values of a sheet's derived symbols; throws where one has none, which a parsed thread never causes. */
export function work<K extends string>(sheet: Sheet<K>, given: Given<K>): Record<K, number> {
  const outcomes = evaluate(sheet, given);
  const values = {} as Record<K, number>;
  for (const key of sheet.order) {
    const outcome = outcomes[key];
    if (outcome.state === 'known') values[key] = outcome.value;
    else if (sheet.derived.includes(key))
      throw new RangeError(
        `${sheet.id}.${key} has no value: ${outcome.state === 'undefined' ? outcome.reason : 'something is missing'}`,
      );
  }
  return values;
}

/** The named symbols of a sheet as sizes with their words and sources. */
function sizes<K extends string>(sheet: Sheet<K>, given: Given<K>, keys: readonly K[]): Dimension[] {
  const values = work(sheet, given);
  return keys.map((key) => {
    const spec = sheet.symbols[key];
    return {
      key: `${sheet.id}.${key}`,
      name: spec.name,
      value: values[key],
      unit: spec.unit === 'in' ? 'mm' : spec.unit,
      sheet: sheet.id,
      ...('says' in spec && spec.says ? { says: spec.says } : {}),
      source: 'source' in spec ? spec.source : '',
    };
  });
}

export function basicSizes(thread: Thread): Basic {
  const { diameter: d, pitch: P } = thread;
  if (thread.family === 'trapezoidal') {
    const s = work(threadFormTrapezoidal, { d, P, ac: trapezoidalClearance(P / MM) * MM });
    return {
      major: d,
      pitchDiameter: s.d2,
      root: s.d3,
      bore: s.D1,
      depth: { external: s.h3, internal: s.h3 },
      tip: s.w,
    };
  }
  if (thread.family === 'npt') {
    const s = work(threadNpt, { D: d, P, L1: nptLength(thread) });
    return {
      major: s.E1 + s.h,
      pitchDiameter: s.E1,
      root: s.E1 - s.h,
      bore: s.E1 - s.h,
      depth: { external: s.h, internal: s.h },
      tip: 0,
    };
  }
  if (thread.family === 'metric' || thread.family === 'unified') {
    const s = work(threadForm60, { d, P });
    return {
      major: d,
      pitchDiameter: s.d2,
      root: s.d3,
      bore: s.D1,
      depth: { external: s.h3, internal: s.H1 },
      tip: 0,
    };
  }
  const s = work(threadForm55, { d, P });
  return {
    major: d,
    pitchDiameter: s.d2,
    root: s.d1,
    bore: s.d1,
    depth: { external: s.h, internal: s.h },
    tip: 0,
  };
}

const nptLength = (thread: Thread): number => NPT_SIZES.find((each) => each.size === thread.size)!.L1 * INCH;

/** Gauge length and length of useful thread of a taper thread, metres. */
export function taperLengths(
  thread: Thread,
): { readonly gauge: number; readonly useful: number } | undefined {
  if (thread.family === 'npt') {
    const L1 = nptLength(thread);
    return { gauge: L1, useful: work(threadNpt, { D: thread.diameter, P: thread.pitch, L1 }).L2 };
  }
  const taper = PIPE_SIZES.find((each) => each.size === thread.size)?.taper;
  if (thread.family !== 'pipe-taper' || !taper) return undefined;
  return { gauge: taper.gaugeLength * MM, useful: taper.usefulLength * MM };
}

/** Every basic size with its name, what it is for, and the sheet it comes from. */
export function dimensionsOf(thread: Thread): Dimension[] {
  const { diameter: d, pitch: P, starts: z, flankAngle } = thread;
  const basic = basicSizes(thread);
  const d2 = basic.pitchDiameter;
  const w = P / (2 * Math.cos(flankAngle / 2));
  const lengths = taperLengths(thread);
  return [
    ...form(thread),
    ...(lengths
      ? sizes(threadTaper, { t: thread.taper, d: basic.major, Lg: lengths.gauge, L: lengths.useful, P }, [
          'half',
          'd_end',
          'd_big',
          'dx_turn',
          'dx',
        ]).concat([
          {
            key: 'gauge',
            name: 'length from the small end to the gauge plane',
            value: lengths.gauge,
            unit: 'mm',
            sheet: 'thread-taper',
            source: 'the standard’s table',
          },
          {
            key: 'useful',
            name: 'length of useful thread',
            value: lengths.useful,
            unit: 'mm',
            sheet: 'thread-taper',
            source: thread.family === 'npt' ? 'ASME B1.20.1' : ISO_7,
          },
        ])
      : []),
    ...sizes(threadHelix, { P, z, d2, d1: basic.root, c: SIDE_CLEARANCE }, [
      'Ph',
      'beta',
      'lead_side',
      'trail_side',
    ]),
    ...sizes(threadWires, { d2, P, a: flankAngle / 2, w }, ['w_best', 'M']),
  ].filter(({ value }) => Number.isFinite(value) && d > 0);
}

function form(thread: Thread): Dimension[] {
  const { diameter: d, pitch: P } = thread;
  if (thread.family === 'metric' || thread.family === 'unified')
    return sizes(threadForm60, { d, P }, ['d', 'P', 'd2', 'D1', 'd3', 'h3', 'H1', 'flat', 'H']);
  if (thread.family === 'trapezoidal')
    return sizes(threadFormTrapezoidal, { d, P, ac: trapezoidalClearance(P / MM) * MM }, [
      'd',
      'P',
      'd2',
      'D1',
      'd3',
      'D4',
      'h3',
      'H1',
      'ac',
      'w',
    ]);
  if (thread.family === 'npt')
    return sizes(threadNpt, { D: d, P, L1: nptLength(thread) }, [
      'D',
      'P',
      'E0',
      'E1',
      'L1',
      'L2',
      'h',
      'turns',
    ]);
  return sizes(threadForm55, { d, P }, ['d', 'P', 'd2', 'd1', 'h', 'r', 'H']);
}
