/** The least parts moved within given room that reach a target: linear programme, full model, and again. @module */
import { aimFor } from "./aim.ts";
import type { Bench, State } from "./bench.ts";
import { movedOf } from "./effort.ts";
import type { Kind } from "./kinds.ts";
import { atLimit, type Limit, limitsOf, missedBy, type Terms } from "./limits.ts";
import { program } from "./program.ts";
import { type Bent, bentAt, type Room, slopesAt } from "./slopes.ts";
import type { LinearSolver } from "./solver.ts";

/** Where a search ended. */
export interface Found {
  x: number[];
  state: State;
  moved: number;
  reaches: boolean;
  /** Names of limits that stood in the way. */
  tight: string[];
}

/** The same with how far it is outside the limits [shares of their spans]. */
export type Judged = Found & { missed: number };

const ROUNDS = 16;
/** Tries of one round, each allowing for the bend that the one before showed. */
const CORRECTIONS = 4;
/** Farthest a line may go in one round, at first and at last [parts in 100]. */
const FIRST_REACH = 25;
const LAST_REACH = 0.1;
/** A round that moves less has settled [parts in 100]. */
const SETTLED = 0.02;

/** Everything if it can be; else the limits; else as near as can be. */
const STRICTNESS = ["all", "limits", "nothing"] as const;

/** What one search rests on. */
export interface Search {
  bench: Bench;
  kind: Kind;
  terms: Terms;
  limits: readonly Limit[];
  solve: LinearSolver;
}

/** Sets a search out. */
export function searchOf(bench: Bench, kind: Kind, terms: Terms, solve: LinearSolver): Search {
  return { bench, kind, terms, limits: limitsOf(kind, terms), solve };
}

/** A recipe by the full model. */
export function judged({ bench, terms, limits }: Search, x: number[], state: State): Judged {
  return {
    x,
    state,
    moved: movedOf(
      bench.lines.map((line) => line.now),
      x,
    ),
    reaches: state.sound >= terms.target,
    tight: limits.filter((limit) => atLimit(limit, state)).map(({ name }) => name),
    missed: limits.reduce((sum, limit) => sum + missedBy(limit, state), 0),
  };
}

/**
 * Searches within given room.
 *
 *     least Σ |Δ|  with  σ + Σ ∂σ/∂x Δ ≤ σ*,  every limit linearised likewise, bounds of parts
 *
 * σ* is the mean stress at which the chance of staying sound is the target, found by shifting the expansion of the glass
 * at hand; slopes and σ* are taken anew at each round, and only recipes that the full model approves are kept.
 * @param search - recipe, kind, terms
 * @param rooms - how far each line may go
 * @param start - recipe to begin with
 * @returns the best recipe within all limits; null where there is none but the start
 */
export function settle(search: Search, rooms: readonly Room[], start: { x: number[]; state: State }): Found | null {
  const { bench, kind, terms, limits, solve } = search;
  const now = bench.lines.map((line) => line.now);
  let here = judged(search, start.x, start.state);
  let straight = {
    slopes: slopesAt(bench, here.x, here.state, rooms, limits),
    aim: aimFor(bench, here.state, terms),
  };
  let reach = FIRST_REACH;
  for (let round = 0; round < ROUNDS && reach >= LAST_REACH; round++) {
    const { x, state } = here;
    let bent: Bent = { stress: 0, limits: limits.map(() => 0) };
    let better: Judged | undefined;
    let step = reach;
    for (let tries = 0; tries < CORRECTIONS && !better; tries++) {
      const at = { x, state, ...straight, reach, kind, bent };
      let columns: number[] | null = null;
      for (const strict of STRICTNESS) columns ??= solve(program(bench, terms, rooms, limits, { ...at, strict }));
      if (!columns) break;
      const next = recipeOf(now, columns);
      step = movedOf(x, next);
      // Where even straight lines promise nothing more, this is it.
      if (tries === 0 && step < SETTLED) break;
      const there = bench.at(next);
      if (!there) break;
      const found = judged(search, next, there);
      if (improves(found, here)) better = found;
      // How far the full model bends away from the straight line on the way there; the next try allows for it.
      else bent = bentAt(limits, here, found, straight.slopes);
    }
    if (step < SETTLED) break;
    if (!better) {
      reach = Math.min(reach, step) / 4;
      continue;
    }
    const settled = movedOf(x, better.x) < SETTLED;
    here = better;
    if (settled) break;
    straight = { slopes: slopesAt(bench, here.x, here.state, rooms, limits), aim: aimFor(bench, here.state, terms) };
  }
  return here.missed === 0 && here.moved > 0 ? here : null;
}

/** The recipe that a programme's columns stand for. */
export function recipeOf(now: readonly number[], columns: readonly number[]): number[] {
  return now.map((parts, j) => Math.max(parts + columns[j]! - columns[now.length + j]!, 0));
}

/** Whether a recipe is better: nearer to the limits, then reaching the target, then with less moved or more sound. */
function improves(a: Judged, b: Judged): boolean {
  if (a.missed > 0 || b.missed > 0) return a.missed < b.missed - 1e-9;
  if (a.reaches !== b.reaches) return a.reaches;
  return a.reaches ? a.moved < b.moved - 1e-3 : a.state.sound > b.state.sound + 1e-9;
}
