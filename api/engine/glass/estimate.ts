/** The expansion of a glass by every model, side by side. @module */
import setScores from "../../../data/models/published-sets.json" with { type: "json" };
import type { Notice } from "../errors.ts";
import { type Quantity, quantileOf, quantity, UNITS } from "../quantity.ts";
import { askSet, PUBLISHED_SETS, type PublishedSet, type SetAnswer } from "./expansion/index.ts";
import { EXPANSION } from "./models.ts";
import { MODEL_OXIDES } from "./oxides.ts";
import { glassProperties } from "./properties.ts";
import type { AccuracyFigures, ExpansionEstimates, ModelEstimate, MoleFractions, WeightPercent } from "./types.ts";

/** Identifier of the measured-glass model. */
export const MEASURED_MODEL = "measured-glasses";

/** Published set → domain → accuracy on measured glasses. */
export const SET_ACCURACY: Readonly<Record<string, Readonly<Record<string, AccuracyFigures>>>> = setScores.sets;

/**
 * Estimates the mean linear expansion of a fired glass by every model.
 *
 * The measured-glass model is the best estimate; its interval comes from publications unseen in fitting. A published
 * set's interval is its value ± the 90th percentile of its error on measured glazes, whatever range its mean is over,
 * so it says how far the 20–300 °C figure may lie from the book's sum.
 *
 * @param moleFractions - oxide → mole fraction, summing to 1 [-]
 * @param weightPercent - the same glass, oxide → weight per cent, summing to 100
 * @returns best, all models (best first), and warnings
 */
export function estimateExpansion(moleFractions: MoleFractions, weightPercent: WeightPercent): ExpansionEstimates {
  const properties = glassProperties(moleFractions);
  const best = measured(moleFractions, properties.expansion, properties.warnings);
  const molePercent: Record<string, number> = {};
  for (const oxide in moleFractions) molePercent[oxide] = 100 * moleFractions[oxide]!;
  const sets = PUBLISHED_SETS.map((set) => published(set, set.basis === "mole" ? molePercent : weightPercent));
  return { best, all: [best, ...sets], warnings: properties.warnings };
}

function measured(
  moleFractions: MoleFractions,
  estimate: Parameters<typeof quantileOf>[0],
  warnings: readonly Notice[],
): ModelEstimate {
  const known: readonly string[] = MODEL_OXIDES;
  const range: [number, number] = [20, 300];
  const low = Math.min(quantileOf(estimate, 0.05), estimate.value);
  const high = Math.max(quantileOf(estimate, 0.95), estimate.value);
  return {
    model: MEASURED_MODEL,
    name: "Measured glasses",
    kind: "measured-glass",
    expansion: quantity(estimate.value, low, high, UNITS.expansion, { rangeC: range }),
    basis: "mole",
    rangeC: range,
    missingOxides: Object.keys(moleFractions).filter((oxide) => moleFractions[oxide]! > 0 && !known.includes(oxide)),
    outside: MODEL_OXIDES.filter((oxide, i) => {
      const share = moleFractions[oxide] ?? 0;
      return share > EXPANSION.high[i]! + 1e-9 || share < EXPANSION.low[i]! - 1e-9;
    }),
    sources: EXPANSION.file.sources,
    note:
      warnings.length > 0
        ? "Outside the measured glasses in part: the interval is widened."
        : `Fitted to ${EXPANSION.file.training.rows} measured glasses; the interval is what it missed by on publications left out of the fit.`,
  };
}

function published(set: PublishedSet, percent: Readonly<Record<string, number>>): ModelEstimate {
  const answer = askSet(set, percent);
  return {
    model: set.id,
    name: set.name,
    kind: "published-set",
    expansion: answer.value === null ? null : setQuantity(set, answer.value),
    basis: set.basis,
    rangeC: set.rangeC,
    missingOxides: answer.missing.map((m) => m.oxide),
    outside: answer.outside.map((o) => o.oxide),
    sources: [set.source],
    note: [set.note, ...gaps(set, answer)].join(" "),
  };
}

function setQuantity(set: PublishedSet, value: number): Quantity {
  const halfWidth = SET_ACCURACY[set.id]!.glaze!.p90;
  return quantity(value, value - halfWidth, value + halfWidth, UNITS.expansion, {
    ...(set.rangeC ? { rangeC: set.rangeC } : {}),
  });
}

/** What the set does not cover of this glass, in words. */
function gaps(set: PublishedSet, answer: SetAnswer): string[] {
  const unit = set.basis === "mole" ? "mol %" : "wt %";
  const notes: string[] = [];
  if (answer.missing.length > 0) {
    const list = answer.missing.map((m) => `${m.oxide} (${m.percent.toFixed(1)} ${unit})`).join(", ");
    const done = answer.value === null ? "too much to give a figure" : "left out, the rest scaled up";
    notes.push(`It has no figure for ${list}: ${done}.`);
  }
  for (const { oxide, percent, limits } of answer.outside) {
    notes.push(`${oxide} at ${percent.toFixed(1)} ${unit} is outside its ${limits[0]}–${limits[1]} ${unit}.`);
  }
  return notes;
}
