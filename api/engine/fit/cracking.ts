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
 * Even stress that would drive a crack as hard as stress that slopes through the coat.
 *
 *     of a crack a deep, from the face that is pulled harder:  σ̄(a) √(a/t),   σ̄ the mean over its own depth
 *     m ≥ d:   m                            it runs through the whole coat, as if its stress were even
 *     m < d:   ⅔ s √(2s/3d),  s = m + d/2   it stays in the part that is pulled, 2s/3d of the coat deep
 *
 * @param mean - m, mean through the coat [Pa]
 * @param across - d, stress at the one face less that at the other, without its sign [Pa]
 * @returns stress [Pa], never below the mean; the mean itself where no face is pulled
 * @remarks A channelling crack may be shallower than its coat, and what drives it is the stress that it sets free (Beuth
 * 1992; Hutchinson & Suo 1992, from memory). That this is the mean over its depth, with the whole coat's Z, is a choice,
 * no source: an edge crack in a half-space takes 0.41 of the slope where the mean takes 0.5. The depth is the one that
 * drives the crack hardest. So of a squeezed coat that a bending piece pulls at its surface, the surface counts.
 * @example drivingStress(-5.8e6, 39.2e6) // 4.45e6
 */
export function drivingStress(mean: number, across: number): number {
  if (mean >= across) return mean;
  const face = mean + across / 2;
  return face > 0 ? (2 / 3) * face * Math.sqrt((2 * face) / (3 * across)) : mean;
}

/**
 * Mean stress at which a coat whose stress slopes cracks: the inverse of {@link drivingStress}.
 *
 *     K ≥ d: K;   K < d: 1.5 (K² d)^⅓ − d/2
 *
 * @param even - K, even stress at which it cracks [Pa], above 0
 * @param across - d, as there [Pa]
 * @returns mean stress [Pa]; below 0 where a squeezed coat can crack from a face that is pulled
 * @example meanBorne(4.45e6, 39.2e6) // −5.8e6
 */
export function meanBorne(even: number, across: number): number {
  return even >= across ? even : 1.5 * Math.cbrt(even * even * across) - across / 2;
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
