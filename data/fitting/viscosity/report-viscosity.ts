/** What the report says of the viscosity. @module */
import type { AccuracyFigures } from "../../../api/engine/glass/types.ts";
import { accuracyOf } from "../accuracy.ts";
import { DOMAINS, inDomain } from "../domains.ts";
import { agreementPlot } from "../plot.ts";
import { familyRows, worstLines } from "../report-parts.ts";
import { type AccuracyRow, accuracyTable, intervalTable } from "../report-tables.ts";
import { targetLines } from "../target-lines.ts";
import { TARGETS } from "../targets.ts";
import type { FittedViscosity } from "./fit-viscosity.ts";
import { isIsokom } from "./points.ts";

const ZERO_C = 273.15;

/** Pictures of predicted against measured, by file name. */
export function viscosityPlots({ rows, points, errors }: FittedViscosity): Record<string, string> {
  const draw = (isokoms: boolean, title: string, unit: string, range: [number, number], tick: number) => {
    const own = points.flatMap((point, i) =>
      isIsokom(point.column) === isokoms && inDomain("glaze", rows[point.row]!.x) ? i : [],
    );
    const measured = own.map((i) => (isokoms ? points[i]!.temperatureK - ZERO_C : points[i]!.logViscosity));
    return agreementPlot(
      measured,
      own.map((i, k) => measured[k]! + errors[i]!),
      { title, unit, range, tick },
    );
  };
  return {
    "viscosity.svg": draw(false, "Viscosity at 800 to 1400 °C", "log10(Pa·s)", [0, 9], 1),
    "viscosity-temperature.svg": draw(true, "Temperature of 10^3 to 10^12 Pa·s", "°C", [400, 1700], 200),
  };
}

/** The section as Markdown. */
export function viscositySection(fitted: FittedViscosity): string[] {
  const { training, heldOut, intervals, form, noise } = fitted.model;
  const byName = Object.entries(heldOut).sort(([a], [b]) => a.localeCompare(b, "en", { numeric: true }));
  const rows = (start: string) =>
    byName.flatMap(([column, figures]): AccuracyRow[] =>
      column.startsWith(start) ? [[column, "glaze", figures]] : [],
    );
  return [
    "## Viscosity",
    "",
    `${training.points} points of ${training.rows} glasses from ${training.publications} publications; ${form}.`,
    "",
    "Temperature at a viscosity (K; `t_log4` is 10^4 Pa·s):",
    "",
    accuracyTable(rows("t_log"), 0),
    "",
    "![predicted against measured temperature](viscosity-temperature.svg)",
    "",
    "log10 of the viscosity at a temperature (`log_visc_1200` is 1200 °C):",
    "",
    accuracyTable(rows("log_visc"), 2),
    "",
    "![predicted against measured viscosity](viscosity.svg)",
    "",
    ...TARGETS.filter((target) => target.property === "viscosity").flatMap((target) =>
      targetLines(target, heldOut[target.column!]!, {}),
    ),
    "",
    "By family, temperature of 10^4 Pa·s (K):",
    "",
    accuracyTable(familyTable(fitted, "t_log4"), 0),
    "",
    "By family, log10 of the viscosity at 1200 °C:",
    "",
    accuracyTable(familyTable(fitted, "log_visc_1200"), 2),
    "",
    "How often a stated 90 % interval held; widths in units of the scatter of a point, the root of the squares of",
    `${noise.logSd} in log10 and ${noise.temperatureSdK} K times the slope:`,
    "",
    intervalTable(intervals),
    "",
    "Largest misses among glazes, in units of that scatter, by publication number of the data set (measured, error):",
    "",
    ...worstLines(misses(fitted)),
    "",
  ];
}

/** Domains, then families, of one column. */
function familyTable({ rows, points, errors }: FittedViscosity, column: string): AccuracyRow[] {
  const own = points.flatMap((point, i) => (point.column === column ? i : []));
  const compositions = own.map((i) => rows[points[i]!.row]!.x);
  const seen = own.map((i) => errors[i]!);
  const inside = (domain: (typeof DOMAINS)[number]): AccuracyFigures =>
    accuracyOf(seen.filter((_, k) => inDomain(domain, compositions[k]!)));
  return [
    ...DOMAINS.map((domain): AccuracyRow => ["model", domain, inside(domain)]),
    ...familyRows(compositions, seen),
  ];
}

function misses({ rows, points, errors, standardised }: FittedViscosity) {
  return points.flatMap(({ row, column, temperatureK, logViscosity }, i) => {
    const { publication, x } = rows[row]!;
    if (!inDomain("glaze", x)) return [];
    const celsius = `${Math.round(temperatureK - ZERO_C)} °C`;
    const measured = isIsokom(column)
      ? `10^${logViscosity} Pa·s at ${celsius}`
      : `10^${Number(logViscosity.toFixed(2))} Pa·s at ${celsius}`;
    const unit = isIsokom(column) ? "K" : "in log10";
    return { publication, size: Math.abs(standardised[i]!), measured, error: errors[i]!, unit };
  });
}
