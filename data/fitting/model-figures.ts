/** Figures as the model files keep them. @module */
import type { SpreadFile } from "../../api/engine/glass/model-file.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { quantile } from "./accuracy.ts";
import type { Scale } from "./calibrate.ts";
import type { GlassRow } from "./read-glasses.ts";

/** A number to so many significant digits. */
export function figure(value: number, digits = 7): number {
  return Number(value.toPrecision(digits)) + 0;
}

/** Central 99.8 % of the rows, so that one odd sample does not stretch a limit [mol %]. */
export function trainingRanges(rows: readonly GlassRow[]): Record<string, [number, number]> {
  return Object.fromEntries(
    MODEL_OXIDES.map((oxide, i) => {
      const shares = rows.map((row) => 100 * row.x[i]!);
      return [oxide, [figure(quantile(shares, 0.001), 4), figure(quantile(shares, 0.999), 4)]];
    }),
  );
}

/** A fitted scale with the factor that makes leverages. */
export function spreadFile(scale: Scale, leverageFactor: Float64Array): SpreadFile {
  return {
    base: figure(scale.base, 5),
    slopes: Object.fromEntries(Object.entries(scale.slopes).map(([oxide, slope]) => [oxide, figure(slope, 4)])),
    leverageSlope: figure(scale.leverageSlope, 4),
    leverageFactor: [...leverageFactor].map((v) => figure(v, 5)),
    limits: [figure(scale.limits[0], 5), figure(scale.limits[1], 5)],
  };
}
