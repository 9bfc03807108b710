/** The least change of a recipe, of one kind, that reaches a target: few materials, moved by weighable amounts. @module */
import { aimFor } from "./aim.ts";
import type { Bench } from "./bench.ts";
import { effortOf, FOR_THE_SCALES, materialsMovedOf, type Weighing } from "./effort.ts";
import { fewMoves, MOST_MOVES, type Move } from "./few-moves.ts";
import type { Kind } from "./kinds.ts";
import type { Terms } from "./limits.ts";
import { program } from "./program.ts";
import { type Found, type Search, searchOf, settle } from "./settle.ts";
import { moves, type Room, roomOf, slopesAt } from "./slopes.ts";
import type { LinearProgram, LinearSolver } from "./solver.ts";

/** Rounds of choosing materials, each with slopes taken at the best recipe so far. */
const ROUNDS = 3;
/** Choices tried in one round. */
const CHOICES = 4;
/** A choice is tried while straight lines promise less than so many times the best effort: they err. */
const PROMISING = 1.15;
/** What a change that falls short may lose of how far it gets, to be simpler: this, and this where the first is not enough [-]. */
const FORGONE = [0.02, 0.05] as const;
/** Simple enough: materials moved. */
const SIMPLE = 4;
/** An effort that is less by no more than this is no less [parts in 100]. */
const NO_LESS = 1e-3;

/**
 * Searches one kind of change.
 *
 *     least  Σ |Δ| + perMaterial × materials moved,   each |Δ| nothing or at least `least`
 *
 * First without the count (`settle`), which says whether the target can be reached; then choices of few materials
 * (`fewMoves`), the most promising first, are each settled by itself and verified. Where more materials are needed,
 * those that can be left out of the first answer are, one by one.
 * @param bench - the recipe
 * @param kind - which lines may move
 * @param terms - target, bounds, limits
 * @param solve - solver of linear programmes
 * @param weighing - least change, and what a material counts; as potters weigh if left out
 * @param from - recipe to begin with; as it stands if left out
 */
export function leastChange(
  bench: Bench,
  kind: Kind,
  terms: Terms,
  solve: LinearSolver,
  weighing: Weighing = FOR_THE_SCALES,
  from: Pick<Found, "x" | "state"> = { x: bench.lines.map((line) => line.now), state: terms.start },
): Found | null {
  const now = bench.lines.map((line) => line.now);
  const rooms = roomOf(bench.lines, kind, terms);
  if (!rooms.some(moves)) return null;
  const free = settle(searchOf(bench, kind, terms, solve), rooms, from);
  if (!free || (weighing.least <= 0 && weighing.perMaterial <= 0)) return free;
  const fewAt = (target: number) => fewest(searchOf(bench, kind, { ...terms, target }, solve), rooms, free, weighing);
  if (free.reaches) return fewAt(terms.target) ?? free;
  // What falls short is made simpler too, as long as it gets nearly as far.
  let simplest = free;
  for (const forgone of FORGONE) {
    const few = fewAt(free.state.sound - forgone);
    if (few) simplest = { ...few, reaches: few.state.sound >= terms.target, tight: free.tight };
    if (materialsMovedOf(now, simplest.x) <= SIMPLE) break;
  }
  return simplest;
}

/** The least effort over choices of materials; null where no choice reaches. */
function fewest(search: Search, rooms: readonly Room[], free: Found, weighing: Weighing): Found | null {
  const { bench } = search;
  const now = bench.lines.map((line) => line.now);
  const tried = new Set<string>();
  let best: Found | null = null;
  let least = Number.POSITIVE_INFINITY;
  /** Settles on a choice; whether it is the best so far. */
  const settleOn = (moves: readonly Move[], start: number[]): boolean => {
    const name = moves.map(({ line, way }) => (way > 0 ? `+${line}` : `-${line}`)).join();
    if (tried.has(name)) return false;
    tried.add(name);
    const there = bench.at(start);
    const found = there && settle(search, roomFor(rooms, moves, weighing.least), { x: start, state: there });
    if (!found?.reaches) return false;
    const effort = effortOf(now, found.x, weighing);
    if (effort > least - NO_LESS) return false;
    best = found;
    least = effort;
    return true;
  };
  for (let round = 0; round < ROUNDS; round++) {
    const straight = straightAt(search, rooms, best ?? free);
    let improved = false;
    for (const { moves, parts, effort } of fewMoves(straight, rooms, weighing, PROMISING).slice(0, CHOICES)) {
      if (effort > PROMISING * least) break;
      if (settleOn(moves, recipeOf(now, moves, parts))) improved = true;
    }
    if (!improved) break;
  }
  if (least > free.moved + weighing.perMaterial * (MOST_MOVES + 1)) leaveOut(now, rooms, free, weighing, settleOn);
  return best;
}

/**
 * From all that moved without the count, leaves out one material after the other, the smallest move first. What has no
 * room for a change worth weighing is out from the start.
 */
function leaveOut(
  now: readonly number[],
  rooms: readonly Room[],
  free: Found,
  { least }: Weighing,
  settleOn: (moves: readonly Move[], start: number[]) => boolean,
): void {
  const change = (line: number) => free.x[line]! - now[line]!;
  let kept = now
    .map((_, line): Move => ({ line, way: change(line) > 0 ? 1 : -1 }))
    .filter(({ line }) => Math.abs(change(line)) > NO_LESS)
    .filter(({ line, way }) => (way > 0 ? rooms[line]!.up : rooms[line]!.down)[1] >= least);
  const partsOf = (moves: readonly Move[]) => moves.map(({ line }) => Math.max(Math.abs(change(line)), least));
  settleOn(kept, recipeOf(now, kept, partsOf(kept)));
  const bySize = [...kept].sort((a, b) => Math.abs(change(a.line)) - Math.abs(change(b.line)));
  for (const move of bySize) {
    const others = kept.filter((one) => one !== move);
    if (others.length > 0 && settleOn(others, recipeOf(now, others, partsOf(others)))) kept = others;
  }
}

/** A round's straight lines from a recipe, with no end to how far they are followed. */
function straightAt(
  { bench, kind, terms, limits }: Search,
  rooms: readonly Room[],
  { x, state }: Found,
): LinearProgram {
  const slopes = slopesAt(bench, x, state, rooms, limits);
  const aim = aimFor(bench, state, terms);
  const bent = { stress: 0, limits: limits.map(() => 0) };
  const here = { x, state, slopes, aim, reach: Number.POSITIVE_INFINITY, strict: "all" as const, kind, bent };
  return program(bench, terms, rooms, limits, here);
}

function recipeOf(now: readonly number[], moves: readonly Move[], parts: readonly number[]): number[] {
  const x = [...now];
  moves.forEach(({ line, way }, i) => {
    x[line] = Math.max(x[line]! + way * parts[i]!, 0);
  });
  return x;
}

/** Room for the lines of a choice alone, each moved by something worth weighing. */
function roomFor(rooms: readonly Room[], moves: readonly Move[], least: number): Room[] {
  const none = { up: [0, 0], down: [0, 0] } as const;
  return rooms.map((room, j) => {
    const move = moves.find(({ line }) => line === j);
    if (!move) return none;
    return move.way > 0 ? { ...none, up: [least, room.up[1]] } : { ...none, down: [least, room.down[1]] };
  });
}
