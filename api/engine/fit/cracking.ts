/** When a stretched glaze cracks. @module */

import { readEven } from "../numeric/interpolate.ts";
import { larger } from "../numeric/larger.ts";
import { CHANNELLING, CRACK_GROWTH } from "./constants.ts";

/**
 * Dundurs' first parameter of glaze on body.
 *
 *     α = (E′_g − E′_b)/(E′_g + E′_b),   E′ = E/(1 − ν²)
 *
 * @returns between −1 (soft glaze on a stiff body) and 1 [-]
 * @example stiffnessContrast(70e9, 0.2, 30e9, 0.2) // 0.4
 */
export function stiffnessContrast(glazePa: number, glazePoisson: number, bodyPa: number, bodyPoisson: number): number {
  return contrastOf(glazePa / (1 - glazePoisson ** 2), bodyPa / (1 - bodyPoisson ** 2));
}

/** The same from the plane-strain moduli E′. */
export function contrastOf(glaze: number, body: number): number {
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
  return larger(readEven(CHANNELLING, contrast), 1);
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

/**
 * Toughness that a crack has to reach, as a share of K_Ic, to run far enough to be seen within a time.
 *
 *     v = A (K/K_Ic)^n   →   K/K_Ic = (L/(A t))^(1/n)
 *
 * @param seconds - time under the stress [s]
 * @returns share between 0 and 1 [-]; the stress-corrosion floor K0 still holds below it
 * @remarks Soda-lime glass in water, n 18 (16–22), A 9 mm/s, L 10 mm (from memory). One hour against ten years: 1.9.
 * @example delayedShare(3600) / delayedShare(3.156e8) // 1.88
 */
export function delayedShare(seconds: number): number {
  const { speedAtToughnessMPerS: speed, exponent, runM } = CRACK_GROWTH;
  return Math.min((runM / (speed * seconds)) ** (1 / exponent), 1);
}

/** Seconds in a year. */
export const YEAR_S = 31_557_600;
