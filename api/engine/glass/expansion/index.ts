/** Published expansion sets, oldest first. @module */
import { APPEN } from "./appen-1949.ts";
import { ENGLISH_TURNER } from "./english-turner-1927.ts";
import { GILARD_DUBRUL } from "./gilard-dubrul-1937.ts";
import { HALL } from "./hall-1930.ts";
import { MAYER_HAVAS } from "./mayer-havas-1911.ts";
import type { PublishedSet } from "./published-set.ts";
import { WINKELMANN_SCHOTT } from "./winkelmann-schott-1894.ts";

/** All of them. */
export const PUBLISHED_SETS: readonly PublishedSet[] = [
  WINKELMANN_SCHOTT,
  MAYER_HAVAS,
  ENGLISH_TURNER,
  HALL,
  GILARD_DUBRUL,
  APPEN,
];

export { askSet, MOST_MISSING_PERCENT, type PublishedSet, type SetAnswer, VALIDITY } from "./published-set.ts";
