/** Water and solids in a bucket. Specific gravity is against water, so water's own density falls out. @module */

/**
 * Dry solids in a slip, by Brongniart's rule: W = (P − V) D/(D − 1).
 * @param weight - of the slip [g]
 * @param volume - of the slip [ml]
 * @param density - of the solid against water [-]
 * @returns dry solids [g]
 * Source: brongniart; it is arithmetic of volumes.
 * @example drySolids(1450, 1000, 2.65) // 722.7 g
 */
export function drySolids(weight: number, volume: number, density: number): number {
  return ((weight - volume) * density) / (density - 1);
}

/**
 * Share of solids in a slip of a specific gravity: w = (1 − 1/g)/(1 − 1/D).
 * @param gravity - of the slip [-], above 1 and below `density`
 * @param density - of the solid against water [-]
 * @returns share by weight [-]
 * @example solidsShare(1.45, 2.65) // 0.4984
 */
export function solidsShare(gravity: number, density: number): number {
  return (1 - 1 / gravity) / (1 - 1 / density);
}

/** Specific gravity of a slip with a share of solids: 1/(w/D + 1 − w) [-]. */
export function slipGravity(share: number, density: number): number {
  return 1 / (share / density + 1 - share);
}

/** Water for an amount of dry glaze and a specific gravity [g]: m (1 − w)/w. */
export function waterFor(dry: number, gravity: number, density: number): number {
  const share = solidsShare(gravity, density);
  return (dry * (1 - share)) / share;
}

/**
 * Water that brings a bucket to another specific gravity: V (g − t)/(t − 1).
 * @param volume - of the slip, V [ml]
 * @param gravity - as it is, g [-]
 * @param target - as it should be, t [-]
 * @returns water to add [g]; below 0, clear water to pour off after settling
 * @example waterToAdd(5000, 1.5, 1.45) // 555.6 g
 */
export function waterToAdd(volume: number, gravity: number, target: number): number {
  return (volume * (gravity - target)) / (target - 1);
}

/**
 * Dry glaze that brings a thin bucket to a higher specific gravity: V (t − g)/(1 − t/D).
 * @param density - of the solid against water, D [-]
 * @returns dry glaze to add [g]; below 0 where it is too thick
 * @example dryToAdd(5000, 1.4, 1.45, 2.65) // 552.1 g
 */
export function dryToAdd(volume: number, gravity: number, target: number, density: number): number {
  return (volume * (target - gravity)) / (1 - target / density);
}
