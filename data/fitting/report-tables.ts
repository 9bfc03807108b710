/** Tables of the report in Markdown. @module */
import type { IntervalFigures } from "../../api/engine/glass/model-file.ts";
import type { AccuracyFigures } from "../../api/engine/glass/types.ts";
import type { AttemptScore } from "./attempts.ts";

/** One line of an accuracy table. */
export type AccuracyRow = [name: string, domain: string, figures: AccuracyFigures];

/** One line a thing scored; one decimal more than the property is quoted to. */
export function accuracyTable(rows: readonly AccuracyRow[], decimals: number): string {
  const f = (value: number) => value.toFixed(decimals + 1);
  return [
    "| what | domain | n | median error | bias | 90th percentile | RMSE |",
    "|---|---|---:|---:|---:|---:|---:|",
    ...rows.map(
      ([name, domain, a]) =>
        `| ${name} | ${domain} | ${a.n} | ${f(a.medianAbsoluteError)} | ${f(a.bias)} | ${f(a.p90)} | ${f(a.rmse)} |`,
    ),
  ].join("\n");
}

/** How often intervals held. */
export function intervalTable(rows: readonly IntervalFigures[]): string {
  return [
    "| domain | quarter | n | held | median half-width |",
    "|---|---|---:|---:|---:|",
    ...rows.map(
      (r) => `| ${r.domain} | ${r.quarter} | ${r.n} | ${(100 * r.held).toFixed(1)} % | ${r.medianHalfWidth} |`,
    ),
  ].join("\n");
}

/** Ways of fitting beside each other. */
export function attemptTable(attempts: readonly AttemptScore[]): string {
  const cells = (a: AccuracyFigures) =>
    `${a.medianAbsoluteError.toFixed(3)} / ${a.p90.toFixed(3)} / ${a.rmse.toFixed(3)}`;
  return [
    "| way | terms | glaze: median / 90th / RMSE | stoneware-like | |",
    "|---|---:|---|---|---|",
    ...attempts.map(
      (a) =>
        `| ${a.name} | ${a.terms} | ${cells(a.figures.glaze)} | ${cells(a.figures["stoneware-like"])} | ${a.verdict} |`,
    ),
  ].join("\n");
}
