/** What each expansion model is and how well it does, for people and apps to choose by. @module */
import { UNITS } from "../quantity.ts";
import { MEASURED_MODEL, SET_ACCURACY } from "./estimate.ts";
import { PUBLISHED_SETS, type PublishedSet, VALIDITY } from "./expansion/index.ts";
import { EXPANSION } from "./models.ts";
import { MODEL_OXIDES } from "./oxides.ts";
import type { ModelSummary } from "./types.ts";

/**
 * Every expansion model: basis, range, oxides, validity, accuracy on measured glasses, sources. Best first.
 * Accuracy and unit are in 1e-6/K; errors are predicted minus measured.
 */
export function expansionModels(): ModelSummary[] {
  return [measuredSummary(), ...PUBLISHED_SETS.map(setSummary)];
}

function measuredSummary(): ModelSummary {
  const { file } = EXPANSION;
  return {
    id: MEASURED_MODEL,
    name: "Measured glasses",
    kind: "measured-glass",
    basis: "mole",
    rangeC: file.rangeC,
    unit: UNITS.expansion,
    oxides: [...MODEL_OXIDES],
    validity: file.training.rangesMolePercent,
    accuracy: file.heldOut,
    accuracyNote: "On publications left out of the fit, each in its turn; errors are predicted minus measured.",
    sources: file.sources,
    provenance: `${file.method} ${file.training.rows} glasses from ${file.training.publications} publications. ${file.licence}`,
  };
}

function setSummary(set: PublishedSet): ModelSummary {
  return {
    id: set.id,
    name: set.name,
    kind: "published-set",
    basis: set.basis,
    rangeC: set.rangeC,
    unit: UNITS.expansion,
    oxides: [...set.oxides],
    validity: { ...VALIDITY[set.id] },
    accuracy: SET_ACCURACY[set.id]!,
    accuracyNote:
      "On all measured glasses that the set can answer for; the measured means are mostly 20–300 °C, whatever the set's own range. Errors are predicted minus measured.",
    sources: [set.source],
    provenance: `${set.provenance}. ${set.note}`,
  };
}
