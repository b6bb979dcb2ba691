/** Things that stand on a bench, for the drawings of several methods. */
import {
  arc,
  arrow,
  box,
  circle,
  dot,
  line,
  outline,
  type Point,
  type Shape,
  thin,
  words,
} from './drawing.ts';

/** A hand meter with its display; its two sockets are at (x + 10, y + 62) and (x + 36, y + 62). */
export const meter = (x: number, y: number, shows: string): Shape[] => [
  box(x, y, 46, 66),
  box(x + 5, y + 6, 36, 16),
  words(x + 23, y + 18, shows),
  circle(x + 23, y + 40, 10),
  line([x + 23, y + 40], [x + 29, y + 33]),
  dot(x + 10, y + 62),
  dot(x + 36, y + 62),
];

/** A motor lying with its shaft to the right, ending at (x + 100, y + 25); leads come out at (x + 12, y) and (x + 26, y). */
export const motorLying = (x: number, y: number): Shape[] => [
  box(x, y, 76, 50),
  box(x + 76, y + 6, 6, 38),
  box(x + 82, y + 20, 18, 10),
  thin([x + 10, y + 12], [x + 66, y + 12]),
  thin([x + 10, y + 25], [x + 66, y + 25]),
  thin([x + 10, y + 38], [x + 66, y + 38]),
  box(x + 6, y + 50, 14, 8),
  box(x + 56, y + 50, 14, 8),
];

/** A motor seen on its shaft. */
export const motorEnd = (x: number, y: number, radius: number): Shape[] => [
  circle(x, y, radius),
  circle(x, y, 6),
  ...[45, 135, 225, 315].map((angle) => {
    const at = (angle * Math.PI) / 180;
    return circle(x + 0.82 * radius * Math.cos(at), y + 0.82 * radius * Math.sin(at), 2);
  }),
];

/** A hand drill with its chuck to the left at (x, y). */
export const drill = (x: number, y: number): Shape[] => [
  outline([x, y - 5], [x + 12, y - 9], [x + 12, y + 9], [x, y + 5]),
  outline([x + 12, y - 14], [x + 70, y - 14], [x + 76, y], [x + 70, y + 14], [x + 12, y + 14]),
  outline([x + 44, y + 14], [x + 64, y + 14], [x + 70, y + 58], [x + 50, y + 58]),
  line([x + 43, y + 20], [x + 47, y + 30]),
];

/** A bench supply; its sockets are at (x + 14, y + 46) and (x + 50, y + 46). */
export const supply = (x: number, y: number, shows: string): Shape[] => [
  box(x, y, 64, 54),
  box(x + 6, y + 6, 52, 16),
  words(x + 32, y + 18, shows),
  circle(x + 18, y + 33, 5),
  circle(x + 46, y + 33, 5),
  dot(x + 14, y + 46),
  dot(x + 50, y + 46),
];

/** A dial indicator with its plunger pointing in a direction. */
export const indicator = (x: number, y: number, towards: 'left' | 'right' | 'down', length = 24): Shape[] => {
  const [dx, dy] = { left: [-1, 0], right: [1, 0], down: [0, 1] }[towards] as [number, number];
  const from: Point = [x + 16 * dx, y + 16 * dy];
  const to: Point = [x + (16 + length) * dx, y + (16 + length) * dy];
  return [circle(x, y, 16), circle(x, y, 12), line([x, y], [x + 6, y - 8]), line(from, to), dot(...to)];
};

/** A screw from x to x + length with its thread drawn as slanting lines. */
export const screwThread = (x: number, y: number, length: number): Shape[] => [
  line([x, y - 7], [x + length, y - 7]),
  line([x, y + 7], [x + length, y + 7]),
  ...Array.from({ length: Math.floor(length / 10) }, (_, at) =>
    thin([x + 2 + at * 10, y + 7], [x + 8 + at * 10, y - 7]),
  ),
];

/** A spring scale hanging or pulling between two points. */
export const springScale = ([x1, y1]: Point, [x2, y2]: Point): Shape[] => {
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [ux, uy] = [(x2 - x1) / long, (y2 - y1) / long];
  const at = (along: number, aside: number): Point => [
    x1 + ux * along - uy * aside,
    y1 + uy * along + ux * aside,
  ];
  const [from, to] = [long * 0.2, long * 0.8];
  return [
    line([x1, y1], at(from, 0)),
    outline(at(from, -7), at(to, -7), at(to, 7), at(from, 7)),
    ...[0.3, 0.4, 0.5, 0.6, 0.7].map((share) => thin(at(long * share, 0), at(long * share, 7))),
    arrow(at(to, 0), [x2, y2]),
  ];
};

/** A weight on a string, its top at (x, y). */
export const weight = (x: number, y: number): Shape[] => [
  arc(x, y - 4, 4, 0, 360),
  outline([x - 9, y], [x + 9, y], [x + 13, y + 28], [x - 13, y + 28]),
  words(x, y + 19, 'kg'),
];

/** The bench or the bed below everything. */
export const ground = (x: number, y: number, length: number): Shape[] => [
  line([x, y], [x + length, y]),
  ...Array.from({ length: Math.floor(length / 12) }, (_, at) =>
    thin([x + 4 + at * 12, y], [x - 2 + at * 12, y + 7]),
  ),
];
