/** What a change of recipe is worth to the one who weighs it: parts moved, and materials handled. @module */

/**
 * Least change of a material that is worth weighing [parts in 100]. Below it a change drowns in what weighing does anyway:
 * two per cent more damp in a bag of which 25 parts go in is half a part (derived), and so are five marks of a scale that
 * shows 0.1 g, for a test batch of 100 g (common practice, no source).
 */
export const LEAST_CHANGE = 0.5;

/** Parts that a potter would rather move than touch one material more [parts in 100] (common practice, no source). */
export const PER_MATERIAL = 2;

/** Parts moved at most: with more than half of it changed, it is another glaze [parts in 100] (common practice, no source). */
export const MOST_MOVED = 60;

/** A change below this is none [parts in 100]: what a solver leaves behind. */
const NONE = 1e-6;

/** How a change is weighed. */
export interface Weighing {
  /** Least change of a material that moves at all [parts in 100]. */
  least: number;
  /** What every moved material counts, on top of its parts [parts in 100]. */
  perMaterial: number;
}

/** As potters weigh. */
export const FOR_THE_SCALES: Weighing = { least: LEAST_CHANGE, perMaterial: PER_MATERIAL };

/** Σ |Δ| [parts in 100]. @example movedOf([50, 30], [50, 36]) // 6 */
export function movedOf(before: readonly number[], after: readonly number[]): number {
  return before.reduce((sum, parts, j) => sum + Math.abs(after[j]! - parts), 0);
}

/** Materials whose parts change. @example materialsMovedOf([50, 30], [50, 36]) // 1 */
export function materialsMovedOf(before: readonly number[], after: readonly number[]): number {
  return before.filter((parts, j) => Math.abs(after[j]! - parts) > NONE).length;
}

/**
 * What is kept least.
 *
 *     effort = Σ |Δ| + perMaterial × materials moved
 *
 * @returns effort [parts in 100]
 * @example effortOf([50, 30, 20], [50, 36, 18], FOR_THE_SCALES) // 12: eight parts, two materials
 */
export function effortOf(before: readonly number[], after: readonly number[], { perMaterial }: Weighing): number {
  return movedOf(before, after) + perMaterial * materialsMovedOf(before, after);
}
