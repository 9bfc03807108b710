/** When a squeezed glaze lifts from its edges. @module */

/**
 * Energy that a long edge crack under a squeezed glaze sets free.
 *
 *     G₀ = (1 − ν²) σ² h / 2E
 *
 * @param stress - in-plane stress [Pa]
 * @param glazeM - glaze thickness h [m]
 * @param youngsPa - Young's modulus of the glaze [Pa]; `poisson` [-]
 * @returns energy release rate [J/m²]
 * Source: J.W. Hutchinson, Z. Suo, Adv. Appl. Mech. 29 (1992) 63 (from memory).
 * @example edgeEnergy(-100e6, 2e-4, 70e9, 0.2) // 13.71
 */
export function edgeEnergy(stress: number, glazeM: number, youngsPa: number, poisson: number): number {
  return ((1 - poisson ** 2) * stress * stress * glazeM) / (2 * youngsPa);
}

/**
 * Compression at which that energy reaches the toughness of the interface.
 *
 *     σ = −√(2EΓ / ((1 − ν²) h))
 *
 * @param interfaceToughness - Γ [J/m²]: about 7 (mode I) to 32 (mode II) for glass
 * @returns stress [Pa], negative
 * @example liftingStress(7.4, 2e-4, 70e9, 0.2) // −73e6
 */
export function liftingStress(interfaceToughness: number, glazeM: number, youngsPa: number, poisson: number): number {
  return -Math.sqrt((2 * youngsPa * interfaceToughness) / ((1 - poisson ** 2) * glazeM));
}
