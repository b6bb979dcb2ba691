/** Numbers that look random and are the same every time: a seed gives the same variants on every computer. */

/** xoshiro128** by D. Blackman and S. Vigna, seeded by splitmix32; uniform in [0, 1). */
export function uniform(seed: number): () => number {
  const state = new Uint32Array(4);
  let s = seed >>> 0;
  for (let at = 0; at < 4; at++) {
    s = (s + 0x9e3779b9) >>> 0;
    let z = s;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    state[at] = (z ^ (z >>> 15)) >>> 0;
  }
  const rotate = (x: number, k: number): number => ((x << k) | (x >>> (32 - k))) >>> 0;
  return () => {
    const result = Math.imul(rotate(Math.imul(state[1]!, 5) >>> 0, 7), 9) >>> 0;
    const t = (state[1]! << 9) >>> 0;
    state[2] = (state[2]! ^ state[0]!) >>> 0;
    state[3] = (state[3]! ^ state[1]!) >>> 0;
    state[1] = (state[1]! ^ state[2]!) >>> 0;
    state[0] = (state[0]! ^ state[3]!) >>> 0;
    state[2] = (state[2]! ^ t) >>> 0;
    state[3] = rotate(state[3]!, 11);
    return result / 2 ** 32;
  };
}

/** Standard normal numbers from uniform ones (Box and Muller). */
export function normal(next: () => number): () => number {
  let kept: number | null = null;
  return () => {
    if (kept !== null) {
      const value = kept;
      kept = null;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - next()));
    const angle = 2 * Math.PI * next();
    kept = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
