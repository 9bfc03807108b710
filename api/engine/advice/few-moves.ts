/** Which few materials to move: every choice of one, two or three moves, by what a round's straight lines promise. @module */
import { corner, type Half } from "./corner.ts";
import type { Weighing } from "./effort.ts";
import type { Room } from "./slopes.ts";
import type { LinearProgram } from "./solver.ts";

/** Moves of one choice at most: a potter's mend of a recipe hardly ever has more. */
export const MOST_MOVES = 3;

/** A line that becomes more, or less. */
export interface Move {
  line: number;
  /** +1 more, −1 less. */
  way: 1 | -1;
}

/** A choice of moves. */
export interface Choice {
  moves: Move[];
  /** Parts of each move [parts in 100]. */
  parts: number[];
  /** Σ parts + what each material counts [parts in 100]. */
  effort: number;
}

/**
 * Choices of few moves that keep every row of a programme, the least effort first.
 *
 *     least Σ v + perMaterial × moves   with   least ≤ v ≤ room,  low ≤ A v ≤ high
 *
 * Each choice is a linear programme in at most {@link MOST_MOVES} unknowns, whose best lies at a corner; all corners are
 * tried. Choices that cannot come within `promising` times the best are passed over.
 * @param program - columns: parts more of each line, parts less of each, then what is missing from the aim (taken as none)
 * @param rooms - how far each line may go
 * @param weighing - least change, and what a material counts
 * @param promising - choices told: up to so many times the least effort [-]
 * @remarks Exact for the programme, which the tests compare with a mixed-integer solver.
 */
export function fewMoves(
  program: LinearProgram,
  rooms: readonly Room[],
  { least, perMaterial }: Weighing,
  promising: number,
): Choice[] {
  const n = rooms.length;
  const rows = halves(program);
  const open = rooms.flatMap(({ up, down }, line): (Move & { most: number })[] => [
    ...(up[1] >= least && up[1] > 0 ? [{ line, way: 1 as const, most: up[1] }] : []),
    ...(down[1] >= least && down[1] > 0 ? [{ line, way: -1 as const, most: down[1] }] : []),
  ]);
  const columns = open.map(({ line, way }) => rows.map(({ w }) => w[way > 0 ? line : n + line]!));
  const found: Choice[] = [];
  let best = Number.POSITIVE_INFINITY;
  const look = (picked: number[]) => {
    const k = picked.length;
    const limit = best * promising - perMaterial * k;
    if (leastOf(rows, columns, picked, least) > limit) return;
    const v = corner(
      picked.map((i) => columns[i]!),
      rows,
      least,
      picked.map((i) => open[i]!.most),
    );
    if (!v) return;
    const effort = v.reduce((sum, parts) => sum + parts, 0) + perMaterial * k;
    best = Math.min(best, effort);
    found.push({ moves: picked.map((i) => ({ line: open[i]!.line, way: open[i]!.way })), parts: v, effort });
  };
  for (let size = 1; size <= MOST_MOVES; size++) {
    each(open.length, size, (picked) => {
      if (new Set(picked.map((i) => open[i]!.line)).size === picked.length) look(picked);
    });
  }
  return found.filter(({ effort }) => effort <= best * promising).sort((a, b) => a.effort - b.effort);
}

/** The rows of a programme, one side each. */
function halves({ rows }: LinearProgram): Half[] {
  return rows.flatMap(({ weights, low, high }) => [
    ...(Number.isFinite(high) ? [{ w: weights, most: high }] : []),
    ...(Number.isFinite(low) ? [{ w: weights.map((weight) => -weight), most: -low }] : []),
  ]);
}

/** A floor under Σ v: what the row that asks for most asks of its most helpful move. */
function leastOf(
  rows: readonly Half[],
  columns: readonly number[][],
  picked: readonly number[],
  least: number,
): number {
  let floor = least * picked.length;
  rows.forEach(({ most }, r) => {
    if (most >= 0) return;
    let help = 0;
    for (const i of picked) help = Math.max(help, -columns[i]![r]!);
    floor = Math.max(floor, help > 0 ? -most / help : Number.POSITIVE_INFINITY);
  });
  return floor;
}

/** Calls with every choice of so many out of n, in order. */
function each(n: number, size: number, call: (picked: number[]) => void, from = 0, picked: number[] = []): void {
  if (picked.length === size) call(picked);
  else for (let i = from; i < n; i++) each(n, size, call, i + 1, [...picked, i]);
}
