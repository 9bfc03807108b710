/** One round of a search as a linear programme: slopes at the recipe at hand, and what they miss. @module */
import type { Bench, BenchLine, State } from "./bench.ts";
import type { Kind } from "./kinds.ts";
import { type Limit, spanOf, type Terms } from "./limits.ts";
import type { LinearProgram } from "./solver.ts";

/** Programmes aim this far inside each limit, so that the curve of the full model stays within [share of the span]. */
const INSIDE = 0.01;
/** A part more or less in 100, for slopes. */
const STEP = 0.5;

/** Whether a line may become more, or less. */
export interface May {
  up: boolean;
  down: boolean;
}

/** Which lines a kind may move. */
export function movable(lines: readonly BenchLine[], kind: Kind, { direction, low, high }: Terms): May[] {
  return lines.map((line, j) => {
    const [more, less] = direction < 0 ? [kind.up, kind.down] : [kind.down, kind.up];
    const swaps = kind.holds === "silica-and-alumina" || kind.kind === "least-change";
    const up = swaps ? kind.up(line) : more(line);
    const down = swaps ? kind.down(line) : less(line);
    return {
      up: !line.colours && up && high[j]! > line.now + 1e-9,
      down: !line.colours && down && low[j]! < line.now - 1e-9,
    };
  });
}

/** Slopes per part. */
export interface Slopes {
  stress: number[];
  limits: number[][];
}

/** Slope of the stress and of every limited figure with each line that may move, by a small step. */
export function slopesAt(
  bench: Bench,
  x: readonly number[],
  state: State,
  may: readonly May[],
  limits: readonly Limit[],
): Slopes {
  const slopes: Slopes = { stress: x.map(() => 0), limits: limits.map(() => x.map(() => 0)) };
  x.forEach((parts, j) => {
    if (!may[j]!.up && !may[j]!.down) return;
    const step = may[j]!.up || parts < STEP ? STEP : -STEP;
    const beside = [...x];
    beside[j] = parts + step;
    const there = bench.at(beside);
    if (!there) return;
    slopes.stress[j] = (there.stress - state.stress) / step;
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

/** Where a round begins. */
export interface Here {
  x: readonly number[];
  state: State;
  slopes: Slopes;
  aim: number;
  reach: number;
  /** Whether the target has to be met; if not, as near as the limits let it. */
  tight: boolean;
  kind: Kind;
  bent: Bent;
}

/** Columns: parts more, parts less, and what is missing from the stress aimed at [MPa]. */
export function program(
  bench: Bench,
  terms: Terms,
  may: readonly May[],
  limits: readonly Limit[],
  here: Here,
): LinearProgram {
  const { lines } = bench;
  const n = lines.length;
  const { x, state, slopes, aim, reach, tight, kind, bent } = here;
  const signed = (weights: readonly number[], short = 0) => [...weights, ...weights.map((w) => -w), short];
  const room = (j: number, way: 1 | -1) => (way > 0 ? terms.high[j]! - lines[j]!.now : lines[j]!.now - terms.low[j]!);
  const shift = (weights: readonly number[]) => weights.reduce((sum, w, j) => sum + w * (x[j]! - lines[j]!.now), 0);
  const stress = slopes.stress.map((slope) => slope / 1e6);
  const gap = (aim - state.stress) / 1e6 + shift(stress) - bent.stress;
  const open = Number.POSITIVE_INFINITY;
  const rows: LinearProgram["rows"] = [
    terms.direction < 0
      ? { weights: signed(stress, -1), low: -open, high: gap }
      : { weights: signed(stress, 1), low: gap, high: open },
  ];
  limits.forEach((limit, k) => {
    const value = limit.value(state);
    const weights = slopes.limits[k]!;
    if (value === null) return;
    const base = value - shift(weights) + bent.limits[k]!;
    const inside = INSIDE * spanOf(limit);
    rows.push({ weights: signed(weights), low: limit.low + inside - base, high: limit.high - inside - base });
  });
  x.forEach((parts, j) => {
    if (!may[j]!.up && !may[j]!.down) return;
    const weights = x.map((_, k) => (k === j ? 1 : 0));
    const from = parts - lines[j]!.now;
    rows.push({ weights: signed(weights), low: from - reach, high: from + reach });
  });
  if (kind.with) {
    const { follows, leads } = kind.with;
    rows.push({
      weights: signed(lines.map((line) => (follows(line) ? 1 : leads(line) ? -1 : 0))),
      low: terms.direction < 0 ? -open : 0,
      high: terms.direction < 0 ? 0 : open,
    });
  }
  return {
    cost: [...x.map(() => 1), ...x.map(() => 1), tight ? 0 : 1e4],
    low: Array(2 * n + 1).fill(0),
    high: [
      ...lines.map((_, j) => (may[j]!.up ? Math.max(room(j, 1), 0) : 0)),
      ...lines.map((_, j) => (may[j]!.down ? Math.max(room(j, -1), 0) : 0)),
      tight ? 0 : 1e4,
    ],
    rows,
  };
}
