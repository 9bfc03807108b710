/** The points of a blend, in an order in which each differs from the one before by one step. @module */

/** Every mixture of all corners, or a square with a glaze at each of four corners. */
export type Shape = "simplex" | "grid";

/** One point: steps of each corner, and where it lies. */
export interface LatticePoint {
  /** Share of each corner; sums to 1 [-]. */
  shares: number[];
  label: string;
}

/** All points of a blend, each at hand by its place in the order: whoever goes on at any index pays nothing for those before. */
export interface Lattice {
  size: number;
  at(index: number): LatticePoint;
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
  for (let k = 1; k < corners && size < 1e12; k++) size = (size * (steps + k)) / k;
  return Math.round(size);
}

/** Points of a square. @example gridSize(4, 3) // 20 */
export const gridSize = (across: number, down: number): number => (across + 1) * (down + 1);

/** `waysOf(k, n)[i][j]` is how many ways there are to share j steps among i corners; row 0 is not used. */
function waysOf(corners: number, steps: number): number[][] {
  const rows = [[], Array<number>(steps + 1).fill(1)];
  for (let k = 2; k < corners; k++) {
    let sum = 0;
    rows.push(rows[k - 1]!.map((ways) => (sum += ways)));
  }
  return rows;
}

/**
 * Every way to share `steps` among `corners`, each one step away from the one before: the first corner falls, and the
 * rest is walked to and fro.
 * @returns whole steps of each corner at a place in the order; place 0 is the first corner alone
 * @example simplexOrder(2, 2)(1) // [1, 1]
 */
export function simplexOrder(corners: number, steps: number): (index: number) => number[] {
  const ways = waysOf(corners, steps);
  return (index) => {
    const counts: number[] = [];
    let left = steps;
    let place = index;
    for (let others = corners - 1; others > 0; others--) {
      let first = left;
      while (place >= ways[others]![left - first]!) place -= ways[others]![left - first--]!;
      // Forward after even steps and backward after odd ones, so that rows meet end to end.
      if (first % 2 === 1) place = ways[others]![left - first]! - 1 - place;
      counts.push(first);
      left -= first;
    }
    return [...counts, left];
  };
}

/** A, B … Z, AA, AB … @example letters(27) // "AB" */
export function letters(n: number): string {
  return (n >= 26 ? letters(Math.floor(n / 26) - 1) : "") + String.fromCharCode(65 + (n % 26));
}

/**
 * What to scratch into the back of a tile: a number along a line; a row's letter and a number in a triangle; with more
 * corners a letter for each corner that is in it, first A, and how many steps of it.
 * @example simplexLabel([3, 0, 1, 0]) // "A3C1"
 */
export function simplexLabel(counts: readonly number[]): string {
  const steps = counts.reduce((sum, count) => sum + count, 0);
  if (counts.length === 2) return String(counts[1]! + 1);
  if (counts.length === 3) return `${letters(steps - counts[0]!)}${counts[2]! + 1}`;
  return counts.map((count, c) => (count > 0 ? `${letters(c)}${count}` : "")).join("");
}

/**
 * @param steps - along an edge of a simplex; across a grid, from corner 1 to 2
 * @param stepsDown - down a grid's side, from corner 1 to 3
 */
export function latticeOf(corners: number, shape: Shape, steps: number, stepsDown: number): Lattice {
  if (shape === "grid") return gridOf(steps, stepsDown);
  const order = simplexOrder(corners, steps);
  return {
    size: simplexSize(corners, steps),
    at(index) {
      const counts = order(index);
      return { shares: counts.map((count) => count / steps), label: simplexLabel(counts) };
    },
  };
}

/** A square walked to and fro; shares by area. */
function gridOf(across: number, down: number): Lattice {
  return {
    size: gridSize(across, down),
    at(index) {
      const row = Math.floor(index / (across + 1));
      const k = index % (across + 1);
      const column = row % 2 === 0 ? k : across - k;
      const u = column / across;
      const v = row / down;
      return { shares: [(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v], label: `${letters(row)}${column + 1}` };
    },
  };
}
