/** The shrinkages of ASTM C326 and how one follows from another. All are shares of length, not per cent. @module */

/**
 * Drying shrinkage, of plastic length: S_d = (L_p − L_d)/L_p.
 * @param plastic - length as formed [mm]
 * @param dry - length bone dry [mm]
 * @returns share of plastic length [-], positive where it shrinks
 * Source: ASTM C326 (definitions from memory).
 * @example dryingShrinkage(100, 94.2) // 0.058
 */
export function dryingShrinkage(plastic: number, dry: number): number {
  return (plastic - dry) / plastic;
}

/**
 * Firing shrinkage, of dry length: S_f = (L_d − L_f)/L_d. Mind the base: drying and total are of plastic length.
 * @param dry - length bone dry [mm]
 * @param fired - length fired [mm]
 * @returns share of dry length [-], negative where it grows
 * Source: ASTM C326 (definitions from memory).
 * @example firingShrinkage(100, 93) // 0.07
 */
export function firingShrinkage(dry: number, fired: number): number {
  return (dry - fired) / dry;
}

/**
 * Total shrinkage from drying and firing: S_t = 1 − (1 − S_d)(1 − S_f). Adding the two is the classic mistake: they are
 * shares of different lengths.
 * @param drying - share of plastic length [-]
 * @param firing - share of dry length [-]
 * @returns share of plastic length [-]
 * @example totalShrinkage(0.06, 0.07) // 0.1258
 */
export function totalShrinkage(drying: number, firing: number): number {
  return 1 - (1 - drying) * (1 - firing);
}

/**
 * Size to throw for a size fired: L_p = L_f/(1 − S_t). Multiplying by 1 + S_t is the classic mistake: it comes out short.
 * @param fired - length fired [mm]
 * @param total - share of plastic length [-]
 * @returns length as formed [mm]
 * @example thrownLength(90, 0.12) // 102.2727…
 */
export function thrownLength(fired: number, total: number): number {
  return fired / (1 - total);
}

/**
 * Shrinkage of volume: 1 − (1 − S)²(1 − S_up).
 * @param across - linear shrinkage across [-]
 * @param up - linear shrinkage of height [-], the same where it is not known apart
 * @returns share of plastic volume [-]
 * @example volumeShrinkage(0.13) // 0.3415
 */
export function volumeShrinkage(across: number, up: number = across): number {
  return 1 - (1 - across) ** 2 * (1 - up);
}
