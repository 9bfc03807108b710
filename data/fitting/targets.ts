/** How close the models have to come on unseen publications. @module */
import type { AccuracyFigures } from "../../api/engine/glass/types.ts";
import type { Domain } from "./domains.ts";

/** One demand. */
export interface Target {
  /** Id of the property in specs.ts. */
  property: string;
  domain: Domain;
  /** Column of the viscosity that it is about: see viscosity/points.ts. */
  column?: string;
  figure: keyof AccuracyFigures;
  label: string;
  atMost: number;
  /** What a published set reads by the same figure in the table that the demand comes from, to compare like with like. */
  beside?: { set: string; name: string; read: number };
}

/** What a first regression with physical terms was found to reach, taken as the least to ask. */
export const TARGETS: readonly Target[] = [
  { property: "expansion", domain: "glaze", figure: "medianAbsoluteError", label: "median error", atMost: 0.19 },
  { property: "expansion", domain: "glaze", figure: "rmse", label: "RMSE", atMost: 0.53, beside: appen(0.62) },
  {
    property: "expansion",
    domain: "stoneware-like",
    figure: "medianAbsoluteError",
    label: "median error",
    atMost: 0.18,
  },
  {
    property: "expansion",
    domain: "stoneware-like",
    figure: "rmse",
    label: "RMSE",
    atMost: 0.45,
    beside: appen(0.54),
  },
  { property: "transition", domain: "glaze", figure: "medianAbsoluteError", label: "median error", atMost: 16 },
  {
    property: "viscosity",
    domain: "glaze",
    column: "log_visc_1200",
    figure: "medianAbsoluteError",
    label: "median error of log10 at 1200 °C",
    atMost: 0.11,
  },
  {
    property: "viscosity",
    domain: "glaze",
    column: "t_log4",
    figure: "medianAbsoluteError",
    label: "median error of the temperature of 10^4 Pa·s",
    atMost: 18,
  },
  { property: "youngs", domain: "glaze", figure: "medianAbsoluteError", label: "median error", atMost: 1.6 },
];

function appen(read: number): NonNullable<Target["beside"]> {
  return { set: "appen-1949", name: "Appen 1949", read };
}
