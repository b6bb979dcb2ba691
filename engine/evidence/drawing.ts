/** A small declarative picture of a set-up, in a box of 320 × 200, y downwards; screen and paper draw it as SVG. */

export const DRAWING_SIZE = { width: 320, height: 200 } as const;

export type Point = readonly [x: number, y: number];

export type Shape =
  | {
      readonly kind: 'line';
      readonly points: readonly Point[];
      /** `wire` is a lead, `thin` a dimension or a hidden edge, `arrow` ends in a head, `closed` is a filled outline. */
      readonly style: 'plain' | 'wire' | 'thin' | 'arrow' | 'closed';
    }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number; readonly filled?: true }
  /** Angles in degrees clockwise from the right; with `arrow` the end has a head. */
  | {
      readonly kind: 'arc';
      readonly centre: Point;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
      readonly arrow?: true;
    }
  | {
      readonly kind: 'text';
      readonly at: Point;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
    };

export interface Drawing {
  /** What it shows, for somebody who cannot see it. */
  readonly says: string;
  readonly shapes: readonly Shape[];
}

export const draw = (says: string, ...shapes: readonly (Shape | readonly Shape[])[]): Drawing => ({
  says,
  shapes: shapes.flat(),
});

export const line = (...points: readonly Point[]): Shape => ({ kind: 'line', style: 'plain', points });
export const wire = (...points: readonly Point[]): Shape => ({ kind: 'line', style: 'wire', points });
export const thin = (...points: readonly Point[]): Shape => ({ kind: 'line', style: 'thin', points });
export const arrow = (...points: readonly Point[]): Shape => ({ kind: 'line', style: 'arrow', points });
export const outline = (...points: readonly Point[]): Shape => ({ kind: 'line', style: 'closed', points });
export const circle = (x: number, y: number, radius: number): Shape => ({
  kind: 'circle',
  centre: [x, y],
  radius,
});
export const dot = (x: number, y: number): Shape => ({
  kind: 'circle',
  centre: [x, y],
  radius: 2.5,
  filled: true,
});
export const arc = (x: number, y: number, radius: number, from: number, to: number): Shape => ({
  kind: 'arc',
  centre: [x, y],
  radius,
  from,
  to,
});
export const turning = (x: number, y: number, radius: number, from: number, to: number): Shape => ({
  kind: 'arc',
  centre: [x, y],
  radius,
  from,
  to,
  arrow: true,
});
export const words = (
  x: number,
  y: number,
  text: string,
  anchor: 'start' | 'middle' | 'end' = 'middle',
): Shape => ({ kind: 'text', at: [x, y], text, anchor });
export const box = (x: number, y: number, width: number, height: number): Shape =>
  outline([x, y], [x + width, y], [x + width, y + height], [x, y + height]);
