/** Linear programmes and what solves them. @module */
import { solve } from "yalps";

/** Least Σ cost·x within bounds of x and of rows. */
export interface LinearProgram {
  cost: number[];
  /** Finite. */
  low: number[];
  high: number[];
  rows: { weights: number[]; low: number; high: number }[];
}

/** Gives the best x, or null where no x keeps every bound, or where numbers too far apart defeat the solver. */
export type LinearSolver = (program: LinearProgram) => number[] | null;

const COST = -1;

/**
 * Solves a programme of some tens of rows and columns by the simplex method on a dense tableau, in some 50 µs.
 * @example solveLinear({ cost: [1, 2], low: [0, 0], high: [9, 9], rows: [{ weights: [1, 1], low: 3, high: 3 }] }) // [3, 0]
 * Source: G.B. Dantzig, Linear Programming and Extensions, Princeton 1963.
 */
export const solveLinear: LinearSolver = ({ cost, low, high, rows }) => {
  // The package counts every column from 0, so each is counted from its own low end.
  const constraints = [
    ...rows.map((row, i) => {
      const atLow = row.weights.reduce((sum, weight, j) => sum + weight * low[j]!, 0);
      return [i, { min: row.low - atLow, max: row.high - atLow }] as const;
    }),
    ...high.map((most, j) => [rows.length + j, { max: most - low[j]! }] as const),
  ];
  const variables = cost.map((each, j) => {
    const inRows = rows.map(({ weights }, i) => [i, weights[j]!] as const);
    return [j, [[COST, each], [rows.length + j, 1], ...inRows]] as const;
  });
  const model = { direction: "minimize", objective: COST, constraints, variables } as const;
  const { status, variables: above } = solve(model, { includeZeroVariables: true });
  return status === "optimal" ? above.map(([j, value]) => low[j]! + value) : null;
};
