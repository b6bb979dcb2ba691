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
  /** Whether it covers something all the same, because there was no better place. */
  readonly crowded: boolean;
}

export const LINE_HEIGHT = 16;
const LETTER = 6.9;
const GAP = 5;
const CLOSE = 3;

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

/** Boxes for a text above, below, right and left of a point. */
function around([x, y]: Point, width: number, gap: number): Box[] {
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
  ];
}

export interface Named {
  readonly text: string;
  /** Places at which the name may stand, best first. */
  readonly at: readonly Point[];
  readonly gap?: number;
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
  for (const { text, at, gap = GAP } of names) {
    const width = text.length * LETTER;
    let best: Box | undefined;
    let least = Number.POSITIVE_INFINITY;
    at.forEach((point, rank) => {
      for (const box of around(point, width, gap)) {
        if (box.left < frame.left || box.right > frame.right) continue;
        if (box.top < frame.top || box.bottom > frame.bottom) continue;
        let cost = rank / (10 * at.length);
        for (const other of [...placed, ...marks]) if (overlap(box, other)) cost += 40;
        for (const line of lines) for (const each of line) if (holds(box, each)) cost += 1;
        if (cost < least) {
          least = cost;
          best = box;
        }
      }
    });
    if (best) placed.push({ ...best, text, crowded: least >= 1 });
  }
  return placed;
}
