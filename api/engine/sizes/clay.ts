/** How much clay to wedge. @module */
import type { Faults, LengthUnit } from "../lengths/index.ts";
import { quantity, round } from "../quantity.ts";
import {
  type Figure,
  type KnownShrinkage,
  PLASTIC_DENSITY,
  THROWING_LOSS,
  TRIMMING,
  volumeShrinkage,
} from "../shrinkage/index.ts";
import type { Clay, SizesRequest } from "./types.ts";

/** What lies between the fired pot and the lump on the scale. */
export interface Allowances {
  density: Figure;
  trimming: Figure;
  loss: Figure;
}

/** Reads the allowances; a figure that is stated is taken as exact. */
export function allowancesOf(clay: SizesRequest["clay"], faults: Faults): Allowances {
  const { plasticDensityGPerCm3: density, trimmingPercent: trimming, throwingLossPercent: loss } = clay ?? {};
  const at = "/clay";
  if (density !== undefined) {
    faults.number(density, `${at}/plasticDensityGPerCm3`, "Density of plastic clay", { from: 1, to: 3, unit: "g/cm3" });
  }
  if (trimming !== undefined)
    faults.number(trimming, `${at}/trimmingPercent`, "Clay turned away", { from: 0, to: 90, unit: "%" });
  if (loss !== undefined)
    faults.number(loss, `${at}/throwingLossPercent`, "Clay left on the wheel", { from: 0, to: 90, unit: "%" });
  return {
    density: exact(density, PLASTIC_DENSITY),
    trimming: exact(trimming, TRIMMING),
    loss: exact(loss, THROWING_LOSS),
  };
}

const exact = (stated: number | undefined, usual: Figure): Figure =>
  stated === undefined ? usual : { value: stated, low: stated, high: stated };

/** Nothing turned away, nothing left on the wheel: slabs, where waste is stated apart. */
export const NOTHING: Figure = { value: 0, low: 0, high: 0 };

/**
 * Clay to wedge for a fired volume of clay.
 *
 *     m = V_f/((1 − S)²(1 − S_up)) · ρ/((1 − trimmed)(1 − lost))
 *
 * The interval adds the doubts of shrinkage, density, trimming and loss in squares.
 * @param firedMm3 - volume of the fired clay [mm3]
 * @param pieces - how many, or null for one
 * @returns weight [g], and as it is said at the bench
 */
export function clayFor(
  firedMm3: number,
  known: KnownShrinkage,
  { density, trimming, loss }: Allowances,
  unit: LengthUnit,
  pieces: number | null,
): Clay {
  const { across, up } = known;
  const weight = (s: "value" | "low" | "high", d: number, t: number, l: number) =>
    ((firedMm3 / 1000 / (1 - volumeShrinkage(across[s], up[s]))) * d) / ((1 - t / 100) * (1 - l / 100));
  const value = weight("value", density.value, trimming.value, loss.value);
  const half = (end: "low" | "high") =>
    Math.hypot(
      weight(end, density.value, trimming.value, loss.value) - value,
      weight("value", density[end], trimming.value, loss.value) - value,
      weight("value", density.value, trimming[end], loss.value) - value,
      weight("value", density.value, trimming.value, loss[end]) - value,
    );
  const [low, high] = [value - half("low"), value + half("high")];
  const many = pieces !== null && pieces > 1 ? pieces : null;
  return {
    perPiece: quantity(value, low, high, "g", { decimals: 0 }),
    wedge: sayWeight(value, unit),
    forAll:
      many === null
        ? null
        : {
            pieces: many,
            weight: quantity((value * many) / 1000, (low * many) / 1000, (high * many) / 1000, "kg"),
            text: sayWeight(value * many, unit),
          },
  };
}

/** A weight as it is set on the scale: to 5 g below 200 g, 10 g above, 0.1 kg above 5 kg; pounds and ounces for inches. */
function sayWeight(grams: number, unit: LengthUnit): string {
  if (unit === "in") {
    const ounces = Math.max(1, Math.round(grams / 28.349523125));
    const [pounds, left] = [Math.floor(ounces / 16), ounces % 16];
    return [pounds > 0 ? `${pounds} lb` : "", left > 0 ? `${left} oz` : ""].filter(Boolean).join(" ");
  }
  if (grams >= 5000) return `${round(grams / 1000, 1)} kg`;
  const step = grams < 200 ? 5 : 10;
  const rounded = Math.max(step, Math.round(grams / step) * step);
  return rounded >= 1000 ? `${round(rounded / 1000, 2)} kg` : `${rounded} g`;
}
