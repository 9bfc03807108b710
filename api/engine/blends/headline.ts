/** A blend told in a sentence or two. @module */
import { chances, inWords, sentence } from "../fit/words.ts";
import { casesHolding } from "./holding.ts";
import type { BlendGap, BlendPoint } from "./types.ts";

/**
 * How many mixtures should hold, and which is likeliest to.
 * @param names - of the corners
 * @example headline(["Thaw", "Hail"], points)
 * // "Two of 5 mixtures should hold. Likeliest is tile 4, 25 % Thaw and 75 % Hail: its chance of staying sound is about 18 in 20."
 */
export function headline(names: readonly string[], points: readonly (BlendPoint | BlendGap)[]): string {
  const judged = points.filter((point) => "verdict" in point);
  const [first] = judged;
  if (!first) return `None of these ${points.length} mixtures can be judged.`;
  const best = judged.reduce((a, b) => (b.probabilities.sound > a.probabilities.sound ? b : a), first);
  const sound = judged.filter(({ verdict }) => verdict === "sound").length;
  const chance = `its chance of staying sound is ${chances(casesHolding(best.probabilities))}`;
  const likeliest = sound === 1 ? "It" : sound > 0 ? "Likeliest" : "Nearest";
  const tile = `${likeliest} is tile ${best.label}, ${sharesInWords(names, best.shares)}: ${chance}.`;
  return `${sentence(inWords(sound))} of ${judged.length} mixtures should hold. ${tile}`;
}

/** Most corners that a sentence names. */
const MOST_NAMED = 4;

/** @example sharesInWords(["Thaw", "Hail"], [0.25, 0.75]) // "25 % Thaw and 75 % Hail" */
export function sharesInWords(names: readonly string[], shares: readonly number[]): string {
  const parts = shares.flatMap((share, c) =>
    share > 0 ? [`${Math.round(share * 1000) / 10}\u00a0% ${names[c]}`] : [],
  );
  if (parts.length === 1) return `${names[shares.findIndex((share) => share > 0)]} alone`;
  const others = parts.length - MOST_NAMED;
  const named = others > 1 ? [...parts.slice(0, MOST_NAMED), `${inWords(others)} more`] : parts;
  return `${named.slice(0, -1).join(", ")} and ${named.at(-1)}`;
}
