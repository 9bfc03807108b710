/** A material of the engine as the service shows it: with its oxides worked out, its figures rounded. @module */
import type { z } from "zod";
import { analyseGlaze } from "../engine/chemistry/index.ts";
import { round } from "../engine/quantity.ts";
import type { Material as EngineMaterial } from "../engine/recipe/types.ts";
import type { Shown } from "../http/operation.ts";
import type { Material } from "../schemas/material.ts";
import { roundEach } from "./rounding.ts";

export type ShownMaterial = Shown<z.output<typeof Material>>;

/**
 * @param material - from the engine's table; one known by formula has its analysis worked out
 */
export function showMaterial(material: EngineMaterial): ShownMaterial {
  const { analysis, formula, id, name, aliases, kind, spreadFrom, densityGPerCm3, inTheKiln, note } = material;
  const worked = analysis ?? analyseGlaze({ recipe: [{ material: id, parts: 100 }] }).asWeighed;
  return {
    id,
    name,
    aliases,
    kind,
    formula: formula ?? null,
    weightPercent: roundEach(worked.weightPercent, 2),
    lossOnIgnitionPercent: round(worked.lossOnIgnitionPercent ?? 0, 2),
    plusMinusWeightPercent: roundEach(material.plusMinusWeightPercent, 3),
    spreadFrom,
    densityGPerCm3,
    inTheKiln,
    note,
    cautions: material.cautions,
    provenance: material.provenance,
    confidence: material.confidence,
    sources: material.sources,
  };
}
