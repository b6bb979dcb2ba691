/** Limits of metric threads (ISO 965-1) and trapezoidal threads (ISO 2903). */
import { threadToleranceMetric } from '../handbook/thread-tolerance-metric.ts';
import type { Result } from '../quantity/index.ts';
import {
  DIAMETER_RANGES,
  FUNDAMENTAL_DEVIATIONS,
  GRADE_STEPS,
  ISO_965,
  PRINTED_T_D,
  PRINTED_T_D1,
  PRINTED_T_D2,
  R40,
} from '../tables/thread-metric-tolerance.ts';
import { TRAPEZOIDAL_GAP_E } from '../tables/thread-trapezoidal.ts';
import { basicSizes, work } from './dimensions.ts';
import { MM, orList, problem } from './text.ts';
import type { Limits, Thread } from './types.ts';

const UM = 1e-6;

/** Place of a number of micrometres in the series R40, counted from 1. */
function place(um: number): number {
  const decade = Math.floor(Math.log10(um) + 1e-9);
  const scaled = um / 10 ** decade;
  const candidates = [...R40, 10];
  const at = candidates.reduce(
    (best, each, index) =>
      Math.abs(each - scaled) <= Math.abs(candidates[best]! - scaled) + 1e-9 ? index : best,
    0,
  );
  return decade * R40.length + at;
}

/** The number at a place, to whole micrometres; a half goes to the even one, as the standard prints it. */
function at(index: number): number {
  const decade = Math.floor(index / R40.length);
  const value = R40[index - decade * R40.length]! * 10 ** decade;
  const floor = Math.floor(value + 1e-9);
  const rest = value - floor;
  return Math.abs(rest - 0.5) < 1e-6 ? floor + (floor % 2) : Math.round(value);
}

/** Grades the standard has for each diameter: d2, D2, d, D1. */
type Which = keyof typeof GRADE_STEPS;

/** Tolerance in metres; undefined where the standard has no such grade. `P` and `d` in millimetres. */
export function metricTolerance(which: Which, grade: number, P: number, d: number): number | undefined {
  const steps = (GRADE_STEPS[which] as Readonly<Record<number, number>>)[grade];
  const range = DIAMETER_RANGES.findLastIndex((from) => d > from + 1e-9);
  const from = DIAMETER_RANGES[range];
  const to = DIAMETER_RANGES[range + 1];
  if (steps === undefined || from === undefined || to === undefined || d > DIAMETER_RANGES.at(-1)!)
    return undefined;
  const values = work(threadToleranceMetric, { P: P * MM, d_m: Math.sqrt(from * to) * MM });
  const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;
  const printed =
    which === 'd'
      ? PRINTED_T_D.find(([each]) => same(each, P))?.[1]
      : which === 'D1'
        ? PRINTED_T_D1.find(([each]) => same(each, P))?.[1]
        : PRINTED_T_D2.find(([each, pitch]) => same(each, from) && same(pitch, P))?.[2];
  const formula = which === 'd' ? values.T_d : which === 'D1' ? values.T_D1 : values.T_d2;
  return at(place(printed ?? formula / UM) + steps) * UM;
}

/** Gap of a position in metres: below nominal outside, above it inside. */
export function metricGap(position: string, P: number): number | undefined {
  const low = position.toLowerCase();
  if (low === 'h') return 0;
  const row = FUNDAMENTAL_DEVIATIONS.find(([each]) => Math.abs(each - P) < 1e-9);
  if (row) {
    const found = low === 'g' ? row[1] : low === 'f' ? row[2] : low === 'e' ? row[3] : undefined;
    return found === undefined ? undefined : found * UM;
  }
  const values = work(threadToleranceMetric, { P: P * MM, d_m: 10 * MM });
  const found = low === 'g' ? values.g : low === 'f' ? values.f : low === 'e' ? values.e : undefined;
  return found === undefined ? undefined : Math.round(found / UM) * UM;
}

interface Class {
  readonly pitch: { readonly grade: number; readonly position: string };
  readonly crest: { readonly grade: number; readonly position: string };
}

/** '6g' or '5g6g': first the pitch diameter, then outside or bore. */
function readClass(text: string): Class | undefined {
  const found = /^([3-9])([a-hA-H])(?:([3-9])([a-hA-H]))?$/.exec(text);
  if (!found) return undefined;
  const [, grade, position, grade2 = grade, position2 = position] = found;
  if (position !== position2) return undefined;
  return {
    pitch: { grade: Number(grade), position: position! },
    crest: { grade: Number(grade2), position: position2! },
  };
}

