/** What every chart draws alike: levels with their numbers before them, and a line through points. */
import type { Tick } from './scales.ts';

interface LevelsProps {
  readonly ticks: readonly Tick[];
  /** Pixels. */
  readonly left: number;
  readonly right: number;
  /** Class of a level, by its number; plain without. */
  readonly look?: (tick: Tick) => string | undefined;
}

/** A line across at each tick, with its number to the left. */
export function Levels({ ticks, left, right, look }: LevelsProps) {
  return ticks.map((tick) => (
    <g key={tick.at}>
      <line className={look?.(tick)} x1={left} x2={right} y1={tick.at} y2={tick.at} />
      <text x={left - 6} y={tick.at + 4} textAnchor="end">
        {tick.text}
      </text>
    </g>
  ));
}

/** The level of zero stands out. */
export const baseAtZero = ({ text }: Tick): string | undefined => (text === '0' ? 'base' : undefined);

/** `d` of a path through `count` points, in pixels. */
export function pathThrough(count: number, x: (at: number) => number, y: (at: number) => number): string {
  let d = '';
  for (let at = 0; at < count; at++) d += `${at === 0 ? 'M' : 'L'}${x(at).toFixed(1)} ${y(at).toFixed(1)}`;
  return d;
}
