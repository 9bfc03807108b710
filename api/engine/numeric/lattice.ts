/**
 * Seeded quasi-random points: a rank-1 lattice, shifted at random once for each dimension.
 *
 * @module
 */

/** Number of points [-]. A power of two, so that every one-dimensional projection is evenly spaced. */
export const LATTICE_POINTS = 1024;

/**
 * Generating vector, built component by component (even candidates left out, ties to the smallest) so that the
 * worst-case error in the weighted Korobov space of smoothness 2 with weights 1/j² is least.
 * Method: D. Nuyens, R. Cools, Math. Comp. 75 (2006) 903-920. tests/engine/numeric.test.ts builds it again.
 */
export const GENERATING_VECTOR: readonly number[] = [
  1, 275, 167, 403, 317, 181, 103, 297, 49, 193, 495, 449, 395, 259, 417, 113, 263, 423, 213, 231,
];

const cache = new Map<string, readonly Float64Array[]>();
const CACHED_SETS = 4;

/**
 * Points of the shifted lattice, one array a dimension, each value strictly between 0 and 1.
 *
 *     u_k = frac(k z/N + shift + 1/2N),   k = 0 … N − 1
 *
 * z is the dimension's element of {@link GENERATING_VECTOR}, N the number of points; the shifts are the first numbers of
 * {@link seededRandom}, one a dimension. What would come within 1e-9 of 0 or 1 is kept there.
 *
 * @param dimensions - how many inputs are uncertain, at most 20 [-]
 * @param seed - any whole number; the same seed gives the same points [-]
 * @returns `dimensions` arrays of {@link LATTICE_POINTS} values; shared, do not write to them
 * @example latticePoints(2, 1)[0].length // 1024
 */
export function latticePoints(dimensions: number, seed: number): readonly Float64Array[] {
  if (dimensions > GENERATING_VECTOR.length) {
    throw new RangeError(`At most ${GENERATING_VECTOR.length} dimensions.`);
  }
  const key = `${dimensions}:${seed}`;
  const known = cache.get(key);
  if (known) return known;
  const random = seededRandom(seed);
  const points = GENERATING_VECTOR.slice(0, dimensions).map((z) => {
    const shift = random();
    // Half a cell is added so that no point falls on 0, where the normal quantile is infinite.
    return Float64Array.from({ length: LATTICE_POINTS }, (_, k) => {
      const u = (k * z) / LATTICE_POINTS + shift + 0.5 / LATTICE_POINTS;
      const fraction = u - Math.floor(u);
      return Math.min(Math.max(fraction, 1e-9), 1 - 1e-9);
    });
  });
  if (cache.size >= CACHED_SETS) cache.delete(cache.keys().next().value!);
  cache.set(key, points);
  return points;
}

/**
 * Small seeded generator (a Weyl sequence through an integer mixer), for shifts only. All in 32 bits:
 *
 *     s ← s + 0x9e3779b9, from the seed;   m = s ⊕ (s ≫ 16);  m ← m · 0x85ebca6b;  m ← m ⊕ (m ≫ 13);
 *     m ← m · 0xc2b2ae35;   number = (m ⊕ (m ≫ 16))/2³²
 *
 * @param seed - any whole number
 * @returns a function giving numbers from 0 up to, not including, 1
 */
export function seededRandom(seed: number): () => number {
  let state = Math.trunc(seed) >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 4294967296;
  };
}
