/** Density of the dry solids of a recipe. @module */
import type { ChemistryLine } from "../chemistry/index.ts";
import type { Notice } from "../errors.ts";
import { round } from "../quantity.ts";
import { materialCalled } from "../recipe/materials.ts";
import { DISSOLVE, type Figure, KNOWN_DENSITY_PLUS_MINUS, USUAL_SOLIDS } from "./practice.ts";

/** Share of the batch without a known density that goes without saying [-]. */
const QUIET = 0.02;

/**
 * Density of the mixed solids, 1/Σ(x/ρ): volumes add, weights do not share volume evenly.
 * @param lines - shares of the dry batch
 * @param stated - measured by whoever asks [g/cm3]
 * @param warnings - told where a material's density is not known and stood in for
 * @returns value, low and high [g/cm3]
 */
export function solidsDensity(lines: readonly ChemistryLine[], stated: number | undefined, warnings: Notice[]): Figure {
  if (stated !== undefined) return { value: stated, low: stated, high: stated };
  const mixed = (unknown: number) =>
    1 / lines.reduce((sum, { share, material }) => sum + share / (densityOf(material) ?? unknown), 0);
  const missing = lines.filter(({ material, share }) => share > 0 && densityOf(material) === null);
  const share = missing.reduce((sum, line) => sum + line.share, 0);
  if (share > QUIET) {
    const names = missing.map(({ label }) => label).join(", ");
    const message = `I know no density for ${names} (${round(100 * share, 0)} % of the batch) and took ${USUAL_SOLIDS.value} g/cm3. Weigh a litre of the mixed glaze to be sure.`;
    warnings.push({ code: "density-assumed", message, pointer: "/glaze" });
  }
  const soluble = lines.filter((line) => line.share > QUIET && line.material !== null && DISSOLVE.has(line.material));
  if (soluble.length > 0) {
    const names = soluble.map(({ label }) => label).join(", ");
    const message = `Part of this goes into the water: ${names}. The hydrometer then reads too high, and water poured off takes glaze with it.`;
    warnings.push({ code: "dissolves", message, pointer: "/glaze" });
  }
  return {
    value: mixed(USUAL_SOLIDS.value),
    low: mixed(USUAL_SOLIDS.low) - KNOWN_DENSITY_PLUS_MINUS,
    high: mixed(USUAL_SOLIDS.high) + KNOWN_DENSITY_PLUS_MINUS,
  };
}

function densityOf(material: string | null): number | null {
  return material === null ? null : (materialCalled(material)?.densityGPerCm3 ?? null);
}
