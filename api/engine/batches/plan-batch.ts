/** The front door: from a recipe to a sheet that can be weighed by. @module */
import { analyseGlaze, type ChemistryLine } from "../chemistry/index.ts";
import type { Notice } from "../errors.ts";
import { Faults } from "../lengths/index.ts";
import { quantity, round } from "../quantity.ts";
import { wantedDry } from "./amount.ts";
import { checkGravity, correct } from "./bucket.ts";
import { solidsDensity } from "./density.ts";
import { type Figure, START_SHARE, USUAL_GRAVITY } from "./practice.ts";
import { roundShares } from "./round-shares.ts";
import { batchSheets } from "./sheet.ts";
import { solidsShare, waterFor } from "./slurry.ts";
import type { BatchLine, BatchReport, BatchRequest } from "./types.ts";

/** Decimals of a gram that are weighed [-]. */
const DECIMALS = 2;

/**
 * Weights in order of weighing, water for a specific gravity, and what leaves in the kiln.
 * @param request - recipe, amount, and the specific gravity wanted
 * @returns weights to 0.01 g that add up to what was wanted, water with what the density of the solids leaves open [g]
 * @throws ImpossibleValueError or UnknownNameError with every fault, pointers into `request`
 * Sources: brongniart; glaze-practice for what a request leaves out; the materials' own sources for losses and densities.
 * @example planBatch({ glaze: { recipe: [{ material: "whiting", parts: 1 }] }, amount: { dry: "1 kg" } }).lines[0]?.weighG // 1000
 */
export function planBatch(request: BatchRequest): BatchReport {
  const faults = new Faults();
  const warnings: Notice[] = [];
  const chemistry = faults.gather("/glaze", () => analyseGlaze(request.glaze));
  for (const notice of chemistry?.warnings ?? [])
    warnings.push({ ...notice, pointer: `/glaze${notice.pointer ?? ""}` });
  const stated = request.solidsDensityGPerCm3;
  if (stated !== undefined) {
    faults.number(stated, "/solidsDensityGPerCm3", "The density of the solids", { from: 1.5, to: 7, unit: "g/cm3" });
  }
  const density = solidsDensity(chemistry?.lines ?? [], stated ?? (chemistry ? undefined : 2.6), warnings);
  const gravity = request.specificGravity ?? USUAL_GRAVITY.value;
  if (request.specificGravity === undefined) {
    const message = `No specific gravity was stated; I took ${gravity}, usual for dipping (${USUAL_GRAVITY.low} to ${USUAL_GRAVITY.high}).`;
    warnings.push({ code: "gravity-assumed", message });
  } else checkGravity(gravity, "/specificGravity", density, faults);
  const loss = (chemistry?.asWeighed.lossOnIgnitionPercent ?? 0) / 100;
  const wanted = wantedDry(request.amount, gravity, density, loss, faults);
  const bucket = request.bucket && correct(request.bucket, gravity, density, faults);
  faults.throwIfAny();
  const lines = weighOut(chemistry!.lines, wanted.grams, wanted.withAdditions);
  const sum = (addition: boolean) =>
    round(
      lines.filter((line) => line.addition === addition).reduce((total, line) => total + line.weighG, 0),
      DECIMALS,
    );
  const [recipeG, additionsG] = [sum(false), sum(true)];
  const totalG = round(recipeG + additionsG, DECIMALS);
  const lostG = totalG * loss;
  const name = request.name?.trim() || "batch";
  const report: Omit<BatchReport, "sheets"> = {
    headline: "",
    name,
    lines,
    dry: { recipeG, additionsG, totalG },
    lossOnIgnition: { percent: round(100 * loss, 2), lostG: round(lostG, 1), glassG: round(totalG - lostG, 1) },
    solidsDensity: quantity(density.value, density.low, density.high, "g/cm3"),
    specificGravity: gravity,
    ...mixed(totalG, gravity, density),
    dips: wanted.dips,
    bucket: bucket ?? null,
    steps: [],
    warnings,
    cautions: chemistry!.cautions,
    sources: [...new Set([...chemistry!.sources, "brongniart", "glaze-practice"])],
  };
  report.headline = headline(report);
  report.steps = steps(report);
  return { ...report, sheets: batchSheets(report, request.page ?? "A4") };
}

/** Heaviest first, additions after the recipe: a slip with a large weight is seen at once, and stains are not carried about. */
function weighOut(lines: readonly ChemistryLine[], grams: number, withAdditions: boolean): BatchLine[] {
  const parts = (some: readonly ChemistryLine[]) => some.reduce((sum, line) => sum + line.parts, 0);
  const recipe = lines.filter((line) => !line.addition);
  const main = parts(recipe);
  // A recipe of additions alone has nothing to be in a hundred of.
  const base = main > 0 ? main : parts(lines);
  const scale = grams / (withAdditions || main === 0 ? parts(lines) : main);
  let running = 0;
  return [recipe, lines.filter((line) => line.addition)].flatMap((some) => {
    const ordered = some.filter((line) => line.parts > 0).sort((a, b) => b.parts - a.parts);
    const weights = roundShares(
      ordered.map((line) => line.parts * scale),
      DECIMALS,
    );
    return ordered.map((line, i) => {
      running = round(running + weights[i]!, DECIMALS);
      return {
        label: line.label,
        material: line.material,
        addition: line.addition,
        inHundred: round((100 * line.parts) / base, 2),
        weighG: weights[i]!,
        runningG: running,
        lossOnIgnitionPercent: round(line.lossOnIgnitionPercent, 2),
        lossG: round((weights[i]! * line.lossOnIgnitionPercent) / 100, 2),
      };
    });
  });
}

/** Water, volume and content of the mixed bucket, with what the density of the solids leaves open. */
function mixed(dry: number, gravity: number, { value, low, high }: Figure) {
  const over = (of: (density: number) => number, unit: string, decimals: number) => {
    const ends = [of(low), of(high)];
    return quantity(of(value), Math.min(...ends), Math.max(...ends), unit, { decimals });
  };
  return {
    water: over((d) => waterFor(dry, gravity, d), "g", 0),
    volume: over((d) => (dry + waterFor(dry, gravity, d)) / gravity, "ml", 0),
    dryPerLitre: over((d) => 1000 * gravity * solidsShare(gravity, d), "g/l", 0),
    solids: over((d) => 100 * solidsShare(gravity, d), "wt %", 1),
  };
}

function headline({ name, dry, water, specificGravity, volume }: Omit<BatchReport, "sheets">): string {
  const additions = dry.additionsG > 0 ? ` (${dry.additionsG} g of it additions)` : "";
  return `${name}: ${dry.totalG} g dry${additions} and about ${water.value} g of water make ${round(volume.value / 1000, 2)} l at ${specificGravity}.`;
}

function steps({ water, specificGravity }: Omit<BatchReport, "sheets">): string[] {
  const first = Math.round((START_SHARE * water.value) / 10) * 10;
  return [
    "Weigh in this order and tick each line; the running total shows a slip at once.",
    `Start with ${first} g of water, add the dry glaze to it, and let it soak.`,
    `Sieve, then add water until it stands at ${specificGravity}: a litre weighs ${round(1000 * specificGravity, 0)} g.`,
  ];
}
