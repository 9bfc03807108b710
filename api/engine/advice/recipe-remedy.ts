/** A recipe that was found, rounded for the scales, verified and told. @module */
import { checkFit } from "../fit/index.ts";
import type { FitReport } from "../fit/types.ts";
import { surfaceTension, viscosityCurve } from "../glass/index.ts";
import { quantileOf, quantity, round, UNITS } from "../quantity.ts";
import type { Recipe } from "../recipe/types.ts";
import { type Bench, nameOf, type State } from "./bench.ts";
import { costsOf } from "./costs.ts";
import { materialsMovedOf, movedOf } from "./effort.ts";
import { forTheScales } from "./for-the-scales.ts";
import type { Kind } from "./kinds.ts";
import { KEPT, type Terms } from "./limits.ts";
import type { Found } from "./settle.ts";
import type { Block, NewLine, Remedy } from "./types.ts";
import { changesInWords, recipeInWords, soundWords, standingOf } from "./words.ts";

/** What there is to tell of. */
interface Told {
  bench: Bench;
  kind: Kind;
  terms: Terms;
  found: Found;
}

/** Lays a found recipe out as an answer. */
export function recipeRemedy({ bench, kind, terms, found }: Told, before: FitReport): Remedy {
  const now = bench.lines.map((line) => line.now);
  const { x, state } = forTheScales(bench, kind, terms, found);
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
  const chance = soundWords(report.probabilities.sound, terms.target);
  return {
    kind: kind.kind,
    title: kind.title,
    reaches,
    partsMoved: round(movedOf(now, x), 2),
    materialsMoved: materialsMovedOf(now, x),
    before: standingOf(before),
    after: standingOf(report),
    recipe: { lines, additions, text: recipeInWords(lines, additions) },
    cooling: null,
    fit,
    melt: meltOf(terms.start, state, bench.peakC),
    costs: costsOf(terms.start, state),
    blocks: reaches ? [] : blocks({ bench, kind, terms, found }),
    text: `${changes || "no change"}: it then stays sound ${chance}.`,
  };
}

function meltOf(before: State, after: State, peakC: number): Remedy["melt"] {
  const viscosity = (state: State) => {
    const estimate = viscosityCurve(state.chemistry.moleFractions).logViscosity(peakC);
    const [low, middle, high] = [0.05, 0.5, 0.95].map((p) => quantileOf(estimate, p)) as [number, number, number];
    return quantity(middle, low, high, UNITS.logViscosity, { rangeC: [peakC, peakC] });
  };
  const tension = ({ chemistry: { moleFractions, fired } }: State) =>
    surfaceTension(moleFractions, fired.weightPercent).find(({ value }) => value !== null)?.value ?? null;
  const [was, is] = [tension(before), tension(after)];
  return {
    logViscosity: { before: viscosity(before), after: viscosity(after) },
    surfaceTension: was && is ? { before: was, after: is } : null,
  };
}

const WORDS: Readonly<Record<string, string>> = {
  melt: "Farther, the melt would become too stiff or too runny at the peak. Let it change more, or fire a little hotter or cooler.",
  "surface tension": "Farther, the surface tension would move too much: it might crawl, or run. Let it change more.",
};
/** What a kind of change holds by itself. */
const HOLDS: Readonly<Record<NonNullable<Kind["holds"]>, string>> = {
  "silica-to-alumina": "Farther, silica and alumina would not keep their ratio.",
  "silica-and-alumina": "Farther, silica or alumina would not stay what it is.",
};
/** A material is at its end within [parts in 100]. */
const NEAR_END = 0.05;
/** Fields of the question that set a limit. */
const POINTERS: Readonly<Record<string, string>> = {
  melt: "/melt/logViscosity",
  "surface tension": "/melt/surfaceTensionPercent",
  "silica to alumina": "/silicaToAlumina",
};

function blocks({ bench, kind, terms, found }: Told): Block[] {
  const named = found.tight
    .filter((limit) => !limit.endsWith(KEPT))
    .map((limit): Block => {
      const pointer = POINTERS[limit];
      const text = WORDS[limit] ?? `The limit on ${limit} is reached. Widen it to go farther.`;
      return { limit, ...(pointer ? { pointer } : {}), text };
    });
  if (found.tight.some((limit) => limit.endsWith(KEPT))) {
    named.push({ limit: "kind", text: HOLDS[kind.holds!] });
  }
  const ends = found.x.some((parts, j) => {
    const moved = Math.abs(parts - bench.lines[j]!.now) > NEAR_END;
    return moved && (parts >= terms.high[j]! - NEAR_END || (parts <= terms.low[j]! + NEAR_END && terms.low[j]! > 0));
  });
  if (ends) {
    const text = "A material has reached the most, or the least, that is allowed of it.";
    named.push({ limit: "parts", pointer: "/parts", text });
  }
  if (named.length === 0) named.push({ limit: "kind", text: "These materials alone go no farther than that." });
  return named;
}
