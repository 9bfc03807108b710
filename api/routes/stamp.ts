/** Which engine answered. @module */
import { DATA_VERSION, DEFAULT_SEED, ENGINE_VERSION } from "../engine/version.ts";

/** The stamp of answers that draw nothing at random; the seed is the usual one. */
export const STAMP = { version: ENGINE_VERSION, dataVersion: DATA_VERSION, seed: DEFAULT_SEED };
