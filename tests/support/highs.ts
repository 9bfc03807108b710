/** HiGHS, a published solver: what ours is held against. @module */
import type { LinearSolver } from "../../api/engine/advice/index.ts";

/** What is used of the package. */
export interface Highs {
  withModel<R>(source: unknown, operation: (model: HighsModel) => R): R;
  constants: { modelStatus: { optimal: number } };
}
interface HighsModel {
  options: { set(options: Record<string, unknown>): void };
  run(): unknown;
  getModelStatus(): number;
  getSolution(): { colValue: ArrayLike<number> };
}

/** Source: Q. Huangfu, J.A.J. Hall, Math. Program. Comput. 10 (2018) 119-142. */
export async function loadHighs(): Promise<Highs> {
  const { default: load } = (await import("highs")) as unknown as { default: () => Promise<Highs> };
  return load();
}

/** HiGHS in the place of our solver. */
export function asSolver(highs: Highs): LinearSolver {
  return ({ cost, low, high, rows }) => {
    const kept = rows.map(({ weights }) =>
      weights.flatMap((weight, j) => (weight === 0 ? [] : [[j, weight] as const])),
    );
    const starts = [0];
    for (const entries of kept) starts.push(starts.at(-1)! + entries.length);
    const model = {
      numCols: cost.length,
      numRows: rows.length,
      colCost: cost,
      colLower: low,
      colUpper: high,
      rowLower: rows.map((row) => row.low),
      rowUpper: rows.map((row) => row.high),
      matrix: {
        format: "csr",
        numRows: rows.length,
        numCols: cost.length,
        starts,
        indices: kept.flatMap((entries) => entries.map(([j]) => j)),
        values: kept.flatMap((entries) => entries.map(([, weight]) => weight)),
      },
    };
    return highs.withModel(model, (m) => {
      m.options.set({ output_flag: false, presolve: "off" });
      m.run();
      return m.getModelStatus() === highs.constants.modelStatus.optimal ? Array.from(m.getSolution().colValue) : null;
    });
  };
}
