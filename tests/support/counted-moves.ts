/** The choice of few moves as a mixed-integer programme, for an independent solver. @module */
import type { Weighing } from "../../api/engine/advice/index.ts";
import type { LinearProgram } from "../../api/engine/advice/solver.ts";

interface Room {
  up: readonly [number, number];
  down: readonly [number, number];
}

/**
 * Least Σ v + perMaterial × moves by branch and bound: least·y ≤ v ≤ most·y, y ∈ {0, 1}, at most so many y.
 * @param highs - instance of the solver's package
 * @returns the least effort; null where nothing keeps every row
 */
export function leastEffortByBranching(
  // biome-ignore lint/suspicious/noExplicitAny: the package's own type is not needed here
  highs: any,
  { cost, low, high, rows }: LinearProgram,
  rooms: readonly Room[],
  { least, perMaterial }: Weighing,
  mostMoves: number,
): number | null {
  const n = rooms.length;
  const most = [...rooms.map(({ up }) => up[1]), ...rooms.map(({ down }) => down[1])];
  const flag = (column: number) => cost.length + column;
  const all: { entries: [number, number][]; low: number; high: number }[] = rows.map((row) => ({
    entries: row.weights.map((weight, column): [number, number] => [column, weight]),
    low: row.low,
    high: row.high,
  }));
  const never = Number.NEGATIVE_INFINITY;
  most.forEach((parts, column) => {
    all.push({
      entries: [
        [column, 1],
        [flag(column), -parts],
      ],
      low: never,
      high: 0,
    });
    all.push({
      entries: [
        [column, -1],
        [flag(column), least],
      ],
      low: never,
      high: 0,
    });
    if (column < n)
      all.push({
        entries: [
          [flag(column), 1],
          [flag(column + n), 1],
        ],
        low: never,
        high: 1,
      });
  });
  all.push({ entries: most.map((_, column): [number, number] => [flag(column), 1]), low: never, high: mostMoves });
  const kept = all.map((row) => ({ ...row, entries: row.entries.filter(([, weight]) => weight !== 0) }));
  const starts = [0];
  for (const { entries } of kept) starts.push(starts.at(-1)! + entries.length);
  const columns = cost.length + most.length;
  const costs = [...cost, ...most.map(() => perMaterial)];
  const model = {
    numCols: columns,
    numRows: kept.length,
    colCost: costs,
    colLower: [...low, ...most.map(() => 0)],
    colUpper: [...high, ...most.map(() => 1)],
    rowLower: kept.map((row) => row.low),
    rowUpper: kept.map((row) => row.high),
    integrality: [...cost.map(() => 0), ...most.map(() => 1)],
    matrix: {
      format: "csr",
      numRows: kept.length,
      numCols: columns,
      starts,
      indices: kept.flatMap(({ entries }) => entries.map(([column]) => column)),
      values: kept.flatMap(({ entries }) => entries.map(([, weight]) => weight)),
    },
  };
  // biome-ignore lint/suspicious/noExplicitAny: as above
  return highs.withModel(model, (m: any) => {
    m.options.set({ output_flag: false, mip_rel_gap: 0 });
    m.run();
    if (m.getModelStatus() !== highs.constants.modelStatus.optimal) return null;
    const x: number[] = Array.from(m.getSolution().colValue);
    return costs.reduce((sum, each, column) => sum + each * x[column]!, 0);
  });
}
