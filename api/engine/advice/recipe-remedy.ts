/** A recipe that was found, rounded for the scales, verified and told. @module */
import { checkFit } from "../fit/index.ts";
import type { FitReport } from "../fit/types.ts";
import { viscosityCurve } from "../glass/index.ts";
import { quantileOf, quantity, round, UNITS } from "../quantity.ts";
import type { Recipe } from "../recipe/types.ts";
import { type Bench, nameOf, type State } from "./bench.ts";
import { costsOf } from "./costs.ts";
import type { Kind } from "./kinds.ts";
import { type Found, movedOf } from "./least-change.ts";
import { limitsOf, missedBy, type Terms } from "./limits.ts";
import type { Block, NewLine, Remedy } from "./types.ts";
import { chanceWords, changesInWords, recipeInWords, standingOf } from "./words.ts";

/** Lays a found recipe out as an answer. */
export function recipeRemedy(bench: Bench, kind: Kind, terms: Terms, found: Found, before: FitReport): Remedy {
  const now = bench.lines.map((line) => line.now);
  const x = forTheScales(bench, kind, terms, found);
  const state = bench.at(x) ?? found.state;
  const glaze = bench.glaze(x) as Recipe & { thicknessMm?: number };
  const fit = { ...bench.request, glaze };
  const report = checkFit(fit);
  const reaches = report.probabilities.sound >= terms.target;
  const lines = bench.lines.flatMap(({ line, name, now: was }, j): NewLine[] => {
    const after = round(x[j]!, 2);
    if (was === 0 && after === 0) return [];
    const parts = round(was, 2);
    return [{ name, line: { ...line, parts: after }, before: parts, after, change: round(after - parts, 2) }];
  });
  const total = (bench.request.glaze as Recipe).recipe.reduce((sum, { parts }) => sum + parts, 0);
  const additions = (glaze.additions ?? []).map((line, j): NewLine => {
    const was = round((bench.additions[j]!.parts * 100) / total, 2);
    const after = round(line.parts, 2);
    return { name: nameOf(line), line: { ...line, parts: after }, before: was, after, change: round(after - was, 2) };
  });
  const changes = changesInWords(lines);
  const chance = chanceWords(report.probabilities.sound);
  return {
    kind: kind.kind,
    title: kind.title,
    reaches,
    partsMoved: round(movedOf(now, x), 2),
    before: standingOf(before),
    after: standingOf(report),
    recipe: { lines, additions, text: recipeInWords(lines, additions) },
    fit,
    melt: meltOf(terms.start, state, bench.peakC),
    costs: costsOf(terms.start, state),
    blocks: reaches ? [] : blocks(found, terms),
    text: `${changes || "no change"}: it then stays sound ${chance}.`,
  };
}

/** Rounded to a tenth of a part in 100, outward, so that rounding does not undo it; finer where a tenth breaks a limit. */
function forTheScales(bench: Bench, kind: Kind, terms: Terms, found: Found): number[] {
  const limits = limitsOf(kind, terms);
  for (const step of [0.1, 0.05, 0.01]) {
    const x = bench.lines.map(({ now }, j) => {
      const change = found.x[j]! - now;
      const steps = Math.ceil(Math.abs(change) / step - 0.05);
      return Math.min(Math.max(now + Math.sign(change) * steps * step, terms.low[j]!, 0), terms.high[j]!);
    });
    const there = bench.at(x);
    if (!there || there.sound < Math.min(terms.target, found.state.sound)) continue;
    if (limits.every((limit) => missedBy(limit, there) === 0)) return x;
  }
  return found.x;
}

function meltOf(before: State, after: State, peakC: number): Remedy["melt"] {
  const viscosity = (state: State) => {
    const estimate = viscosityCurve(state.chemistry.moleFractions).logViscosity(peakC);
    const [low, middle, high] = [0.05, 0.5, 0.95].map((p) => quantileOf(estimate, p)) as [number, number, number];
    return quantity(middle, low, high, UNITS.logViscosity, { rangeC: [peakC, peakC] });
  };
  const tension = (value: number) => quantity(value, value * 0.9, value * 1.1, "mN/m", { decimals: 0 });
  return {
    logViscosity: { before: viscosity(before), after: viscosity(after) },
    surfaceTension:
      before.tension === null || after.tension === null
        ? null
        : { before: tension(before.tension), after: tension(after.tension) },
  };
}

const WORDS: Readonly<Record<string, string>> = {
  melt: "The melt would become too stiff or too runny at the peak. Let the melt change more, or fire a little hotter or cooler.",
  "surface tension":
    "The surface tension would move too far: it might crawl, or run. Let the melt change more to go further.",
};

function blocks({ tight, x }: Found, { low, high, start }: Terms): Block[] {
  const named = tight.map((limit) => ({
    limit,
    text: WORDS[limit] ?? `The limit on ${limit} is reached. Widen it to go further.`,
  }));
  const ends = x.some(
    (parts, j) => high[j]! > low[j]! && (parts >= high[j]! - 0.05 || (parts <= low[j]! + 0.05 && low[j]! > 0)),
  );
  if (ends)
    named.push({ limit: "parts", text: "A material has reached the most, or the least, that is allowed of it." });
  if (named.length === 0) {
    named.push({
      limit: "kind",
      text: `These materials alone go no further than that; ${chanceWords(start.sound)} stay sound to begin with.`,
    });
  }
  return named;
}
