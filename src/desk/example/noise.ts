/**
 * A seeded source of normal noise, so that the example is the same on every machine. Uniform bits by mulberry32 (Tommy
 * Ettinger, public domain); normal by the polar method (Marsaglia and Bray, SIAM Review 6(3), 1964).
 *
 * @returns a function that gives normal numbers of mean 0 and the sigma asked for
 */
export function normalNoise(seed: number): (sigma: number) => number {
  const uniform = mulberry32(seed);
  return (sigma) => {
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) return sigma * u * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };
}

function mulberry32(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let bits = Math.imul(state ^ (state >>> 15), state | 1);
    bits ^= bits + Math.imul(bits ^ (bits >>> 7), bits | 61);
    return ((bits ^ (bits >>> 14)) >>> 0) / 2 ** 32;
  };
}
