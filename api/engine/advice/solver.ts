/** Linear programmes, handed to a solver that the caller lends. @module */

/** Least Σ cost·x within bounds of x and of rows. */
export interface LinearProgram {
  cost: number[];
  low: number[];
  high: number[];
  rows: { weights: number[]; low: number; high: number }[];
}

/** Gives the best x, or null where no x keeps every bound, or where numbers too far apart defeat the solver. */
export type LinearSolver = (program: LinearProgram) => number[] | null;

/** What is used of the solver's package. */
interface Highs {
  withModel<R>(source: unknown, operation: (model: HighsModel) => R): R;
  constants: { modelStatus: { optimal: number } };
}
interface HighsModel {
  options: { set(options: Record<string, unknown>): void };
  run(): unknown;
  getModelStatus(): number;
  getSolution(): { colValue: ArrayLike<number> };
}

let loading: Promise<LinearSolver> | undefined;

/**
 * HiGHS, loaded when it is first wanted (3.5 MB of WebAssembly, some 50 ms).
 * The name is not written as a constant, so that bundles for runtimes without it stay free of it; such a runtime lends a
 * solver of its own.
 * @throws Error where the runtime has no such package
 * Source: Q. Huangfu, J.A.J. Hall, Math. Program. Comput. 10 (2018) 119-142.
 */
export function loadHighs(): Promise<LinearSolver> {
  const name = ["hi", "ghs"].join("");
  loading ??= import(/* @vite-ignore */ name)
    .then((module: { default: () => Promise<Highs> }) => module.default())
    .then(asSolver);
  loading.catch(() => {
    loading = undefined;
  });
  return loading;
}

/** Wraps a HiGHS instance. */
export function asSolver(highs: Highs): LinearSolver {
  return ({ cost, low, high, rows }) => {
    const starts = [0];
    const indices: number[] = [];
    const values: number[] = [];
    for (const { weights } of rows) {
      weights.forEach((weight, j) => {
        if (weight === 0) return;
        indices.push(j);
        values.push(weight);
      });
      starts.push(indices.length);
    }
    const model = {
      numCols: cost.length,
      numRows: rows.length,
      colCost: cost,
      colLower: low,
      colUpper: high,
      rowLower: rows.map((row) => row.low),
      rowUpper: rows.map((row) => row.high),
      matrix: { format: "csr", numRows: rows.length, numCols: cost.length, starts, indices, values },
    };
    return highs.withModel(model, (m) => {
      // Programmes this small are solved sooner than simplified.
      m.options.set({ output_flag: false, presolve: "off" });
      if (!ran(m)) return null;
      return m.getModelStatus() === highs.constants.modelStatus.optimal ? Array.from(m.getSolution().colValue) : null;
    });
  };
}

/** Whether the solver got through: a recipe of a million parts beside one of a half can be more than its numbers bear. */
function ran(m: HighsModel): boolean {
  try {
    m.run();
    return true;
  } catch (error) {
    if (error instanceof Error && error.name === "HighsError") return false;
    throw error;
  }
}
