/** A place for every label: search over sides and heights. @module */
import type { Tint } from "../marks/theme.ts";
import type { StressScale } from "./scale.ts";

/** A threshold and its words. */
export interface Threshold {
  mpa: number;
  /** Where its line stands [px]; the end of the scale where it lies beyond. */
  x: number;
  beyond: -1 | 0 | 1;
  words: [string, string];
  tint: Tint;
  width: number;
}

/** Words with a place. */
export interface Placed extends Threshold {
  side: -1 | 1;
  /** Steps above the ground, 0 is lowest. */
  tier: number;
  /** What its words cover [px]. */
  from: number;
  to: number;
  /** How much it is disliked. */
  cost: number;
}

/** What the labels must keep clear of: the least height above the clay that is free between two places [px]. */
export type Skyline = (from: number, to: number) => number;

const GAP = 7;

function span({ x, width, beyond }: Threshold, side: -1 | 1): [number, number] {
  const gap = beyond ? 0 : GAP;
  return side > 0 ? [x + gap, x + gap + width] : [x - gap - width, x - gap];
}

/**
 * Branch and bound over the lowest places of each label. Few places nearly always do; if not, more are tried.
 * @returns a place for every label
 */
export function bestOf(all: Threshold[], scale: StressScale, skyline: Skyline, step: number, tall: number): Placed[] {
  const every = all.map((threshold, i) => placesOf(threshold, i, scale, skyline, step));
  for (const many of [5, 9, 20]) {
    const found = search(
      every.map((places) => places.slice(0, many)),
      step,
      tall,
    );
    if (found) return found;
  }
  return [];
}

function search(choices: Placed[][], step: number, tall: number): Placed[] | undefined {
  // Least that the labels from i on can cost.
  const rest = choices.map((_, i) => choices.slice(i).reduce((sum, [first]) => sum + (first?.cost ?? 0), 0));
  let best: Placed[] | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  const placed: Placed[] = [];
  const visit = (i: number, cost: number) => {
    if (cost + (rest[i] ?? 0) >= bestCost) return;
    if (i === choices.length) {
      best = [...placed];
      bestCost = cost;
      return;
    }
    for (const option of choices[i]!) {
      if (placed.some((other) => meets(other, option, step, tall))) continue;
      // Neighbours at one height read as one sentence: stagger them.
      const level = placed.some((other) => other.tier === option.tier && near(other, option)) ? 1.5 : 0;
      placed.push(option);
      visit(i + 1, cost + option.cost + level);
      placed.pop();
    }
  };
  visit(0, 0);
  return best;
}

function placesOf(threshold: Threshold, i: number, scale: StressScale, skyline: Skyline, step: number): Placed[] {
  const sides: (-1 | 1)[] = threshold.beyond ? [threshold.beyond < 0 ? 1 : -1] : [1, -1];
  const places: Placed[] = [];
  for (const side of sides) {
    const [from, to] = span(threshold, side);
    if (from < scale.left - 1 || to > scale.right + 1) continue;
    const lowest = Math.max(0, Math.ceil(skyline(from - 4, to + 4) / step));
    for (let tier = lowest; tier < lowest + 10; tier++) {
      // Lowest first; words to the right of their line, but "in time" to the left of its own, away from "at once".
      const cost = tier + (side === (i === 2 ? -1 : 1) ? 0 : 0.4);
      places.push({ ...threshold, side, tier, from, to, cost });
    }
  }
  return places.sort((a, b) => a.cost - b.cost);
}

function near(a: Placed, b: Placed): boolean {
  return a.from < b.to + 48 && b.from < a.to + 48;
}

/** Whether two labels, or one's line and the other's words, share a place. */
function meets(a: Placed, b: Placed, step: number, tall: number): boolean {
  const apart = Math.abs(a.tier - b.tier) * step;
  if (apart < tall + 2 && a.from < b.to + 8 && b.from < a.to + 8) return true;
  return crosses(a, b, step, tall) || crosses(b, a, step, tall);
}

/** Whether the line of one runs through the words of the other. */
function crosses(line: Placed, other: Placed, step: number, tall: number): boolean {
  if (line.beyond || line.x <= other.from - 3 || line.x >= other.to + 3) return false;
  return line.tier * step + tall > other.tier * step;
}
