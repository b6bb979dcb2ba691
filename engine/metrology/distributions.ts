/** What is known of an input: the shapes of JCGM 101:2008, 6.4, each with its standard uncertainty and samples. */
import { type Fill, normals, students, uniforms } from './random.ts';

export type Distribution =
  /** A bell: from certificates and many readings. */
  | { readonly kind: 'normal'; readonly centre: number; readonly standard: number }
  /** Equally likely anywhere within ± half: limits, resolution. */
  | { readonly kind: 'rectangular'; readonly centre: number; readonly half: number }
  /** Likelier towards the middle: the sum of two equal rectangles. */
  | { readonly kind: 'triangular'; readonly centre: number; readonly half: number }
  /** Flat within ± top × half, falling in straight lines to the limits; `top` from 0 (a triangle) to 1 (a rectangle). */
  | { readonly kind: 'trapezoid'; readonly centre: number; readonly half: number; readonly top: number }
  /** U-shaped: something that swings to and fro like a sine within ± half, such as a cycling room temperature. */
  | { readonly kind: 'arcsine'; readonly centre: number; readonly half: number }
  /** The mean of few readings: `scale` is deviation/√n, `freedom` n − 1. */
  | { readonly kind: 'student'; readonly centre: number; readonly scale: number; readonly freedom: number };

const checked = (ok: boolean, message: string): void => {
  if (!ok) throw new RangeError(message);
};

function check(d: Distribution): void {
  checked(Number.isFinite(d.centre), 'The centre of a distribution must be a finite number.');
  const width = d.kind === 'normal' ? d.standard : d.kind === 'student' ? d.scale : d.half;
  checked(
    width >= 0 && width < Number.POSITIVE_INFINITY,
    'The width of a distribution must be finite and not below 0.',
  );
  if (d.kind === 'trapezoid')
    checked(d.top >= 0 && d.top <= 1, 'The top of a trapezoid lies between 0 and 1.');
  if (d.kind === 'student') checked(d.freedom > 0, 'Degrees of freedom must be above 0.');
}

/**
 * Standard uncertainty of the distribution. Student's t with two degrees of freedom or fewer has none that is finite:
 * `Infinity` then, and only a simulation tells its coverage.
 */
export function standardOf(d: Distribution): number {
  check(d);
  switch (d.kind) {
    case 'normal':
      return d.standard;
    case 'rectangular':
      return d.half / Math.sqrt(3);
    case 'triangular':
      return d.half / Math.sqrt(6);
    case 'trapezoid':
      return d.half * Math.sqrt((1 + d.top * d.top) / 6);
    case 'arcsine':
      return d.half / Math.SQRT2;
    case 'student':
      if (d.scale === 0 || d.freedom === Number.POSITIVE_INFINITY) return d.scale;
      return d.freedom > 2 ? d.scale * Math.sqrt(d.freedom / (d.freedom - 2)) : Number.POSITIVE_INFINITY;
  }
}

const mapped =
  (fill: Fill, of: (z: number) => number): Fill =>
  (into) => {
    fill(into);
    for (let i = 0; i < into.length; i++) into[i] = of(into[i]!);
  };

/** Samples of the distribution (JCGM 101:2008, 6.4). The same seed and stream give the same samples. */
export function samples(d: Distribution, seed: number, stream = 0): Fill {
  check(d);
  const { centre } = d;
  switch (d.kind) {
    case 'normal':
      return mapped(normals(seed, stream), (z) => centre + d.standard * z);
    case 'rectangular':
      return mapped(uniforms(seed, stream), (u) => centre + d.half * (2 * u - 1));
    case 'triangular':
      return twoRectangles(d.half, 0, centre, seed, stream);
    case 'trapezoid':
      return twoRectangles(d.half, d.top, centre, seed, stream);
    case 'arcsine':
      return mapped(uniforms(seed, stream), (u) => centre + d.half * Math.sin(2 * Math.PI * u));
    case 'student':
      return mapped(students(d.freedom, seed, stream), (t) => centre + d.scale * t);
  }
}

/** A trapezoid is the sum of a wide and a narrow rectangle. */
function twoRectangles(half: number, top: number, centre: number, seed: number, stream: number): Fill {
  const fill = uniforms(seed, stream);
  let pairs = new Float64Array(0);
  return (into) => {
    if (pairs.length !== 2 * into.length) pairs = new Float64Array(2 * into.length);
    fill(pairs);
    for (let i = 0; i < into.length; i++) {
      const wide = (1 + top) * (pairs[2 * i]! - 0.5);
      const narrow = (1 - top) * (pairs[2 * i + 1]! - 0.5);
      into[i] = centre + half * (wide + narrow);
    }
  };
}
