/** Density of a glass with its doubt. @module */
import { type Quantity, quantity, UNITS } from "../../quantity.ts";
import type { MoleFractions } from "../types.ts";
import { appenDensity } from "./appen-1949.ts";

/**
 * Half-width of a 90 % interval as a share: Student's t times how far off the sum is on the eight glasses whose density
 * is printed beside an analysis. Worked out in data/fitting/calibrate-density.ts; a test holds this figure against it.
 */
const DOUBT = 0.041;
const NOTE =
  "The interval rests on eight industrial glasses with printed densities, all that were found: no glaze is among them.";

/** Density and what it leaves out. */
export interface GlassDensity {
  /** Null when no oxide of the glass has a figure. */
  density: Quantity | null;
  missingOxides: string[];
  /** What the interval rests on. */
  note: string;
  sources: string[];
}

/**
 * Density of a fired glass at room temperature by Appen's volumes, 4.1 % to either side.
 * @param moleFractions - fired glass, oxide → mole fraction [-]
 * @returns density [g/cm3], oxides without a volume (left out), what the interval rests on, sources
 * @remarks Bubbles make a real glaze lighter, crystals heavier.
 * @example glassDensity({ SiO2: 0.75, Na2O: 0.25 }).density.value // 2.43
 */
export function glassDensity(moleFractions: MoleFractions): GlassDensity {
  const { value, missing } = appenDensity(moleFractions);
  return {
    density: value === null ? null : quantity(value, value * (1 - DOUBT), value * (1 + DOUBT), UNITS.density),
    missingOxides: missing,
    note: NOTE,
    sources: ["appen-1949"],
  };
}
