/** The points of a blend, in an order in which each differs from the one before by one step. @module */

/** One point: steps of each corner, and where it lies. */
export interface LatticePoint {
  /** Share of each corner; sums to 1 [-]. */
  shares: number[];
  label: string;
}

/**
 * How many ways there are to share `steps` among `corners`.
 *
 *     C(steps + corners − 1, corners − 1)
 *
 * @example simplexSize(3, 10) // 66
 */
export function simplexSize(corners: number, steps: number): number {
  let size = 1;
  for (let k = 1; k < corners; k++) size = (size * (steps + k)) / k;
  return Math.round(size);
}

/**
 * Every way to share `steps` among `corners`, each one step away from the one before: the first corner falls, and the
 * rest is walked to and fro.
 * @returns whole steps of each corner; the first point is the first corner alone
 * @example [...simplexWalk(2, 2)] // [[2, 0], [1, 1], [0, 2]]
 */
export function* simplexWalk(corners: number, steps: number): Generator<number[]> {
  if (corners === 1) {
    yield [steps];
    return;
  }
  for (let first = steps; first >= 0; first--) {
    const rest = simplexWalk(corners - 1, steps - first);
    // Forward on even steps and backward on odd ones; the last row, at 0, always goes forward.
    for (const others of first % 2 === 0 ? rest : [...rest].reverse()) yield [first, ...others];
  }
}

/**
 * A square with a corner at each corner, walked to and fro.
 * @param across - steps along the top, from corner 1 to 2; `down` along the side, from corner 1 to 3
 * @returns shares by area, each point one step from the one before
 */
export function* gridWalk(across: number, down: number): Generator<{ row: number; column: number; shares: number[] }> {
  for (let row = 0; row <= down; row++) {
    for (let k = 0; k <= across; k++) {
      const column = row % 2 === 0 ? k : across - k;
      const u = column / across;
      const v = row / down;
      yield { row, column, shares: [(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v] };
    }
  }
}

/** A, B … Z, AA, AB … @example letters(27) // "AB" */
export function letters(n: number): string {
  return (n >= 26 ? letters(Math.floor(n / 26) - 1) : "") + String.fromCharCode(65 + (n % 26));
}

/**
 * Points with labels: numbers along a line, a row's letter and a number in a triangle or grid, steps of each corner
 * beyond.
 */
export function* latticePoints(
  corners: number,
  shape: "simplex" | "grid",
  steps: number,
  stepsDown: number,
): Generator<LatticePoint> {
  if (shape === "grid") {
    for (const { row, column, shares } of gridWalk(steps, stepsDown)) {
      yield { shares, label: `${letters(row)}${column + 1}` };
    }
    return;
  }
  for (const counts of simplexWalk(corners, steps)) {
    const label =
      corners === 2
        ? String(counts[1]! + 1)
        : corners === 3
          ? `${letters(steps - counts[0]!)}${counts[2]! + 1}`
          : counts.join("-");
    yield { shares: counts.map((count) => count / steps), label };
  }
}
