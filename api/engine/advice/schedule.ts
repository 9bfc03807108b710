/** A cooling schedule with another rate between two temperatures. @module */

/** Cooling to a temperature at a rate, then a soak. */
export interface Segment {
  toC: number;
  cPerHour: number;
  holdMinutes?: number;
}

/** Temperatures from hot to cold [°C]. */
export interface Window {
  fromC: number;
  toC: number;
}

/**
 * Rate on the way through a temperature; a schedule that ends hot goes on at its last rate.
 * @param schedule - from hot to cold, at least one segment
 * @example rateAt([{ toC: 760, cPerHour: 300 }, { toC: 20, cPerHour: 80 }], 700) // 80 [K/h]
 */
export function rateAt(schedule: readonly Segment[], c: number): number {
  return (schedule.find(({ toC }) => toC < c) ?? schedule.at(-1)!).cPerHour;
}

/**
 * The same schedule at another rate within a window; soaks stay where they are.
 * @param schedule - from hot to cold, at least one segment
 * @param window - from hot to cold; one that begins at or above the peak has no end up there
 * @param cPerHour - rate within it [K/h], of the rate that there is
 * @param peakC - where cooling begins [°C]
 * @example inWindow([{ toC: 20, cPerHour: 100 }], { fromC: 740, toC: 600 }, () => 30, 1240)
 * // [{ toC: 740, cPerHour: 100 }, { toC: 600, cPerHour: 30 }, { toC: 20, cPerHour: 100 }]
 */
export function inWindow(
  schedule: readonly Segment[],
  { fromC, toC }: Window,
  cPerHour: (now: number) => number,
  peakC = Number.POSITIVE_INFINITY,
): Segment[] {
  const hot = fromC >= peakC ? Number.POSITIVE_INFINITY : fromC;
  const ends = [...new Set([...schedule.map((segment) => segment.toC), hot, toC])]
    .filter((c) => c < peakC)
    .sort((a, b) => b - a);
  const segments: Segment[] = [];
  let from = peakC;
  for (const to of ends) {
    const inside = from <= hot && to >= toC;
    const hold = schedule.find((segment) => segment.toC === to)?.holdMinutes;
    const now = rateAt(schedule, to + NEAR);
    const rate = inside ? cPerHour(now) : now;
    const before = segments.at(-1);
    if (before && before.cPerHour === rate && before.holdMinutes === undefined) before.toC = to;
    else segments.push({ toC: to, cPerHour: rate });
    if (hold !== undefined) segments.at(-1)!.holdMinutes = hold;
    from = to;
  }
  return segments;
}

/**
 * Time that a schedule takes through a window, soaks left out.
 * @example hoursThrough([{ toC: 700, cPerHour: 200 }, { toC: 20, cPerHour: 100 }], { fromC: 740, toC: 600 }) // 1.2 [h]
 */
export function hoursThrough(schedule: readonly Segment[], { fromC, toC }: Window): number {
  const ends = schedule.map((segment) => segment.toC).filter((c) => c < fromC && c > toC);
  let from = fromC;
  let hours = 0;
  for (const to of [...ends, toC]) {
    hours += (from - to) / rateAt(schedule, to + NEAR);
    from = to;
  }
  return hours;
}

/** Just above the end of a segment [K]. */
const NEAR = 1e-6;
