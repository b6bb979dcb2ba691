/** How a thread is cut in passes. */
import { threadPass } from '../handbook/thread-pass.ts';
import { basicSizes, work } from './dimensions.ts';
import { DEGREE, MM } from './text.ts';
import type { Side, Thread } from './types.ts';

export interface Pass {
  readonly number: number;
  /** Depth on the radius after it, metres. */
  readonly depth: number;
  readonly infeed: number;
  /** Shift along the axis from the first position, metres. */
  readonly shift: number;
  /** Chip area, square metres. */
  readonly area: number;
  /** Diameter the tool's tip stands at. */
  readonly diameter: number;
}

/** Passes by pitch in millimetres, as two tool makers' threading sections give them (the careful end of each range). */
const PASSES: readonly (readonly [upTo: number, passes: number])[] = [
  [0.78, 5],
  [1.1, 6],
  [1.6, 8],
  [2.2, 10],
  [3.2, 12],
  [4.2, 15],
];
/** Beyond the table: so many passes a millimetre of pitch. */
const PASSES_PER_MM = 4;
/** Thinner chips rub instead of cutting: a tool maker's threading section. */
const THINNEST = 0.05 * MM;
export const MOST_PASSES = 200;

/** Follows one flank of the thread, half a degree inside it so that the other still cleans. */
export const flankInfeed = (thread: Thread): number => thread.flankAngle / 2 - 0.5 * DEGREE;

export function usualPasses(thread: Thread): number {
  const P = thread.pitch / MM;
  return PASSES.find(([upTo]) => P <= upTo)?.[1] ?? Math.ceil(P * PASSES_PER_MM);
}

/**
 * Passes of equal chip area; where that would make the last ones thinner than a chip can be, they are that thick and
 * there are fewer. `infeed` is the angle along which the tool goes in, 0 straight.
 */
export function passesOf(thread: Thread, side: Side, wanted: number, infeed: number): readonly Pass[] {
  const basic = basicSizes(thread);
  const depth = basic.depth[side];
  const N = Math.min(MOST_PASSES, Math.max(1, Math.round(wanted)));
  const given = { a_tot: depth, N, w: basic.tip, a: thread.flankAngle / 2, gamma: infeed };
  const thinnest = Math.min(THINNEST, depth / N);
  const tan = Math.tan(thread.flankAngle / 2);
  const areaTo = (a: number): number => basic.tip * a + tan * a * a;
  const start = side === 'external' ? basic.major : basic.bore;
  const out = side === 'external' ? -2 : 2;
  const passes: Pass[] = [];
  let before = 0;
  for (let i = 1; before < depth - 1e-9 && passes.length < N; i++) {
    const equal = work(threadPass, { ...given, i }).a_i;
    const to = i === N ? depth : Math.min(depth, Math.max(equal, before + thinnest));
    passes.push({
      number: i,
      depth: to,
      infeed: to - before,
      shift: to * Math.tan(infeed),
      area: areaTo(to) - areaTo(before),
      diameter: start + out * to,
    });
    before = to;
  }
  return passes;
}
