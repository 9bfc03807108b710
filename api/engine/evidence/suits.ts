/** Whether the glaze, as the tiles have shown it, suits one clay or another. @module */

import { RANKED } from "../fit/draw-outcome.ts";
import { DRAWS, NORMAL_SHAPE } from "../fit/draws.ts";
import { simulate } from "../fit/simulate.ts";
import type { Outcome, StressCase, Verdict } from "../fit/types.ts";
import { CASES, judge } from "../fit/verdict.ts";
import { round } from "../quantity.ts";
import type { Ready } from "./predict.ts";
import type { ReadyPiece } from "./read-request.ts";
import type { Suits } from "./types.ts";
import type { Cell } from "./weigh.ts";
import { chanceWords } from "./words.ts";

/** Chance of each outcome on one clay, over a belief. */
export function outcomesOn({ situation, draws }: Ready, cells: readonly Cell[]): Record<Outcome, number> {
  const tally = [0, 0, 0, 0];
  for (const { alpha, weights } of cells) {
    const expansion = { value: alpha, scale: 0, shape: NORMAL_SHAPE };
    const { outcome } = simulate({ ...situation, expansion, recipeSd: 0 }, draws);
    for (let i = 0; i < DRAWS; i++) tally[outcome[i]!]! += weights[i]! / cells.length;
  }
  return Object.fromEntries(RANKED.map((name, rank) => [name, tally[rank]!])) as Record<Outcome, number>;
}

/** The word that a fit would say of such chances: twenty cases, counted as a fit counts them. */
export function verdictOf(chances: Readonly<Record<Outcome, number>>): {
  verdict: Verdict;
  of20: Record<Outcome, number>;
} {
  const cases: StressCase[] = Array.from({ length: CASES }, (_, k) => {
    let left = (k + 0.5) / CASES;
    const outcome = RANKED.find((name) => {
      left -= chances[name];
      return left <= 0;
    });
    return { stressMPa: 0, outcome: outcome ?? "crazesOnCooling" };
  });
  return judge(cases);
}

/** Judges one clay. */
export function suits(piece: ReadyPiece, cells: readonly Cell[]): Suits {
  const chances = outcomesOn(piece, cells);
  const { verdict } = verdictOf(chances);
  const crazes = chances.crazesOnCooling + chances.crazesLater;
  const text = `On ${piece.name} it stays sound ${chanceWords(chances.sound)}, crazes sooner or later ${chanceWords(crazes)}, shivers ${chanceWords(chances.shivers)}.`;
  return { name: piece.name, verdict, probabilities: rounded(chances), text };
}

/** Rounded to four digits, and still summing to 1. */
function rounded(chances: Record<Outcome, number>): Record<Outcome, number> {
  const { crazesOnCooling, crazesLater, shivers } = chances;
  const out = {
    crazesOnCooling: round(crazesOnCooling, 4),
    crazesLater: round(crazesLater, 4),
    shivers: round(shivers, 4),
  };
  return { ...out, sound: round(Math.max(1 - out.crazesOnCooling - out.crazesLater - out.shivers, 0), 4) };
}
