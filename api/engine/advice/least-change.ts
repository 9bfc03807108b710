/** The least change of a recipe that reaches a target: linear programme, full model, and again. @module */
import type { Bench, State } from "./bench.ts";
import type { Kind } from "./kinds.ts";
import { atLimit, limitsOf, missedBy, type Terms } from "./limits.ts";
import { type Bent, bentAt, movable, program, slopesAt } from "./program.ts";
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

const ROUNDS = 16;
/** Tries of one round, each allowing for the bend that the one before showed. */
const CORRECTIONS = 4;
/** Farthest a line may go in one round, at first and at last [parts in 100]. */
const FIRST_REACH = 25;
const LAST_REACH = 0.1;
/** A round that moves less has settled [parts in 100]. */
const SETTLED = 0.02;

/**
 * Searches one kind of change.
 *
 *     least Σ |Δ|  with  σ + Σ ∂σ/∂x Δ ≤ σ*,  every limit linearised likewise, bounds of parts
 *
 * σ* is the mean stress at which the chance of staying sound is the target, found by shifting the expansion of the glass
 * at hand; slopes and σ* are taken anew at each round, and only recipes that the full model approves are kept.
 * @param bench - the recipe
 * @param kind - which lines may move
 * @param terms - target, bounds, limits
 * @param solve - solver of linear programmes
 */
export function leastChange(bench: Bench, kind: Kind, terms: Terms, solve: LinearSolver): Found | null {
  const now = bench.lines.map((line) => line.now);
  const may = movable(bench.lines, kind, terms);
  if (may.every(({ up, down }) => !up && !down)) return null;
  const limits = limitsOf(kind, terms);
  const judged = (x: number[], state: State): Found & { missed: number } => ({
    x,
    state,
    moved: movedOf(now, x),
    reaches: state.sound >= terms.target,
    tight: limits.filter((limit) => atLimit(limit, state)).map(({ name }) => name),
    missed: limits.reduce((sum, limit) => sum + missedBy(limit, state), 0),
  });
  let here = judged(now, terms.start);
  let reach = FIRST_REACH;
  for (let round = 0; round < ROUNDS && reach >= LAST_REACH; round++) {
    const { x, state } = here;
    const slopes = slopesAt(bench, x, state, may, limits);
    const aim = stressFor(bench, state, terms);
    let bent: Bent = { stress: 0, limits: limits.map(() => 0) };
    let better: typeof here | undefined;
    for (let tries = 0; tries < CORRECTIONS && !better; tries++) {
      const at = { x, state, slopes, aim, reach, kind, bent };
      const columns =
        solve(program(bench, terms, may, limits, { ...at, tight: true })) ??
        solve(program(bench, terms, may, limits, { ...at, tight: false }));
      if (!columns) break;
      const n = now.length;
      const next = now.map((parts, j) => Math.max(parts + columns[j]! - columns[n + j]!, 0));
      const there = bench.at(next);
      if (!there) break;
      const found = judged(next, there);
      if (improves(found, here)) better = found;
      // How far the full model bends away from the straight line on the way there; the next try allows for it.
      else bent = bentAt(limits, here, found, slopes);
    }
    if (!better) reach /= 4;
    else {
      const settled = movedOf(x, better.x) < SETTLED;
      here = better;
      if (settled) break;
    }
  }
  return here.missed === 0 && here.moved > 0 ? here : null;
}

/** Whether a recipe is better: nearer to the limits, then reaching the target, then with less moved or more sound. */
function improves(a: Found & { missed: number }, b: Found & { missed: number }): boolean {
  if (a.missed > 0 || b.missed > 0) return a.missed < b.missed - 1e-9;
  if (a.reaches !== b.reaches) return a.reaches;
  return a.reaches ? a.moved < b.moved - 1e-3 : a.state.sound > b.state.sound + 1e-9;
}

/** Σ |Δ| [parts in 100]. */
export function movedOf(before: readonly number[], after: readonly number[]): number {
  return before.reduce((sum, parts, j) => sum + Math.abs(after[j]! - parts), 0);
}

/** Mean stress to aim at: the nearest at which the target is reached, else where most stay sound [Pa]. */
function stressFor(bench: Bench, state: State, { target, direction }: Terms): number {
  const goal = target + 0.002;
  let inside = 0;
  let outside = 0;
  let best = { sound: state.sound, stress: state.stress };
  if (state.sound >= goal) {
    // Already there: walk back towards the start as far as it holds.
    for (let by = 0.25; by <= 3; by += 0.25) {
      const there = bench.shifted(state, -direction * by);
      if (there.sound < goal) {
        outside = -direction * by;
        break;
      }
      inside = -direction * by;
    }
    if (outside === 0) return bench.shifted(state, inside).stress;
  } else {
    for (let by = 0.25; by <= 5; by += 0.25) {
      const there = bench.shifted(state, direction * by);
      if (there.sound > best.sound) best = there;
      if (there.sound >= goal) {
        inside = direction * by;
        break;
      }
      outside = direction * by;
    }
    if (inside === 0) return best.stress;
  }
  for (let i = 0; i < 7; i++) {
    const middle = (inside + outside) / 2;
    if (bench.shifted(state, middle).sound >= goal) inside = middle;
    else outside = middle;
  }
  return bench.shifted(state, inside).stress;
}
