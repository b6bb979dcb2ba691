/** Where names can stand beside their lines and marks without covering anything. */
export type Point = readonly [x: number, y: number];

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Label extends Box {
  readonly text: string;
  /** It stands on its own line, which must be hidden behind it. */
  readonly on: boolean;
}

export const LINE_HEIGHT = 16;
const LETTER = 6.9;
const GAP = 5;
const CLOSE = 3;
/** How bad it is to cover another name or a mark, and a piece of the own line, against a piece of another line. */
const COVERED = 500;
const OWN = 0.1;

/** A place every few pixels along a line. */
export function along(points: readonly Point[], step = 4): Point[] {
  const out: Point[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [x0, y0] = points[i]!;
    const [x1, y1] = points[i + 1]!;
    const pieces = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / step));
    for (let k = 0; k < pieces; k++) out.push([x0 + ((x1 - x0) * k) / pieces, y0 + ((y1 - y0) * k) / pieces]);
  }
  const last = points.at(-1);
  if (last) out.push(last);
  return out;
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const holds = (box: Box, [x, y]: Point): boolean =>
  x > box.left - CLOSE && x < box.right + CLOSE && y > box.top - CLOSE && y < box.bottom + CLOSE;

/** Boxes for a text above, below, right and left of a point, and on it. */
function around([x, y]: Point, width: number, gap: number, on: boolean): Box[] {
  const [half, tall] = [width / 2, LINE_HEIGHT];
  const box = (left: number, top: number): Box => ({ left, right: left + width, top, bottom: top + tall });
  return [
    box(x - half, y - gap - tall),
    box(x - half, y + gap),
    box(x + gap + 2, y - tall / 2),
    box(x - gap - 2 - width, y - tall / 2),
    box(x - width, y - gap - tall),
    box(x - width, y + gap),
    box(x, y - gap - tall),
    box(x, y + gap),
    ...(on ? [box(x - half, y - tall / 2)] : []),
  ];
}

export interface Named {
  readonly text: string;
  /** Places at which the name may stand, best first. */
  readonly at: readonly Point[];
  /** Distances from the place, nearest first. */
  readonly gaps?: readonly number[];
  /** The line the name belongs to: it may stand on that one, which then runs behind it. */
  readonly own?: number;
}

/**
 * Places names one after the other within a frame, each where it covers the fewest points of lines, other names and
 * marks; among equals the earlier place counts.
 */
export function placeLabels(
  names: readonly Named[],
  lines: readonly (readonly Point[])[],
  marks: readonly Box[],
  frame: Box,
): Label[] {
  const placed: Label[] = [];
  for (const { text, at, gaps = [GAP], own } of names) {
    const width = text.length * LETTER;
    const inside = (box: Box): boolean =>
      box.left >= frame.left &&
      box.right <= frame.right &&
      box.top >= frame.top &&
      box.bottom <= frame.bottom;
    let best: Box | undefined;
    let least = Number.POSITIVE_INFINITY;
    at.forEach((point, rank) => {
      gaps.forEach((gap, far) => {
        for (const box of around(point, width, gap, own !== undefined).filter(inside)) {
          let cost = rank / (10 * at.length) + far / 2;
          for (const other of [...placed, ...marks]) if (overlap(box, other)) cost += COVERED;
          lines.forEach((line, i) => {
            const weight = i === own ? OWN : 1;
            for (const each of line) if (holds(box, each)) cost += weight;
          });
          if (cost < least) {
            least = cost;
            best = box;
          }
        }
      });
    });
    if (!best) continue;
    const hidden = own !== undefined && (lines[own] ?? []).some((each) => holds(best!, each));
    placed.push({ ...best, text, on: hidden });
  }
  return placed;
}
