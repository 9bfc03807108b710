/** Least squares with no amount below nothing. @module */

/** Result of {@link nonNegativeFit}. */
export interface NonNegativeFit {
  /** Amount of each column, 0 or more [-]. */
  value: number[];
  iterations: number;
  /** False when the bound on steps was met first; `value` is then the best so far. */
  converged: boolean;
}

/** Share of a column's length that must stand clear of the others, or it adds nothing new. */
const NOTHING_NEW = 1e-10;
/** Share of the target below which a pull is rounding. */
const NO_PULL = 1e-14;

/**
 * Amounts x ≥ 0 that bring Σ x_j column_j nearest to a target, in least squares.
 * Active set: the column that pulls hardest comes in, and what would go below zero goes out. Columns that add nothing
 * new to those in (the same mineral twice) stay out.
 * @param columns - one array a column, all as long as the target
 * @param target - what is to be reached
 * @returns amounts, steps taken, and whether the end was reached
 * Source: C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, Prentice-Hall 1974, chapter 23 (from memory).
 * @example nonNegativeFit([[1, 0], [1, 1]], [3, 1]).value // [2, 1]
 */
export function nonNegativeFit(columns: readonly (readonly number[])[], target: readonly number[]): NonNegativeFit {
  const n = columns.length;
  const lengths = columns.map((column) => Math.hypot(...column));
  const unit = columns.map((column, j) => column.map((v) => (lengths[j]! > 0 ? v / lengths[j]! : 0)));
  const limit = NO_PULL * Math.hypot(...target);
  const inside: number[] = [];
  const barred = new Set<number>();
  let x = new Array<number>(n).fill(0);
  let iterations = 0;
  const done = (converged: boolean): NonNegativeFit => ({
    value: x.map((v, j) => (v > 0 ? v / lengths[j]! : 0)),
    iterations,
    converged,
  });
  while (iterations < 3 * n + 10) {
    iterations += 1;
    const rest = target.map((t, i) => t - unit.reduce((sum, column, j) => sum + column[i]! * x[j]!, 0));
    let next = -1;
    let strongest = limit;
    for (let j = 0; j < n; j++) {
      if (inside.includes(j) || barred.has(j)) continue;
      const pull = dot(unit[j]!, rest);
      if (pull > strongest) [next, strongest] = [j, pull];
    }
    if (next < 0) return done(true);
    inside.push(next);
    let trial = solve(inside, unit, target);
    if (!trial || trial.at(-1)! <= 0) {
      inside.pop();
      barred.add(next);
      continue;
    }
    while (trial?.some((v) => v <= 0)) {
      let step = 1;
      for (const [k, j] of inside.entries()) if (trial[k]! <= 0) step = Math.min(step, x[j]! / (x[j]! - trial[k]!));
      for (const [k, j] of inside.entries()) x[j] = x[j]! + step * (trial[k]! - x[j]!);
      for (let k = inside.length - 1; k >= 0; k--) {
        if (trial[k]! <= 0 && x[inside[k]!]! <= limit) {
          x[inside[k]!] = 0;
          inside.splice(k, 1);
        }
      }
      trial = solve(inside, unit, target);
    }
    x = new Array<number>(n).fill(0);
    for (const [k, j] of inside.entries()) x[j] = trial![k]!;
    barred.clear();
  }
  return done(false);
}

/** Plain least squares on the chosen columns by orthogonalisation; undefined when one adds nothing new. */
function solve(chosen: number[], unit: number[][], target: readonly number[]): number[] | undefined {
  const m = chosen.length;
  const q: number[][] = [];
  const r = chosen.map(() => new Array<number>(m).fill(0));
  for (const [k, j] of chosen.entries()) {
    let v = [...unit[j]!];
    // Twice over: one pass loses digits when columns are nearly alike.
    for (let pass = 0; pass < 2; pass++) {
      for (const [l, known] of q.entries()) {
        const share = dot(known, v);
        r[l]![k] = r[l]![k]! + share;
        v = v.map((value, i) => value - share * known[i]!);
      }
    }
    const length = Math.hypot(...v);
    if (!(length > NOTHING_NEW)) return undefined;
    r[k]![k] = length;
    q.push(v.map((value) => value / length));
  }
  const x = q.map((column) => dot(column, target));
  for (let k = m - 1; k >= 0; k--) {
    for (let l = k + 1; l < m; l++) x[k] = x[k]! - r[k]![l]! * x[l]!;
    x[k] = x[k]! / r[k]![k]!;
  }
  return x;
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
