/**
 * The roll that a running glaze pushes before it.
 *
 * Surface tension rounds the lower edge over a length ℓ = (σ h / ρ g sin θ)^(1/3), 1 to 2 mm for a glaze. The edge
 * thickens to a roll, and what fills the roll does not come forward. Both are fits to a film solved numerically
 * (tests/independent/film.py), the height good to a twentieth, the advance to a quarter of ℓ and a tenth.
 *
 * @module
 */
import { frontAdvance } from "./film.ts";
import { ROLL_GROWTH, ROLL_LAG } from "./practice.ts";

/**
 * Length over which surface tension rounds the lower edge: (σ h / ρ g sin θ)^(1/3).
 * @param tensionNPerM - surface tension of the melt [N/m]
 * @param thicknessM - thickness of the film [m]
 * @param pullNPerM3 - weight along the wall, ρ g sin θ [N/m³]
 * @returns length [m]
 * @example rollLength(0.35, 0.3e-3, 24500) // 0.00162
 */
export function rollLength(tensionNPerM: number, thicknessM: number, pullNPerM3: number): number {
  return Math.cbrt((tensionNPerM * thicknessM) / pullNPerM3);
}

/**
 * Thickness at the top of the roll.
 *
 *     r = h [1 + (R − 1)(1 − exp(−(x/1.6 ℓ)^0.65))]
 *
 * @param thicknessM - film behind the roll [m]
 * @param freeM - how far the edge would have come without surface tension, x [m]
 * @param lengthM - {@link rollLength} [m]
 * @param fullHeight - R, height of a full roll in film thicknesses: 1.31 on a wall that is wet already, 1.74 on one hardly wet [-]
 * @returns thickness [m]
 * @example rollHeight(0.3e-3, 0.0032, 0.0016, 1.5) // 0.00040
 */
export function rollHeight(thicknessM: number, freeM: number, lengthM: number, fullHeight: number): number {
  const grown = -Math.expm1(-((freeM / (ROLL_GROWTH.value * lengthM)) ** ROLL_GROWTH.power));
  return thicknessM * (1 + (fullHeight - 1) * grown);
}

/**
 * Advance of an edge that fills a roll on its way.
 *
 *     L = x − λ (1 − exp(−x/1.15 λ)),   λ = 1.5 (R − 1) ℓ
 *
 * @param freeRunM - what an endless coat without surface tension would run [m]
 * @param glazedM - height of the glazed band [m]
 * @param lengthM - {@link rollLength} [m]
 * @param fullHeight - height of a full roll in film thicknesses [-]
 * @returns advance of the lower edge [m]
 * @example edgeAdvance(0.01, 0.1, 0, 1.5) // 0.01
 */
export function edgeAdvance(freeRunM: number, glazedM: number, lengthM: number, fullHeight: number): number {
  const free = frontAdvance(freeRunM, glazedM);
  const lag = ROLL_LAG.value * (fullHeight - 1) * lengthM;
  return lag > 0 ? free + lag * Math.expm1(-free / (ROLL_LAG.settling * lag)) : free;
}
