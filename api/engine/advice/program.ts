/** One round of a search as a linear programme. @module */
import type { Aim } from "./aim.ts";
import type { Bench, State } from "./bench.ts";
import { MOST_MOVED } from "./effort.ts";
import type { Kind } from "./kinds.ts";
import { type Limit, spanOf, type Terms } from "./limits.ts";
import { type Bent, moves, type Room, type Slopes } from "./slopes.ts";
import type { LinearProgram } from "./solver.ts";

/** Programmes aim this far inside each limit, so that the curve of the full model stays within [share of the span]. */
const INSIDE = 0.01;
/** Stress this near to the aim is on it [MPa]. */
const ABOUT = 1;
/** Parts that a programme moves for each MPa of doubt less, of stress short of the aim, and for each span past a limit [parts in 100]. */
const PER_DOUBT = 200;
const PER_SHORT = 1e4;
const PER_PAST = 1e7;

/** Where a round begins. */
export interface Here {
  x: readonly number[];
  state: State;
  slopes: Slopes;
  aim: Aim;
  reach: number;
  /** What has to be met: aim and limits; the limits, the aim as near as they let it; or both as near as can be. */
  strict: "all" | "limits" | "nothing";
  kind: Kind;
  bent: Bent;
}

/** Columns: parts more, parts less, what is missing from the stress aimed at [MPa], and how far past the limits [spans]. */
export function program(
  bench: Bench,
  terms: Terms,
  rooms: readonly Room[],
  limits: readonly Limit[],
  here: Here,
): LinearProgram {
  const { lines } = bench;
  const { x, state, slopes, aim, reach, strict, kind, bent } = here;
  const signed = (weights: readonly number[], short = 0, past = 0) => [
    ...weights,
    ...weights.map((w) => -w),
    short,
    past,
  ];
  const shift = (weights: readonly number[]) => weights.reduce((sum, w, j) => sum + w * (x[j]! - lines[j]!.now), 0);
  const stress = slopes.stress.map((slope) => slope / 1e6);
  const gap = (aim.stress - state.stress) / 1e6 + shift(stress) - bent.stress;
  const open = Number.POSITIVE_INFINITY;
  // What reaches may go beyond; where nothing reaches, either side of the aim is worse.
  const beyond = aim.reachable ? open : ABOUT;
  const rows: LinearProgram["rows"] = [];
  const [from, to] = terms.direction < 0 ? [gap - beyond, gap] : [gap, gap + beyond];
  if (to < open) rows.push({ weights: signed(stress, -1), low: -open, high: to });
  if (from > -open) rows.push({ weights: signed(stress, 1), low: from, high: open });
  limits.forEach((limit, k) => {
    const value = limit.value(state);
    const weights = slopes.limits[k]!;
    if (value === null) return;
    const base = value - shift(weights) + bent.limits[k]!;
    const inside = INSIDE * spanOf(limit);
    const span = spanOf(limit);
    rows.push({ weights: signed(weights, 0, -span), low: -open, high: limit.high - inside - base });
    rows.push({ weights: signed(weights, 0, span), low: limit.low + inside - base, high: open });
  });
  x.forEach((parts, j) => {
    if (!moves(rooms[j]!)) return;
    const weights = x.map((_, k) => (k === j ? 1 : 0));
    const from = parts - lines[j]!.now;
    rows.push({ weights: signed(weights), low: from - reach, high: from + reach });
  });
  rows.push({ weights: [...x.map(() => 1), ...x.map(() => 1), 0, 0], low: -open, high: MOST_MOVED });
  for (const rule of kind.rules ?? []) {
    const side = terms.direction < 0 ? { low: -open, high: 0 } : { low: 0, high: open };
    rows.push({ weights: signed(lines.map(rule)), ...side });
  }
  // Where the doubt has to shrink, what shrinks it counts for more than parts moved.
  const doubt = slopes.spread.map((slope) => (aim.reachable ? 0 : (slope / 1e6) * PER_DOUBT));
  const [short, past] = [strict === "all" ? 0 : PER_SHORT, strict === "nothing" ? PER_PAST : 0];
  return {
    cost: [...doubt.map((weight) => 1 + weight), ...doubt.map((weight) => 1 - weight), short, past],
    low: [...rooms.map(({ up }) => up[0]), ...rooms.map(({ down }) => down[0]), 0, 0],
    high: [...rooms.map(({ up }) => up[1]), ...rooms.map(({ down }) => down[1]), short, past],
    rows,
  };
}
