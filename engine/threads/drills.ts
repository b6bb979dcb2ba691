/** Which drill for a tap. */
import { threadTapHole } from '../handbook/thread-tap-hole.ts';
import { DRILL_SOURCE, LETTER_DRILLS, METRIC_DRILL_STEPS, NUMBER_DRILLS } from '../tables/drills.ts';
import { NPT_SIZES } from '../tables/thread-npt.ts';
import { PIPE_SIZES } from '../tables/thread-pipe.ts';
import { BSF_DRILL_SOURCE, WHITWORTH_SIZES } from '../tables/thread-whitworth.ts';
import { basicSizes, work } from './dimensions.ts';
import { limitsOf } from './limits.ts';
import { INCH, inches, MM, plainNumber } from './text.ts';
import type { Thread } from './types.ts';

export interface Drill {
  /** As it is sold: '8.5 mm', '#7', '27/64 in'. */
  readonly name: string;
  readonly diameter: number;
  /** For a cutting or a forming tap, or the bore before a single-point tool. */
  readonly use: 'cutting tap' | 'forming tap' | 'bore for a single-point tool';
  /** Share of the thread's depth that is left, 0 to 1; only for parallel threads. */
  readonly share?: number;
  /** As inch tables count it; only 60° threads. */
  readonly shareOld?: number;
  /** Whether the hole lies in the limits of the everyday class; absent where there are none. */
  readonly inLimits?: boolean;
  readonly source: string;
}

const even = (x: number): number => {
  const floor = Math.floor(x + 1e-9);
  return Math.abs(x - floor - 0.5) < 1e-6 ? floor + (floor % 2) : Math.round(x);
};

/** Nearest metric drill; between two it is the one the drill tables have. */
export function metricDrill(d: number): number {
  const mm = d / MM;
  const step = METRIC_DRILL_STEPS.find(([upTo]) => mm <= upTo)![1];
  return even(mm / step) * step * MM;
}

const INCH_DRILLS: readonly (readonly [string, number])[] = [
  ...NUMBER_DRILLS.map((d, at) => [`#${at + 1}`, d] as const),
  ...LETTER_DRILLS.map((d, at) => [String.fromCharCode(65 + at), d] as const),
  ...Array.from({ length: 128 }, (_, at): readonly [string, number] => {
    let [top, bottom] = [at + 1, 64];
    while (top % 2 === 0 && bottom > 1) [top, bottom] = [top / 2, bottom / 2];
    const whole = Math.floor(top / bottom);
    const rest = top - whole * bottom;
    return [
      `${whole > 0 ? `${whole}${rest > 0 ? ' ' : ''}` : ''}${rest > 0 ? `${rest}/${bottom}` : ''} in`,
      (at + 1) / 64,
    ];
  }),
];

/** Nearest drill sold by number, letter or fraction of an inch. */
export function inchDrill(d: number): readonly [name: string, diameter: number] {
  const [name, size] = INCH_DRILLS.reduce((best, each) =>
    Math.abs(each[1] * INCH - d) < Math.abs(best[1] * INCH - d) - 1e-9 ? each : best,
  );
  return [name, size * INCH];
}

export function drillsFor(thread: Thread): readonly Drill[] {
  const { pitch: P, diameter: d } = thread;
  const basic = basicSizes(thread);
  const mm = (diameter: number): string => `${plainNumber(Math.round((diameter / MM) * 1e4) / 1e4)} mm`;
  if (thread.family === 'npt') {
    const drill = NPT_SIZES.find((each) => each.size === thread.size)?.drill;
    if (!drill) return [];
    const letter = /^[A-Z]$/.test(drill) ? LETTER_DRILLS[drill.charCodeAt(0) - 65]! : inches(drill)!;
    return [
      {
        name: /^[A-Z]$/.test(drill) ? drill : `${drill} in`,
        diameter: letter * INCH,
        use: 'cutting tap',
        source: 'a public table of NPT threads; without reaming the taper',
      },
    ];
  }
  if (thread.family === 'pipe-taper' || thread.family === 'pipe-parallel') {
    const size = PIPE_SIZES.find((each) => each.size === thread.size)!;
    const drill = thread.series === 'G' ? size.drillG : size.taper?.drill;
    const share = (hole: number): Partial<Drill> =>
      thread.taper > 0 ? {} : { share: (d - hole) / (2 * basic.depth.internal) };
    return drill === undefined
      ? []
      : [
          {
            name: mm(drill * MM),
            diameter: drill * MM,
            use: 'cutting tap',
            ...share(drill * MM),
            source: 'a public table of pipe thread sizes',
          },
        ];
  }
  if (thread.family === 'trapezoidal')
    return [
      {
        name: mm(basic.bore),
        diameter: basic.bore,
        use: 'bore for a single-point tool',
        share: 1,
        inLimits: true,
        source: 'ISO 2904: bore of the nut',
      },
    ];
  const limits = limitsOf(withoutClass(thread));
  const bore = limits.ok
    ? limits.value.find(({ side }) => side === 'internal')?.rows.find(({ key }) => key === 'D1')
    : undefined;
  const made = (name: string, diameter: number, use: Drill['use'], source: string): Drill => {
    const values = work(threadTapHole, { d, P, H1: basic.depth.internal, D0: diameter });
    const cutting = use === 'cutting tap';
    return {
      name,
      diameter,
      use,
      ...(cutting ? { share: values.share } : {}),
      ...(cutting && thread.family !== 'whitworth' ? { shareOld: values.share_old } : {}),
      ...(cutting && bore?.low !== undefined && bore.high !== undefined
        ? { inLimits: diameter >= bore.low - 1e-9 && diameter <= bore.high + 1e-9 }
        : {}),
      source,
    };
  };
  if (thread.family === 'whitworth') {
    const row = WHITWORTH_SIZES.find((each) => each.size === thread.size);
    const isCoarse = thread.series === 'BSW';
    const printed = isCoarse ? row?.bswDrill : thread.series === 'BSF' ? row?.bsfDrill : undefined;
    const hole = printed === undefined ? metricDrill(d - 0.85 * 2 * basic.depth.internal) : printed * MM;
    return [
      made(
        mm(hole),
        hole,
        'cutting tap',
        printed === undefined
          ? 'common practice: 85 % of the depth'
          : isCoarse
            ? 'tapping drills of BS 1157 as a published table has them'
            : BSF_DRILL_SOURCE,
      ),
    ];
  }
  const cut = metricDrill(d - P);
  const form = metricDrill(d - P / 2);
  const inch = inchDrill(d - P);
  return [
    made(mm(cut), cut, 'cutting tap', 'ISO 2306: nominal diameter less the pitch'),
    ...(thread.family === 'unified' ? [made(inch[0], inch[1], 'cutting tap', DRILL_SOURCE)] : []),
    made(
      mm(form),
      form,
      'forming tap',
      'common practice: nominal diameter less half the pitch; follow the tap’s own sheet',
    ),
  ];
}

function withoutClass({ className: _, ...thread }: Thread): Thread {
  return thread;
}
