/** When a stretched glaze cracks. @module */
import { readEven } from "../numeric/interpolate.ts";
import { CHANNELLING } from "./constants.ts";

/**
 * Dundurs' first parameter of glaze on body.
 *
 *     α = (E′_g − E′_b)/(E′_g + E′_b),   E′ = E/(1 − ν²)
 *
 * @returns between −1 (soft glaze on a stiff body) and 1 [-]
 * @example stiffnessContrast(70e9, 0.2, 30e9, 0.2) // 0.4
 */
export function stiffnessContrast(glazePa: number, glazePoisson: number, bodyPa: number, bodyPoisson: number): number {
  const glaze = glazePa / (1 - glazePoisson ** 2);
  const body = bodyPa / (1 - bodyPoisson ** 2);
  return (glaze - body) / (glaze + body);
}

/**
 * Channelling factor Z in G = Z σ² h / E′: 1.976 for equal stiffness, more on a soft body.
 * @param contrast - Dundurs' α [-], used between −0.5 and 0.6 and carried on beyond
 * Source: J.W. Hutchinson, Z. Suo, Adv. Appl. Mech. 29 (1992) 63; J.L. Beuth, Int. J. Solids Struct. 29 (1992) 1657
 * (from memory; table calculated).
 * @example channellingFactor(0) // 1.976
 */
export function channellingFactor(contrast: number): number {
  return Math.max(readEven(CHANNELLING, contrast), 1);
}

/**
 * Stress above which a crack runs across the glaze.
 *
 *     σ_c = K / √(Z h)
 *
 * @param toughness - K_Ic for cracking at once, K0 for cracking in time [Pa·√m]
 * @param factor - Z [-]
 * @param glazeM - glaze thickness h [m]
 * @returns critical tension [Pa]: doubling the thickness lowers it by 29 %
 * @example criticalStress(0.7e6, 1.976, 2e-4) // 35.2e6
 */
export function criticalStress(toughness: number, factor: number, glazeM: number): number {
  return toughness / Math.sqrt(factor * glazeM);
}
