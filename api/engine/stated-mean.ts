/**
 * A mean expansion as a sheet states it: what cannot be of its range and tolerance, and ranges that are no °C.
 *
 * @module
 */
import { toCelsius } from "./degrees.ts";
import type { Issue, Notice } from "./errors.ts";

/** Cold and hot end [°C]. */
type Range = readonly [number, number];

/** Hottest end of a mean, by what it is of [°C]. */
const HOTTEST = { glaze: 900, body: 1200 } as const;

/** What cannot be of the range and the tolerance of a mean. */
export function meanIssues(
  of: keyof typeof HOTTEST,
  [from, to]: Range,
  plusMinus: number | undefined,
  at: string,
): Issue[] {
  const issues: Issue[] = [];
  const hottest = HOTTEST[of];
  if (!(to - from >= 50) || from < -50 || to > hottest) {
    issues.push({
      pointer: `${at}/rangeC`,
      message: `A ${of}'s mean is taken from a cold to a hot temperature at least 50 °C apart, up to ${hottest} °C; I read ${from} to ${to}.`,
    });
  }
  if (plusMinus !== undefined && !(plusMinus >= 0 && plusMinus <= 5)) {
    issues.push({ pointer: `${at}/plusMinus`, message: "The tolerance lies between 0 and 5 (1e-6/K)." });
  }
  return issues;
}

/** Scales that sheets are printed in, and what a warm or a cool room is there: the cold end of most means. */
const SCALES = [
  { unit: "°F", room: [59, 90], toC: (f: number) => toCelsius(f, "F") },
  { unit: "kelvins", room: [273, 310], toC: (k: number) => k - (Number.isInteger(k) ? 273 : 273.15) },
] as const;

/** Where quartz turns: a hot end in °C, though no round one, and 300 °C in kelvins. */
const QUARTZ_TURNS_C = 573;

const isMultiple = (value: number, step: number, within = 0) =>
  Math.abs(value - Math.round(value / step) * step) <= within;

/**
 * The range in °C, where it was plainly written in °F or kelvins: it begins at a room's temperature there, and its hot end is
 * round in °C when turned into it. At a cold end that nobody begins a mean in °C with (68, 72, 293) a hot end that is round
 * as it stands tells as much. Means in °C begin at 50, 100 or 300 as well: those are left alone.
 * @example rangeMeant([68, 932]) // { unit: "°F", range: [20, 500] }
 */
export function rangeMeant([from, to]: Range): { unit: string; range: [number, number] } | undefined {
  for (const { unit, room, toC } of SCALES) {
    if (from < room[0] || from > room[1]) continue;
    const odd = !isMultiple(from, 5);
    const roundMeant = isMultiple(toC(to), 50, 0.3) && (odd || to !== QUARTZ_TURNS_C);
    if (roundMeant || (odd && isMultiple(to, 10))) return { unit, range: [Math.round(toC(from)), Math.round(toC(to))] };
  }
  return undefined;
}

/** Says so where the range of a mean looks like another unit's. */
export function rangeRemarks(rangeC: Range | undefined, at: string): Notice[] {
  const meant = rangeC && rangeMeant(rangeC);
  if (!meant) return [];
  const message = `I took the mean as one from ${rangeC[0]} to ${rangeC[1]} °C. If these are ${meant.unit}, it runs from ${meant.range.join(" to ")} °C: write [${meant.range.join(", ")}].`;
  return [{ code: "range-unit", message, pointer: `${at}/rangeC` }];
}
