/** Twenty rings put in columns so that none straddles a threshold. @module */
import type { Outcome, StressCase } from "../../fit/types.ts";
import type { StressScale } from "./scale.ts";

/** A column of rings. */
export interface Column {
  /** Middle [px]. */
  x: number;
  /** Size of its rings [px]; smaller than the others where lines stand close. */
  size: number;
  outcomes: Outcome[];
}

/** All columns, and how many cases lie beyond the ends of the scale. */
export interface Columns {
  columns: Column[];
  /** Distance from ring to ring up a column [px]. */
  pitch: number;
  beyond: { left: StressCase[]; right: StressCase[] };
}

/**
 * Bins the cases. Columns begin at the lines; a case on a line stands on the side of its outcome.
 * @param cases - the twenty cases [MPa]
 * @param lines - every threshold that is drawn [MPa]
 * @param size - largest size of a ring [px]
 * @param tallest - most that a column may rise [px]; rings shrink to obey
 */
export function binCases(
  cases: readonly StressCase[],
  lines: readonly number[],
  scale: StressScale,
  size: number,
  tallest: number,
): Columns {
  for (let pitch = size; ; pitch *= 0.88) {
    const columns = columnsOf(cases, lines, scale, pitch);
    const peak = Math.max(0, ...columns.map(({ outcomes }) => outcomes.length));
    if (peak * pitch <= tallest || pitch < 7) return { columns, pitch, beyond: beyondOf(cases, scale) };
  }
}

/** Most rings on top of each other at an end of the scale. */
const PILE = 4;

function beyondOf(cases: readonly StressCase[], { left, right, at }: StressScale): Columns["beyond"] {
  return {
    left: cases.filter(({ stressMPa }) => stressMPa < at(left)),
    right: cases.filter(({ stressMPa }) => stressMPa > at(right)),
  };
}

function columnsOf(
  cases: readonly StressCase[],
  lines: readonly number[],
  scale: StressScale,
  pitch: number,
): Column[] {
  const { left, right, x } = scale;
  const inside = lines.map(x).filter((at) => at > left + 1 && at < right - 1);
  const walls = [left, ...[...new Set(inside)].sort((a, b) => a - b), right];
  const found = new Map<string, Column>();
  const piled = { left: 0, right: 0 };
  for (const { stressMPa, outcome } of cases) {
    const at = Math.min(Math.max(x(stressMPa), left), right);
    const region = regionOf(at, outcome, walls);
    const from = walls[region]!;
    const to = walls[region + 1]!;
    const many = Math.max(1, Math.floor((to - from) / pitch + 1e-6));
    // Open-ended regions count from their one line outward, so that columns do not drift; the others fill their room.
    const step = region === 0 || region === walls.length - 2 ? Math.min(pitch, to - from) : (to - from) / many;
    const fromLine = region === 0 && walls.length > 2 ? to - at : at - from;
    let n = Math.min(many - 1, Math.max(0, Math.floor(fromLine / step)));
    // Cases beyond the scale pile up at its end, a few high and then inward.
    if (stressMPa > scale.at(right)) n = Math.max(0, many - 1 - Math.floor(piled.right++ / PILE));
    if (stressMPa < scale.at(left))
      n = Math.max(0, (walls.length > 2 ? many - 1 : 0) - Math.floor(piled.left++ / PILE));
    const middle = region === 0 && walls.length > 2 ? to - (n + 0.5) * step : from + (n + 0.5) * step;
    const key = `${region}:${n}`;
    const column = found.get(key) ?? { x: middle, size: Math.min(pitch, step), outcomes: [] };
    column.outcomes.push(outcome);
    found.set(key, column);
  }
  return [...found.values()];
}

/** Region between two walls; on a wall, what cracks is to its right and what holds or lifts to its left. */
function regionOf(at: number, outcome: Outcome, walls: readonly number[]): number {
  const cracks = outcome === "crazesOnCooling" || outcome === "crazesLater";
  // Cases are rounded to 0.1 MPa, lines too: a third of a pixel apart is the same place.
  const near = 0.35;
  let region = 0;
  for (let i = 1; i < walls.length - 1; i++) {
    if (cracks ? at >= walls[i]! - near : at > walls[i]! + near) region = i;
  }
  // A sound case on the flakes line, its own near limit, holds: it stands to the right.
  if (outcome === "sound" && region < walls.length - 2 && Math.abs(at - walls[region + 1]!) <= near && region === 0) {
    return walls.length > 3 ? 1 : 0;
  }
  return region;
}
