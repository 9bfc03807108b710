/** What cannot have been seen: figures beyond any kiln, and looks in the wrong order. @module */
import type { Issue } from "../errors.ts";
import type { Seen } from "./types.ts";

/**
 * Faults of one sight.
 * @param pointer - JSON Pointer of it in the request
 * @returns every fault, with what would do; none if it can be
 */
export function seenIssues(seen: Seen, pointer: string): Issue[] {
  const issues: Issue[] = [];
  const within = (value: number | undefined, low: number, high: number, field: string, what: string) => {
    if (value === undefined || (value >= low && value <= high)) return;
    issues.push({
      pointer: `${pointer}/${field}`,
      message: `${what} lies between ${low} and ${high}; I read ${value}.`,
      allowed: [low, high],
    });
  };
  switch (seen.kind) {
    case "crazed":
      within(seen.byDays, 0, 36500, "byDays", "An age in days");
      within(seen.soundAtDays, 0, 36500, "soundAtDays", "An age in days");
      if (seen.soundAtDays !== undefined && !(seen.soundAtDays < (seen.byDays ?? 0))) {
        issues.push({
          pointer: `${pointer}/soundAtDays`,
          message: `It was still sound at ${seen.soundAtDays} days but crazed by ${seen.byDays ?? 0} days: the first must be the earlier.`,
        });
      }
      break;
    case "not-crazed":
      within(seen.afterDays, 0, 36500, "afterDays", "An age in days");
      break;
    case "quench":
      within(seen.differenceK, 1, 600, "differenceK", "The difference between ware and water in kelvin");
      break;
    case "ring":
      within(seen.radiusMm, 5, 500, "radiusMm", "The mean radius of a ring in mm");
      within(seen.closesMm, -20, 20, "closesMm", "The change of the gap in mm");
      within(seen.plusMinusMm, 0, 20, "plusMinusMm", "The doubt of a reading in mm");
      break;
    case "strip":
      within(seen.lengthMm, 10, 2000, "lengthMm", "The free length of a strip in mm");
      within(seen.bowMm, -50, 50, "bowMm", "The bow of a strip in mm");
      within(seen.plusMinusMm, 0, 20, "plusMinusMm", "The doubt of a reading in mm");
      break;
  }
  return issues;
}
