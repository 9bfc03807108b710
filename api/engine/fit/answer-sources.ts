/** Every source that an answer rests on. @module */
import { FIT_SOURCES } from "./constants.ts";
import type { Prepared } from "./situation.ts";
import type { Reason } from "./types.ts";

/**
 * Source keys, once each, in order.
 * @param prepared - whose glaze, body and models were read
 * @param more - what else was used
 * @param reasons - sentences with sources of their own
 */
export function sourcesOf(prepared: Prepared, more: readonly string[], reasons: readonly Reason[]): string[] {
  const all = new Set([...prepared.sources, ...FIT_SOURCES, ...more]);
  for (const { sources } of reasons) for (const key of sources) all.add(key);
  return [...all].sort();
}