export function metricLimits(thread: Thread, text: string): Result<Limits> {
  const read = readClass(text);
  const inside = read !== undefined && /[A-H]/.test(read.pitch.position);
  const P = thread.pitch / MM;
  const d = thread.diameter / MM;
  const basic = basicSizes(thread);
  const gap = read && metricGap(read.pitch.position, P);
  const pitchTolerance = read && metricTolerance(inside ? 'D2' : 'd2', read.pitch.grade, P, d);
  const crestTolerance = read && metricTolerance(inside ? 'D1' : 'd', read.crest.grade, P, d);
  if (
    !read ||
    gap === undefined ||
    pitchTolerance === undefined ||
    crestTolerance === undefined ||
    (inside && /[EF]/.test(read.pitch.position))
  )
    return problem(
      'unknown-name',
      `“${text.slice(0, 12)}” is not a tolerance class the book has for this thread. Usual are ${orList(['6g', '6h', '4g6g'])} outside and ${orList(['6H', '5H', '6G'])} inside.`,
      ['6g', '6H'],
    );
  const common = {
    className: text,
    source: ISO_965,
    status: 'published' as const,
    note: 'For the usual length of engagement. A multi-start or very long thread needs more.',
  };
  if (inside)
    return {
      ok: true,
      value: {
        ...common,
        side: 'internal',
        rows: [
          { key: 'D', name: 'major diameter', low: thread.diameter + gap },
          {
            key: 'D2',
            name: 'pitch diameter',
            low: basic.pitchDiameter + gap,
            high: basic.pitchDiameter + gap + pitchTolerance,
          },
          {
            key: 'D1',
            name: 'bore (minor diameter)',
            low: basic.bore + gap,
            high: basic.bore + gap + crestTolerance,
          },
        ],
      },
    };
  const pitchLow = basic.pitchDiameter - gap - pitchTolerance;
  return {
    ok: true,
    value: {
      ...common,
      side: 'external',
      rows: [
        {
          key: 'd',
          name: 'outside (major diameter)',
          low: thread.diameter - gap - crestTolerance,
          high: thread.diameter - gap,
        },
        { key: 'd2', name: 'pitch diameter', low: pitchLow, high: basic.pitchDiameter - gap },
        // Smallest root: sharp triangle less two root radii of an eighth of the pitch, ASME B1.13M and ISO 965-1.
        {
          key: 'd3',
          name: 'root (rounded)',
          low: pitchLow - (Math.sqrt(3) / 2 - 0.25) * thread.pitch,
          high: basic.bore - gap,
        },
      ],
    },
  };
}

/** Factor on the tolerance of the pitch diameter by starts; the last one for all that have more. ISO 2903, from memory. */
const BY_STARTS = [1, 1.12, 1.25, 1.4, 1.6] as const;

/** Classes 7e, 8e outside and 7H, 8H inside. */
export function trapezoidalLimits(thread: Thread, text: string): Result<Limits> {
  const found = /^([78])([eH])$/.exec(text);
  const P = thread.pitch / MM;
  const d = thread.diameter / MM;
  const grade = Number(found?.[1]);
  const inside = found?.[2] === 'H';
  const gap = inside ? 0 : TRAPEZOIDAL_GAP_E.find(([each]) => Math.abs(each - P) < 1e-9)?.[1];
  const wider = BY_STARTS[Math.min(thread.starts, BY_STARTS.length) - 1] ?? 1;
  /** Of the pitch diameter, to whole micrometres. */
  const ofPitch = (which: 'd2' | 'D2'): number | undefined => {
    const single = metricTolerance(which, grade, P, d);
    return single === undefined ? undefined : Math.round((wider * single) / UM) * UM;
  };
  const bolt = ofPitch('d2');
  const nut = ofPitch('D2');
  const outside = metricTolerance('d', 4, P, d);
  const bore = metricTolerance('D1', 4, P, d);
  if (
    !found ||
    gap === undefined ||
    bolt === undefined ||
    nut === undefined ||
    outside === undefined ||
    bore === undefined
  )
    return problem(
      'unknown-name',
      `“${text.slice(0, 12)}” is not a class the book has for this thread. It has 7e and 8e outside, 7H and 8H inside.`,
      ['7e', '7H'],
    );
  const basic = basicSizes(thread);
  const common = {
    className: text,
    source: `ISO 2903: the formulas of ISO 965-1, compared with a published chart of limits${wider === 1 ? '' : '; the factor for several starts from memory'}`,
    status: wider === 1 ? ('published' as const) : ('from memory' as const),
    note: `${wider === 1 ? '' : `With ${thread.starts} starts the tolerance of the pitch diameter is ${wider} times that of a single start, and the root goes with it. `}The standard leaves lead screws and nuts of machine tools out: their play is a matter of their own.`,
  };
  return {
    ok: true,
    value: inside
      ? {
          ...common,
          side: 'internal',
          rows: [
            {
              key: 'D4',
              name: 'major diameter',
              low: thread.diameter + 2 * (basic.depth.internal - thread.pitch / 2),
            },
            { key: 'D2', name: 'pitch diameter', low: basic.pitchDiameter, high: basic.pitchDiameter + nut },
            { key: 'D1', name: 'bore (minor diameter)', low: basic.bore, high: basic.bore + bore },
          ],
        }
      : {
          ...common,
          side: 'external',
          rows: [
            {
              key: 'd',
              name: 'outside (major diameter)',
              low: thread.diameter - outside,
              high: thread.diameter,
            },
            {
              key: 'd2',
              name: 'pitch diameter',
              low: basic.pitchDiameter - gap * UM - bolt,
              high: basic.pitchDiameter - gap * UM,
            },
            { key: 'd3', name: 'root', low: basic.root - 1.25 * bolt - gap * UM, high: basic.root },
          ],
        },
  };
}
