/** Batches: weights, water, and a bucket put right. @module */

// The front door
export { planBatch } from "./plan-batch.ts";
export { roundShares } from "./round-shares.ts";
// Slips
export { drySolids, dryToAdd, slipGravity, solidsShare, waterFor, waterToAdd } from "./slurry.ts";
export type { BatchReport, BatchRequest } from "./types.ts";
