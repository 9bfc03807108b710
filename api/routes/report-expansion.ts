/** From a glaze to its expansion by every model, as the service shows it. @module */
import type { z } from "zod";
import { analyseGlaze } from "../engine/chemistry/index.ts";
import { estimateExpansion, expansionContributions } from "../engine/glass/index.ts";
import { round, UNITS } from "../engine/quantity.ts";
import type { OxideComposition, Recipe } from "../engine/recipe/types.ts";
import type { Shown } from "../http/operation.ts";
import type { ExpansionReport } from "../schemas/expansion.ts";
import { pointInto } from "./point-into.ts";
import { STAMP } from "./stamp.ts";

/**
 * @param glaze - by recipe or by oxides
 * @throws EngineError with pointers into the glaze
 */
export function reportExpansion(glaze: Recipe | OxideComposition): Shown<z.output<typeof ExpansionReport>> {
  const chemistry = analyseGlaze(glaze);
  const { weightPercent, molePercent } = chemistry.fired;
  const { best, all, warnings } = estimateExpansion(chemistry.moleFractions, weightPercent);
  const { referenceOxide, reference, oxides } = expansionContributions(chemistry.moleFractions);
  const sources = new Set([...chemistry.sources, ...all.flatMap((model) => model.sources)]);
  return {
    best,
    all,
    contributions: {
      unit: UNITS.expansion,
      rangeC: [20, 300],
      referenceOxide,
      reference: round(reference, 3),
      oxides: oxides.map((part) => ({
        oxide: part.oxide,
        molePercent: round(molePercent[part.oxide] ?? 0, 2),
        weightPercent: round(weightPercent[part.oxide] ?? 0, 2),
        contribution: round(part.contribution, 3),
        perMolePercent: round(part.perMolePercent, 4),
        perWeightPercent: round(part.perWeightPercent, 4),
      })),
    },
    engine: STAMP,
    warnings: [...chemistry.warnings, ...warnings].map((notice) => pointInto("/glaze", notice)),
    cautions: chemistry.cautions.map((notice) => pointInto("/glaze", notice)),
    sources: [...sources],
  };
}
