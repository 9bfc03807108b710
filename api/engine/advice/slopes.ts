/** Straight lines through the model at a recipe: room to move, slopes, and what they miss. @module */
import type { Bench, BenchLine, State } from "./bench.ts";
import type { Kind } from "./kinds.ts";
import type { Limit, Terms } from "./limits.ts";

/** A part more or less in 100, for slopes. */
const STEP = 0.5;

/** Least and most that a line may become more, and less [parts in 100]; 0 and 0 where it may not. */
export interface Room {
  up: readonly [number, number];
  down: readonly [number, number];
}

const NO_ROOM = [0, 0] as const;

/** Which lines a kind may move, and how far. */
export function roomOf(lines: readonly BenchLine[], kind: Kind, { direction, low, high }: Terms): Room[] {
  return lines.map((line, j) => {
    const [more, less] = direction < 0 ? [kind.up, kind.down] : [kind.down, kind.up];
    const swaps = kind.holds === "silica-and-alumina" || kind.kind === "least-change";
    const up = swaps ? kind.up(line) : more(line);
    const down = swaps ? kind.down(line) : less(line);
    const room = (may: boolean, most: number) => (!line.colours && may && most > 1e-9 ? ([0, most] as const) : NO_ROOM);
    return { up: room(up, high[j]! - line.now), down: room(down, line.now - low[j]!) };
  });
}

/** Whether a line may move at all. */
export const moves = ({ up, down }: Room): boolean => up[1] > 0 || down[1] > 0;

/** Slopes per part. */
export interface Slopes {
  stress: number[];
  spread: number[];
  limits: number[][];
}

/** Slope of the stress and of every limited figure with each line that may move, by a small step. */
export function slopesAt(
  bench: Bench,
  x: readonly number[],
  state: State,
  rooms: readonly Room[],
  limits: readonly Limit[],
): Slopes {
  const slopes: Slopes = { stress: x.map(() => 0), spread: x.map(() => 0), limits: limits.map(() => x.map(() => 0)) };
  x.forEach((parts, j) => {
    if (!moves(rooms[j]!)) return;
    const step = rooms[j]!.up[1] > 0 || parts < STEP ? STEP : -STEP;
    const beside = [...x];
    beside[j] = parts + step;
    const there = bench.at(beside);
    if (!there) return;
    slopes.stress[j] = (there.stress - state.stress) / step;
    slopes.spread[j] = (there.spread - state.spread) / step;
    limits.forEach((limit, k) => {
      slopes.limits[k]![j] = ((limit.value(there) ?? 0) - (limit.value(state) ?? 0)) / step;
    });
  });
  return slopes;
}

/** What the straight lines of a programme miss [MPa; units of each limit]. */
export interface Bent {
  stress: number;
  limits: number[];
}

/** What they miss between two recipes. */
export function bentAt(limits: readonly Limit[], here: Place, there: Place, slopes: Slopes): Bent {
  const straight = (weights: readonly number[]) =>
    weights.reduce((sum, slope, j) => sum + slope * (there.x[j]! - here.x[j]!), 0);
  return {
    stress: (there.state.stress - here.state.stress - straight(slopes.stress)) / 1e6,
    limits: limits.map(
      (limit, k) => (limit.value(there.state) ?? 0) - (limit.value(here.state) ?? 0) - straight(slopes.limits[k]!),
    ),
  };
}

/** A recipe and how it turns out. */
interface Place {
  x: readonly number[];
  state: State;
}
