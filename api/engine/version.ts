/** Which engine gave an answer. Raise with every change that moves a number. @module */
export const ENGINE_VERSION = "0.1.0";
/** Date of the newest data file the answers rest on. */
export const DATA_VERSION = "2026-11-25";
/** Seed of the quasi-random draws unless a request names another. */
export const DEFAULT_SEED = 1;
