/** Coolings that cannot be. @module */
import type { Issue } from "../errors.ts";
import type { FitRequest } from "./types.ts";

/** A schedule falls from segment to segment, at rates a kiln can keep; it is given once, not twice. */
export function coolingIssues({ cooling, coolingCPerHour, peakC }: NonNullable<FitRequest["firing"]>): Issue[] {
  const issues: Issue[] = [];
  const rate = (value: number, pointer: string) => {
    if (value >= 1 && value <= 20000) return;
    const message = `Cooling lies between 1 and 20000 °C an hour; I read ${value}.`;
    issues.push({ pointer, message, allowed: [1, 20000] });
  };
  if (coolingCPerHour !== undefined) rate(coolingCPerHour, "/firing/coolingCPerHour");
  if (cooling === undefined) return issues;
  if (coolingCPerHour !== undefined) {
    issues.push({ pointer: "/firing/cooling", message: "Give one rate or a list of segments, not both." });
  }
  if (cooling.length === 0) {
    issues.push({
      pointer: "/firing/cooling",
      message: "A cooling needs at least one segment: where to, and how fast.",
    });
  }
  let before = peakC ?? 1700;
  cooling.forEach(({ toC, cPerHour, holdMinutes }, i) => {
    const at = `/firing/cooling/${i}`;
    if (!(toC < before) || toC < -50) {
      const message = `Each segment cools on from the one before: ${toC} °C is not below ${before} °C.`;
      issues.push({ pointer: `${at}/toC`, message });
    }
    rate(cPerHour, `${at}/cPerHour`);
    if (holdMinutes !== undefined && !(holdMinutes >= 0 && holdMinutes <= 10080)) {
      issues.push({ pointer: `${at}/holdMinutes`, message: "A soak lasts between 0 and 10080 minutes (a week)." });
    }
    before = toC;
  });
  return issues;
}
