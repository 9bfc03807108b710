/** Ways that leave the recipe alone: a thinner coat, other cooling, another clay. @module */
import { listBodies } from "../body/index.ts";
import { EngineError } from "../errors.ts";
import { DEFAULTS } from "../fit/defaults.ts";
import { checkFit } from "../fit/index.ts";
import type { FitReport, FitRequest } from "../fit/types.ts";
import { expansion, millimetres } from "../fit/words.ts";
import type { LayeredGlaze, SingleGlaze } from "../recipe/types.ts";
import { otherCooling } from "./cooling.ts";
import type { RemediesRequest, Remedy } from "./types.ts";
import { firstThatReaches, type Way } from "./ways.ts";
import { soundWords, standingOf } from "./words.ts";

/** Shares of the present thickness that are tried, and the thinnest coat that still covers [mm] (common practice, no source). */
const THINNER = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3];
const THINNEST_MM = 0.1;
/** A way that does not reach is told where it keeps this many more sound [-]. */
const WORTH_TELLING = 0.02;
/** Clays told at most. */
const MOST_CLAYS = 2;

/** Every way but the recipe; each verified by a fit of its own. */
export function otherWays(request: RemediesRequest, fit: FitRequest, before: FitReport, target: number): Remedy[] {
  return [...thinner(fit, target), ...otherCooling(fit, before, target), ...otherClay(request, fit, target)]
    .filter(({ report }) => report.probabilities.sound >= Math.min(target, before.probabilities.sound + WORTH_TELLING))
    .map(({ report, stops, ...way }) => ({
      cooling: null,
      ...way,
      reaches: report.probabilities.sound >= target,
      partsMoved: 0,
      materialsMoved: 0,
      before: standingOf(before),
      after: standingOf(report),
      recipe: null,
      melt: null,
      blocks: report.probabilities.sound >= target ? [] : [{ limit: way.kind, text: stops }],
    }));
}

function thinner(fit: FitRequest, target: number): Way[] {
  if ("layers" in fit.glaze) return [];
  const glaze = fit.glaze as Exclude<SingleGlaze, LayeredGlaze>;
  const now = glaze.thicknessMm ?? DEFAULTS.thicknessMm;
  const tried = THINNER.map((share) => Math.round(now * share * 100) / 100)
    .filter((mm) => mm >= THINNEST_MM)
    .map((thicknessMm): [number, FitRequest] => [
      thicknessMm,
      { ...fit, glaze: { ...glaze, thicknessMm } as SingleGlaze },
    ]);
  return firstThatReaches(tried, target).map(({ value, request, report }) => ({
    kind: "thickness",
    title: "a thinner coat",
    fit: request,
    report,
    stops: value === tried.at(-1)![0] ? "Thinner still, it would hardly cover." : "Thinner still does no better.",
    costs: [
      "A thinner coat shows the clay, and pours and rutile effects pale; food surfaces still have to be covered.",
    ],
    text: `Glaze it ${millimetres(value)} thick instead of ${millimetres(now)}: it then stays sound ${soundWords(report.probabilities.sound, target)}.`,
  }));
}

function otherClay(request: RemediesRequest, fit: FitRequest, target: number): Way[] {
  const peak = fit.firing?.peakC;
  const mine = "class" in fit.body ? fit.body.class : undefined;
  const clays =
    request.bodies ??
    listBodies()
      .filter(
        ({ id, firingC: [low, high] }) =>
          id !== mine && (peak === undefined || (peak >= low - 20 && peak <= high + 20)),
      )
      .map(({ id, name }) => ({ name, body: { class: id } }));
  return clays
    .flatMap(({ name, body }, i) => {
      try {
        const asked = { ...fit, body };
        return [{ name: name ?? `clay ${i + 1}`, request: asked, report: checkFit(asked) }];
      } catch (error) {
        if (error instanceof EngineError) {
          if (!request.bodies) return [];
          throw new EngineError(
            error.issues.map((issue) => ({ ...issue, pointer: issue.pointer.replace(/^\/body/, `/bodies/${i}/body`) })),
          );
        }
        throw error;
      }
    })
    .sort((a, b) => b.report.probabilities.sound - a.report.probabilities.sound)
    .filter(({ report }, i) => i === 0 || report.probabilities.sound >= target)
    .slice(0, MOST_CLAYS)
    .map(({ name, request: asked, report }) => ({
      kind: "body",
      title: `another clay: ${name}`,
      fit: asked,
      report,
      stops: "No other clay that I tried does better.",
      costs: ["Another clay shrinks, colours and throws differently, and its own glaze tests begin anew."],
      text: `On ${name} (about ${expansion(report.body.expansion.value)}) it stays sound ${soundWords(report.probabilities.sound, target)}.`,
    }));
}
