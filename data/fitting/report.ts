/** Writes the report on the fitted models. @module */
import type { AttemptScore } from "./attempts.ts";
import type { DensityCalibration } from "./calibrate-density.ts";
import { DOMAINS, inDomain } from "./domains.ts";
import type { FittedProperty } from "./fit-property.ts";
import { partsSection } from "./like-for-like.ts";
import { attemptsSection } from "./report-attempts.ts";
import { familyRows, worstLines } from "./report-parts.ts";
import { densitySection, surfaceSection } from "./report-sums.ts";
import { type AccuracyRow, accuracyTable, intervalTable } from "./report-tables.ts";
import type { Samples } from "./samples.ts";
import type { SetScores } from "./score-sets.ts";
import type { Agreement } from "./surface-agreement.ts";
import { targetLines } from "./target-lines.ts";
import { TARGETS } from "./targets.ts";
import type { FittedViscosity } from "./viscosity/fit-viscosity.ts";
import { viscositySection } from "./viscosity/report-viscosity.ts";

/** What the report tells of. */
export interface Findings {
  fitted: readonly FittedProperty[];
  viscosity: FittedViscosity;
  sets: SetScores;
  samples: Samples;
  density: DensityCalibration;
  surface: Agreement;
  attempts: readonly AttemptScore[];
}

/** The whole report as Markdown. */
export function reportOf({ fitted, viscosity, sets, samples, density, surface, attempts }: Findings): string {
  return [
    "# How well the glass models do",
    "Written by `npm run fit-models`; do not edit. Every figure is an error on publications left out of the fit:",
    "ten folds, dealt by publication, with publications that print the same value for the same glass kept together,",
    "so that no reprint leaks. Errors are predicted minus measured. Domains (mol %): *glaze* has SiO2 45–80,",
    "Al2O3 2–20, B2O3 < 25, Li2O < 12, TiO2 < 6, ZrO2 < 8, P2O5 < 4, fluxes ≥ 8; *stoneware-like* is a glaze with",
    "R2O 1–16, MgO + CaO + SrO + BaO + ZnO ≥ 2, Al2O3 ≥ 4, SiO2 ≥ 50.",
    "",
    "Data: SciGlass, Copyright (c) 2019 EPAM Systems, Open Database License 1.0.",
    "",
    ...fitted.flatMap((property) => propertySection(property, sets, samples)),
    ...viscositySection(viscosity),
    ...densitySection(density),
    ...surfaceSection(surface),
    "## Published expansion sets on the same rows",
    "",
    "Not fitted here, so nothing is held out. Rows of which a set lacks more than a tenth are not counted. The measured",
    "means are mostly 20–300 °C, whatever range the set is for, so part of each bias is a difference of range.",
    "",
    accuracyTable(
      Object.entries(sets).flatMap(([id, byDomain]) => DOMAINS.map((d): AccuracyRow => [id, d, byDomain[d]!])),
      2,
    ),
    "",
    ...partsSection(fitted.find(({ spec }) => spec.id === "expansion")!),
    ...attemptsSection(attempts),
  ].join("\n");
}

function propertySection({ spec, rows, heldOut, model }: FittedProperty, sets: SetScores, samples: Samples): string[] {
  const compositions = rows.map(({ x }) => x);
  const domains = DOMAINS.map((d): AccuracyRow => ["model", d, model.heldOut[d]!]);
  const { training, betweenPapers: papers } = model;
  return [
    `## ${spec.title} (${spec.unit})`,
    "",
    `${training.rows} glasses from ${training.publications} publications, ${Object.keys(model.terms).length} terms.`,
    ...(spec.caution ? [spec.caution] : []),
    "",
    accuracyTable([...domains, ...familyRows(compositions, heldOut.errors)], spec.decimals),
    "",
    `![predicted against measured](${spec.id}.svg)`,
    "",
    ...TARGETS.filter((target) => target.property === spec.id).flatMap((target) =>
      targetLines(target, model.heldOut[target.domain]!, sets, samples),
    ),
    "",
    "How often a stated 90 % interval held, by quarter of stated width (scale and shape from the other folds):",
    "",
    intervalTable(model.intervals),
    "",
    `Publications that measured one and the same glass (to 0.1 mol %) differ by ${papers.unequal.rms} root mean square`,
    `(${papers.unequal.pairs} pairs), or by ${papers.all.rms} (${papers.all.pairs} pairs) when those with equal values are`,
    "counted as agreeing and not as reprints.",
    "",
    "Largest misses among glazes, by publication number of the data set (measured, error):",
    "",
    ...worstLines(
      rows.flatMap(({ publication, measured, x }, i) => {
        const error = heldOut.errors[i]!;
        if (!inDomain("glaze", x)) return [];
        return { publication, size: Math.abs(error), measured: String(measured[spec.column]), error };
      }),
    ),
    "",
  ];
}
