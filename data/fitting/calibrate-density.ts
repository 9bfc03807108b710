/** How far Appen's densities are off, from the few glasses whose density is printed beside an analysis. @module */
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { appenDensity } from "../../api/engine/glass/density/appen-1949.ts";
import printed from "../factor-sets/printed-densities.json" with { type: "json" };

/** 95th percentile of Student's t for 1 to 12 degrees of freedom (printed tables, from memory) [-]. */
const STUDENT_95 = [6.314, 2.92, 2.353, 2.132, 2.015, 1.943, 1.895, 1.86, 1.833, 1.812, 1.796, 1.782] as const;

/** Glasses with printed densities; weight per cent. */
export const PRINTED: readonly { glass: string; density: number; weight: Record<string, number>; source: string }[] =
  printed.glasses.map(({ weight, ...glass }) => ({ ...glass, weight: Object.fromEntries(Object.entries(weight)) }));

/** One glass. */
export interface DensityCheck {
  glass: string;
  source: string;
  /** Printed [g/cm3]. */
  density: number;
  /** Reckoned less printed, as a share of the printed [-]. */
  off: number;
  /** Half-width that the other glasses would give, as a share [-]. */
  halfWidthOfOthers: number;
}

/** What the printed densities say about the sum. */
export interface DensityCalibration {
  checks: DensityCheck[];
  /** Half-width of a 90 % interval as a share of the value [-]. */
  halfWidth: number;
  /** Share of glasses within the half-width that the others give [-]. */
  held: number;
}

/**
 * Half-width of a 90 % interval for one more glass, from the shares by which n glasses are off.
 *
 *     w = t₀.₉₅(n) · √(Σ offᵢ² / n)
 *
 * The mean is not taken off: eight glasses do not fix it, and the sum is not corrected by it.
 * @param off - 1 to 12 shares [-]
 * @example halfWidthFrom([0.03, -0.03]) // 0.0876
 */
export function halfWidthFrom(off: readonly number[]): number {
  const t = STUDENT_95[off.length - 1];
  if (t === undefined) throw new RangeError(`Student's t is tabled for 1 to ${STUDENT_95.length} glasses.`);
  return t * Math.sqrt(off.reduce((sum, share) => sum + share * share, 0) / off.length);
}

/** Each glass left out in turn, and all together. */
export function calibrateDensity(): DensityCalibration {
  const glasses = PRINTED.map(({ glass, density, weight, source }) => {
    const { moleFractions } = analyseGlaze({ oxides: { basis: "weightPercent", amounts: weight } });
    return { glass, source, density, off: appenDensity(moleFractions).value! / density - 1 };
  });
  const checks = glasses.map((one) => ({
    ...one,
    halfWidthOfOthers: halfWidthFrom(glasses.filter((other) => other !== one).map(({ off }) => off)),
  }));
  return {
    checks,
    halfWidth: halfWidthFrom(checks.map(({ off }) => off)),
    held: checks.filter(({ off, halfWidthOfOthers }) => Math.abs(off) <= halfWidthOfOthers).length / checks.length,
  };
}
