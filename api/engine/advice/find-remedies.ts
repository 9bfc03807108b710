/** The question: what would make it fit? @module */
import type { Notice } from "../errors.ts";
import { checkFit } from "../fit/index.ts";
import type { FitReport } from "../fit/types.ts";
import { DATA_VERSION, DEFAULT_SEED, ENGINE_VERSION } from "../version.ts";
import { whatBlocks } from "./blocked.ts";
import { PER_MATERIAL } from "./effort.ts";
import { otherWays } from "./other-ways.ts";
import { askedOf, checkNames, fitOf } from "./question.ts";
import { recipeRemedies } from "./recipe-remedies.ts";
import { type LinearSolver, solveLinear } from "./solver.ts";
import type { RemediesReport, RemediesRequest, Remedy } from "./types.ts";
import { chanceWords, soundWords, standingOf } from "./words.ts";

/** Chance from which a fit says "sound": 17 of 20. */
const TARGET = 0.85;

/**
 * Finds least changes that make a glaze fit, of as many kinds as there are.
 *
 * Recipes are searched by linear programmes on the linearised model and verified by the full one (see `leastChange`):
 * few materials, moved by amounts worth weighing; the melt's viscosity at the peak and its surface tension stay within
 * tolerance, colourants keep their share. Thickness, cooling and clay are tried outright.
 * @param request - the misfit with its limits
 * @param solve - another solver of linear programmes, to try what is made of its answers
 * @returns remedies, those that reach the target first, by parts and materials moved; or what stands in the way
 * @throws EngineError with every issue, pointers from the root of the request
 * @remarks Nothing reaching the target is an answer, not an error.
 */
export function findRemedies(request: RemediesRequest, solve: LinearSolver = solveLinear): RemediesReport {
  const fit = fitOf(request);
  checkNames(request);
  const seed = request.seed ?? DEFAULT_SEED;
  const target = request.target ?? TARGET;
  const before = checkFit(fit);
  const warnings: Notice[] = [...before.warnings];
  const fits = before.probabilities.sound >= target;
  const known = "recipe" in fit.glaze;
  if (!fits && !known) warnings.push(RECIPE_UNKNOWN);
  // First what is soon tried: a clay that cannot be is refused before the long search.
  const others = fits ? [] : otherWays(request, fit, before, target);
  const asked = fits || !known ? null : askedOf(request, before, target, seed);
  const remedies = [...(asked ? recipeRemedies(asked, before, solve) : []), ...others].sort(
    (a, b) => Number(b.reaches) - Number(a.reaches) || order(a) - order(b),
  );
  const stuck = !fits && !remedies.some(({ reaches }) => reaches);
  return {
    headline: headline(before, target, fits, remedies),
    target,
    before: standingOf(before),
    remedies,
    blocked: stuck ? whatBlocks({ request, asked, before, target, seed, solve }, remedies) : [],
    engine: { version: ENGINE_VERSION, dataVersion: DATA_VERSION, seed },
    warnings,
    cautions: before.cautions,
    sources: [...new Set([...before.sources, "common-practice"])].sort(),
  };
}

const RECIPE_UNKNOWN: Notice = {
  code: "recipe-unknown",
  message: "Without a recipe I can only speak of thickness, cooling and clay. Give the recipe, and I can change it.",
  pointer: "/glaze",
};

/** Reaching recipes by effort, then what leaves the recipe alone; those that fall short by how far they get. */
function order({ reaches, recipe, partsMoved, materialsMoved, after }: Remedy): number {
  if (!reaches) return -after.probabilities.sound;
  return recipe ? partsMoved + PER_MATERIAL * materialsMoved : 1000 - after.probabilities.sound;
}

function headline(before: FitReport, target: number, fits: boolean, remedies: readonly Remedy[]): string {
  const now = chanceWords(before.probabilities.sound);
  if (fits) return `It fits as it is: it stays sound ${now}, and ${chanceWords(target)} was wanted.`;
  const reaching = remedies.filter(({ reaches }) => reaches);
  if (reaching.length === 0) {
    const [best] = remedies;
    const most = best
      ? ` The most I found is ${soundWords(best.after.probabilities.sound, target)}, by ${best.title}.`
      : " I found nothing that helps.";
    return `Nothing within these limits brings it from ${now} sound to ${chanceWords(target)}.${most}`;
  }
  const [least] = reaching;
  const ways = reaching.length === 1 ? "One way brings" : `${reaching.length} ways bring`;
  return `It stays sound ${now} as it is. ${ways} it to ${chanceWords(target)} or better; the least: ${least!.text}`;
}
