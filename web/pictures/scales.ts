/** From numbers in SI to places in the drawing, and the ticks a person reads. */
import { scaleLinear, scaleLog } from 'd3-scale';
import type { ChartPicture, Scale } from '../../engine/assess/pictures/index.ts';
import { convert, formatNumber } from '../../engine/quantity/index.ts';
import { heightOf, type Points } from '../../engine/quantity/line.ts';

export interface Tick {
  readonly at: number;
  readonly text: string;
}

export interface Axis {
  /** SI → px. */
  readonly place: (value: number) => number;
  /** px → SI, for linear axes. */
  readonly value: (px: number) => number;
  readonly ticks: readonly Tick[];
}

export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: Axis;
  readonly y: Axis;
}

const LEADING = [1, 2, 5];

/** Ones, twos and fives only where they have room; else whole powers of ten. */
function logTicks(low: number, high: number, most: number): number[] {
  const all: number[] = [];
  for (let power = 10 ** Math.floor(Math.log10(low)); power <= high; power *= 10)
    for (const lead of LEADING) if (power * lead >= low && power * lead <= high) all.push(power * lead);
  const tens = all.filter((tick) => Math.abs(Math.log10(tick) - Math.round(Math.log10(tick))) < 1e-9);
  return all.length <= most || tens.length < 2 ? all : tens;
}

function axis(scale: Scale, low: number, high: number, from: number, to: number, most: number): Axis {
  const unit = scale.unit;
  // Working in the unit that is read keeps the ticks round in it.
  const [a, b] = [convert(low, unit), convert(high, unit)];
  const log = scale.log === true && a > 0;
  const made = log ? scaleLog([a, b], [from, to]) : scaleLinear([a, b], [from, to]);
  const ticks = log ? logTicks(a, b, most) : made.ticks(most);
  const slope = (high - low) / (b - a);
  return {
    place: (value) => made(convert(value, unit)),
    value: (px) => low + (made.invert(px) - a) * slope,
    ticks: ticks.map((tick) => ({ at: made(tick), text: formatNumber(tick, 6) })),
  };
}

const DIGIT = 7.4;

/** The frame of a chart that is `width` px wide. Letters keep their size; the number of ticks follows the room. */
export function frameOf(picture: ChartPicture, width: number): Frame {
  const height = width < 480 ? 290 : 340;
  const xs = picture.series.flatMap(({ points }) => points.map(([x]) => x));
  const ys = [
    ...picture.series.flatMap(({ points }) => points.map(([, y]) => y)),
    ...picture.marks.map(({ y }) => y),
  ];
  const log = picture.y.log === true;
  const most = Math.max(...ys);
  const positive = ys.filter((y) => y > 0);
  const low = log ? Math.min(...positive) / 3 : Math.min(0, ...ys);
  const high = log ? most * 1.6 : most === low ? low + 1 : most + (most - low) * 0.1;
  const [top, bottom] = [34, height - 48];
  const y = axis(
    picture.y,
    low,
    high,
    bottom,
    top,
    Math.max(3, Math.floor((bottom - top) / (log ? 28 : 44))),
  );
  const left = 12 + DIGIT * Math.max(...y.ticks.map(({ text }) => text.length), 1);
  const right = width - 14;
  const x = axis(
    picture.x,
    Math.min(0, ...xs),
    Math.max(...xs, ...picture.marks.map((mark) => mark.x)),
    left,
    right,
    Math.max(2, Math.floor((right - left) / 78)),
  );
  return { width, height, left, right, top, bottom, x, y };
}

type Pairs = readonly (readonly [number, number])[];
const PAIRS: Points<Pairs> = {
  count: ({ length }) => length,
  x: (line, at) => line[at]![0],
  y: (line, at) => line[at]![1],
};

/** The height of a line at x, between its points; undefined beyond its ends. */
export function heightAt(points: Pairs, x: number): number | undefined {
  const height = heightOf(PAIRS, points, x, 'nothing');
  return Number.isNaN(height) ? undefined : height;
}
