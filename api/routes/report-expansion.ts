/** From a glaze to its expansion by every model, as the service shows it. @module */
import type { z } from "zod";
import { analyseGlaze, type GlazeChemistry } from "../engine/chemistry/index.ts";
import { DEFAULTS, WIDEST } from "../engine/fit/index.ts";
import { estimateExpansion, expansionContributions, nearestGlasses } from "../engine/glass/index.ts";
import { round, UNITS } from "../engine/quantity.ts";
import type { Shown } from "../http/operation.ts";
import type { ExpansionLine, ExpansionReport, ExpansionRequest } from "../schemas/expansion.ts";
import { showDoubts } from "./expansion-doubts.ts";
import { showPerPart } from "./expansion-per-part.ts";
import { showProperties } from "./expansion-properties.ts";
import { pointInto } from "./point-into.ts";
import { STAMP } from "./stamp.ts";

type Report = Shown<z.output<typeof ExpansionReport>>;
/** Said where the interval is wider than any glass. */
const NEVER_MEASURED = {
  code: "never-measured",
  message:
    "No glass like this was ever measured, so nothing can be said of it: the figures are what the sums give, far outside what they are for. Check the recipe for a missing line.",
};

type Question = Omit<z.output<typeof ExpansionLine>, "id">;

/**
 * @param question - a glaze by recipe or by oxides, and the doubts to count
 * @throws EngineError with pointers into the glaze
 */
export function reportExpansion(question: Question): Report {
  return report(question, analyseGlaze(question.glaze));
}

/**
 * The same with what was asked for besides; measured glasses are loaded only when asked for.
 * @param question - as for {@link reportExpansion}, and what to include
 * @param near - finds measured glasses near a composition
 */
export async function reportWithNearest(
  question: z.output<typeof ExpansionRequest>,
  near: typeof nearestGlasses = nearestGlasses,
): Promise<Report> {
  const chemistry = analyseGlaze(question.glaze);
  const plain = report(question, chemistry);
  if (!question.include?.includes("nearest")) return plain;
  const nearest = await near(chemistry.moleFractions);
  const sources = [...new Set([...plain.sources, ...nearest.sources])];
  return { ...plain, nearest: { ...nearest, unit: UNITS.expansion }, sources };
}

function report({ glaze, doubts = {} }: Question, chemistry: GlazeChemistry): Report {
  const { weightPercent, molePercent } = chemistry.fired;
  const { best, all, warnings } = estimateExpansion(chemistry.moleFractions, weightPercent);
  const { referenceOxide, reference, oxides } = expansionContributions(chemistry.moleFractions);
  const doubt = showDoubts(chemistry, glaze.thicknessMm ?? DEFAULTS.thicknessMm, doubts, best.expansion?.value ?? 0);
  const known = best.expansion !== null && best.expansion.high - best.expansion.low <= WIDEST;
  const properties = known ? showProperties(chemistry) : null;
  const cited = [...doubt.terms, ...Object.values(properties ?? {}).flat()].flatMap((part) => part.sources);
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
    perPart: showPerPart(chemistry),
    doubt,
    properties,
    engine: STAMP,
    warnings: [...chemistry.warnings, ...warnings, ...(known ? [] : [NEVER_MEASURED])].map((notice) =>
      pointInto("/glaze", notice),
    ),
    cautions: chemistry.cautions.map((notice) => pointInto("/glaze", notice)),
    sources: [...new Set([...chemistry.sources, ...all.flatMap((model) => model.sources), ...cited])],
  };
}
