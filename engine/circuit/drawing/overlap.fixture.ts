/** What lies on what, in a laid-out cluster. */
import { placesOf } from './picture.ts';
import type { Box, LaidCluster } from './types.ts';

/** Touching is no overlap. */
const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width - 0.2 &&
  b.x < a.x + a.width - 0.2 &&
  a.y < b.y + b.height - 0.2 &&
  b.y < a.y + a.height - 0.2;

/** Pairs of devices and texts that lie on each other, and wires that run through a device or its text, in words. */
export function overlaps(laid: LaidCluster): readonly string[] {
  const places = placesOf(laid);
  const found: string[] = [];
  for (const [at, a] of places.entries())
    for (const b of places.slice(at + 1))
      if (meet(a.box, b.box)) found.push(`${a.kind} ${a.owner} on ${b.kind} ${b.owner}`);
  for (const { wire, points } of laid.wires)
    for (const [at, to] of points.slice(1).entries()) {
      const from = points[at]!;
      const line = {
        x: Math.min(from.x, to.x),
        y: Math.min(from.y, to.y),
        width: Math.abs(from.x - to.x) + 0.5,
        height: Math.abs(from.y - to.y) + 0.5,
      };
      for (const { piece, ...box } of laid.pieces)
        if (meet(line, inside(box))) found.push(`wire ${wire.id} through ${piece.id}`);
      for (const { flag, ...box } of laid.flags)
        if (meet(line, inside(box))) found.push(`wire ${wire.id} through ${flag.id}`);
    }
  return found;
}

const inside = ({ x, y, width, height }: Box): Box => ({
  x: x + 1,
  y: y + 1,
  width: width - 2,
  height: height - 2,
});
