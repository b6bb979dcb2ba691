/** Seeded random numbers: the same seed gives the same numbers on every computer. Not for secrets. */

/** Fills an array with the next numbers of its stream. */
export type Fill = (into: Float64Array) => void;

/** Next 32 random bits as an unsigned integer. */
type Bits = () => number;

/** Spreads a seed over the generator's state (Murmur3's last mix), so that neighbouring seeds have nothing in common. */
function mixer(seed: number): Bits {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) >>> 0;
  };
}

/** The generator sfc32 (C. Doty-Humphrey, 2010): three words chaotically mixed and a counter, period at least 2³². */
function sfc32(seed: number, stream: number): Bits {
  if (!Number.isSafeInteger(seed) || !Number.isSafeInteger(stream))
    throw new RangeError('A seed and a stream are whole numbers.');
  const low = mixer(seed);
  const high = mixer(Math.floor(seed / 2 ** 32) ^ 0x5bd1e995);
  const branch = mixer(stream ^ 0x2545f491);
  let a = low() ^ branch();
  let b = high() ^ branch();
  let c = low() ^ high() ^ branch();
  let counter = 1;
  const next = (): number => {
    const out = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + out;
    c |= 0;
    return out >>> 0;
  };
  for (let i = 0; i < 15; i++) next();
  return next;
}

/** One uniform number a call, strictly between 0 and 1, of 52 random bits. */
function uniform(bits: Bits): () => number {
  return () => ((bits() >>> 6) * 2 ** 26 + (bits() >>> 6) + 0.5) / 2 ** 52;
}

/** Uniform numbers strictly between 0 and 1. Other streams of the same seed are independent of each other. */
export function uniforms(seed: number, stream = 0): Fill {
  const next = uniform(sfc32(seed, stream));
  return (into) => {
    for (let i = 0; i < into.length; i++) into[i] = next();
  };
}

/** One number of mean 0 and standard deviation 1 a call, by Marsaglia's polar method (1964). */
function normal(next: () => number): () => number {
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const x = 2 * next() - 1;
      const y = 2 * next() - 1;
      const r = x * x + y * y;
      if (r >= 1 || r === 0) continue;
      const factor = Math.sqrt((-2 * Math.log(r)) / r);
      spare = y * factor;
      return x * factor;
    }
  };
}

/** Normal numbers of mean 0 and standard deviation 1. */
export function normals(seed: number, stream = 0): Fill {
  const next = normal(uniform(sfc32(seed, stream)));
  return (into) => {
    for (let i = 0; i < into.length; i++) into[i] = next();
  };
}

/** Numbers of Student's t: a normal one over the root of a χ² one, that by G. Marsaglia and W. W. Tsang (2000). */
export function students(freedom: number, seed: number, stream = 0): Fill {
  if (!(freedom > 0)) throw new RangeError(`Degrees of freedom must be above 0, not ${freedom}.`);
  if (freedom === Number.POSITIVE_INFINITY) return normals(seed, stream);
  const flat = uniform(sfc32(seed, stream));
  const bell = normal(flat);
  const shape = freedom / 2;
  const d = (shape < 1 ? shape + 1 : shape) - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  const gamma = (): number => {
    for (;;) {
      const x = bell();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(flat()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  const drawn = shape < 1 ? () => gamma() * flat() ** (1 / shape) : gamma;
  return (into) => {
    for (let i = 0; i < into.length; i++) into[i] = bell() / Math.sqrt(drawn() / shape);
  };
}
