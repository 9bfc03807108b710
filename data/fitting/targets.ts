/** How close the models have to come on unseen publications. @module */
import type { AccuracyFigures } from "../../api/engine/glass/types.ts";
import type { Domain } from "./domains.ts";

/** One demand. */
export interface Target {
  /** Id of the property in specs.ts. */
  property: string;
  domain: Domain;
  figure: keyof AccuracyFigures;
  label: string;
  atMost: number;
}

/** What a first regression with physical terms was found to reach, taken as the least to ask. */
export const TARGETS: readonly Target[] = [
  { property: "expansion", domain: "glaze", figure: "medianAbsoluteError", label: "median error", atMost: 0.19 },
  { property: "expansion", domain: "glaze", figure: "rmse", label: "RMSE", atMost: 0.53 },
  {
    property: "expansion",
    domain: "stoneware-like",
    figure: "medianAbsoluteError",
    label: "median error",
    atMost: 0.18,
  },
  { property: "expansion", domain: "stoneware-like", figure: "rmse", label: "RMSE", atMost: 0.45 },
  { property: "transition", domain: "glaze", figure: "medianAbsoluteError", label: "median error", atMost: 16 },
  { property: "youngs", domain: "glaze", figure: "medianAbsoluteError", label: "median error", atMost: 1.6 },
];
