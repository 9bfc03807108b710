/** Water absorption of fired bars, from their weights. @module */
import type { Faults } from "../lengths/index.ts";
import { type Quantity, quantity, round, UNITS } from "../quantity.ts";
import { studentQuantile } from "./student-t.ts";
import type { Absorption, Weights } from "./types.ts";

/** Density of water at room temperature [g/cm3]. */
const WATER = 0.998;
/** Half-width taken for a single weighing: absorption varies that much between pieces [% of the figure], from memory. */
const SINGLE = 0.15;

/** One bar's figures. */
export interface Soaked {
  absorption: number;
  porosity: number | null;
  density: number | null;
}

/**
 * Absorption, apparent porosity and bulk density of one bar.
 *
 *     A = 100 (M − D)/D,   P = 100 (M − D)/(M − S),   B = D ρ_w/(M − S)
 *
 * @param weights - dry D, soaked M, hung in water S [g]
 * @returns absorption [% of dry weight], porosity [% of volume], bulk density [g/cm3]; undefined with a fault kept
 * Source: ASTM C373 (formulas from memory); boiled 5 h and soaked 24 h.
 */
export function soak({ dryG, soakedG, suspendedG }: Weights, pointer: string, faults: Faults): Soaked | undefined {
  const fault = (field: string, message: string) => faults.add(`${pointer}/${field}`, message);
  if (!(dryG > 0)) fault("dryG", "The dry weight must be above 0 g.");
  else if (!(soakedG >= dryG)) {
    fault("soakedG", `A soaked bar of ${soakedG} g is lighter than the dry one of ${dryG} g. Were the two swapped?`);
  } else if (soakedG > 2 * dryG) {
    fault("soakedG", `${soakedG} g soaked against ${dryG} g dry: no clay drinks its own weight. Check the figures.`);
  } else if (suspendedG !== undefined && !(suspendedG > 0 && suspendedG < dryG)) {
    fault("suspendedG", `Hung in water a bar weighs less than dry. This one has ${suspendedG} g, and ${dryG} g dry.`);
  } else {
    const water = soakedG - dryG;
    const volume = suspendedG === undefined ? null : soakedG - suspendedG;
    return {
      absorption: (100 * water) / dryG,
      porosity: volume && (100 * water) / volume,
      density: volume && (dryG * WATER) / volume,
    };
  }
  return undefined;
}

/** Means over the bars that were weighed; null without any. */
export function absorptionOf(soaked: readonly Soaked[]): Absorption | null {
  if (soaked.length === 0) return null;
  const hung = soaked.filter(({ density }) => density !== null);
  const water = meanOf(
    soaked.map((one) => one.absorption),
    "% of dry weight",
  );
  return {
    bars: soaked.length,
    waterAbsorption: water,
    apparentPorosity: hung.length
      ? meanOf(
          hung.map((one) => one.porosity!),
          "% of volume",
        )
      : null,
    bulkDensity: hung.length
      ? meanOf(
          hung.map((one) => one.density!),
          UNITS.density,
        )
      : null,
    message:
      `The fired clay takes up ${round(water.value, 1)} % of its weight in water (${round(water.low, 1)} to ` +
      `${round(water.high, 1)} %): ${sayAbsorption(water.value)}.`,
  };
}

function meanOf(values: readonly number[], unit: string): Quantity {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / Math.max(1, n - 1));
  const half = n === 1 ? SINGLE * mean : (studentQuantile(0.95, n - 1) * sd) / Math.sqrt(n);
  return quantity(mean, Math.max(0, mean - half), mean + half, unit);
}

/** Groups of ISO 13006, in words of the bench. */
function sayAbsorption(percent: number): string {
  if (percent <= 0.5) return "glassy, tight without a glaze";
  if (percent <= 3) return "nearly tight; it weeps little";
  if (percent <= 10) return "porous; it weeps unless the glaze is sound, and it swells with moisture in time";
  return "open; it weeps unless the glaze is sound, and it swells with moisture in time";
}
