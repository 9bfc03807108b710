/** A recipe that was found, rounded to what one weighs. @module */
import type { Bench, State } from "./bench.ts";
import type { Kind } from "./kinds.ts";
import { limitsOf, missedBy, type Terms } from "./limits.ts";
import type { Found } from "./settle.ts";

/** Roundings, the handiest first [parts in 100]; a finer one is taken where a coarser one breaks a limit. */
const STEPS = [0.5, 0.1, 0.05, 0.01];
/** Combinations tried of one rounding. */
const MOST_TRIED = 27;
/** What rounding may take off a chance that falls short of the target anyway [-]. */
const LOST = 0.005;

/**
 * The nearest recipe in handy steps that keeps every limit and the chance that was found; of several, the one with the
 * fewest parts moved.
 */
export function forTheScales(bench: Bench, kind: Kind, terms: Terms, found: Found): { x: number[]; state: State } {
  const limits = limitsOf(kind, terms);
  const now = bench.lines.map((line) => line.now);
  const enough = found.reaches ? terms.target : found.state.sound - LOST;
  for (const step of STEPS) {
    for (const x of roundings(now, found.x, step, terms)) {
      const state = bench.at(x);
      if (state && state.sound >= enough && limits.every((limit) => missedBy(limit, state) === 0)) return { x, state };
    }
  }
  return found;
}

/** Every moved line a step less, to the step or a step more; the fewest parts moved first. */
function roundings(now: readonly number[], found: readonly number[], step: number, { low, high }: Terms): number[][] {
  let all: { x: number[]; moved: number }[] = [{ x: [...now], moved: 0 }];
  found.forEach((parts, j) => {
    const change = parts - now[j]!;
    if (Math.abs(change) < 1e-6) return;
    const steps = Math.floor(Math.abs(change) / step + 1e-9);
    const tried = [steps, steps + 1, steps + 2].filter((count) => count > 0);
    all = all
      .flatMap(({ x, moved }) =>
        tried.map((count) => {
          const next = [...x];
          next[j] = Math.min(Math.max(now[j]! + Math.sign(change) * count * step, low[j]!, 0), high[j]!);
          return { x: next, moved: moved + count };
        }),
      )
      .sort((a, b) => a.moved - b.moved);
    if (all.length > MOST_TRIED) all = nearest(all, MOST_TRIED);
  });
  return all.map(({ x }) => x);
}

/** So many of a sorted list, from its middle: neither all too little nor all too much. */
function nearest<T>(all: readonly T[], count: number): T[] {
  const from = Math.floor((all.length - count) / 2);
  return all.slice(from, from + count);
}
