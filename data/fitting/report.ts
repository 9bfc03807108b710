/** Writes the report on the fitted models. @module */
import type { ViscosityFile } from "../../api/engine/glass/model-file.ts";
import { accuracyOf } from "./accuracy.ts";
import type { AttemptScore } from "./attempts.ts";
import { DOMAINS, inDomain } from "./domains.ts";
import { FAMILIES } from "./families.ts";
import type { FittedProperty } from "./fit-property.ts";
import independent from "./independent-check.json" with { type: "json" };
import { type AccuracyRow, accuracyTable, attemptTable, intervalTable } from "./report-tables.ts";
import type { SetScores } from "./score-sets.ts";
import { targetLines } from "./target-lines.ts";
import { TARGETS } from "./targets.ts";

/** The whole report as Markdown. */
export function reportOf(
  fitted: readonly FittedProperty[],
  viscosity: ViscosityFile,
  sets: SetScores,
  attempts: readonly AttemptScore[],
): string {
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
    ...fitted.flatMap((property) => propertySection(property, sets)),
    ...viscositySection(viscosity),
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
    "## Ways of fitting the expansion that were tried",
    "",
    attemptTable(attempts),
    "",
    "Tried apart, by hand and not repeated here: 600 bell-shaped corrections at cluster centres, fitted together with the",
    "products of oxides, gave 0.171 / 0.796 / 0.551 on glazes and 0.175 / 0.752 / 0.500 on stoneware-like ones: discarded,",
    "within the noise for five times the coefficients. Terms for mixed alkali by ratio, products of three oxides, and old",
    "publications counted less made nothing better.",
    "",
    ...independentSection(),
  ].join("\n");
}

function propertySection({ spec, rows, heldOut, model }: FittedProperty, sets: SetScores): string[] {
  const domains = DOMAINS.map((d): AccuracyRow => ["model", d, model.heldOut[d]!]);
  const families = FAMILIES.map((family): AccuracyRow => {
    const errors = [...heldOut.errors].filter((_, i) => inDomain("glaze", rows[i]!.x) && family.holds(rows[i]!.x));
    return [family.name, "glaze", accuracyOf(errors)];
  }).filter(([, , figures]) => figures.n >= 30);
  const { training, betweenPapers: papers } = model;
  return [
    `## ${spec.title} (${spec.unit})`,
    "",
    `${training.rows} glasses from ${training.publications} publications, ${Object.keys(model.terms).length} terms.`,
    "",
    accuracyTable([...domains, ...families], spec.decimals),
    "",
    `![predicted against measured](${spec.id}.svg)`,
    "",
    ...TARGETS.filter((target) => target.property === spec.id).flatMap((target) =>
      targetLines(target, model.heldOut[target.domain]!, sets),
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
    ...worst(
      rows.map((row) => row.publication),
      rows.map((row) => row.measured[spec.column]!),
      heldOut.errors,
      (i) => inDomain("glaze", rows[i]!.x),
    ).map((line) => `- ${line}`),
    "",
  ];
}

function viscositySection({ training, heldOut, intervals, form, noise }: ViscosityFile): string[] {
  const byName = Object.entries(heldOut).sort(([a], [b]) => a.localeCompare(b, "en", { numeric: true }));
  const rows = (start: string) => byName.filter(([column]) => column.startsWith(start));
  return [
    "## Viscosity",
    "",
    `${training.points} points of ${training.rows} glasses from ${training.publications} publications; ${form}.`,
    "",
    "Temperature at a viscosity (K; `t_log4` is 10^4 Pa·s):",
    "",
    accuracyTable(
      rows("t_log").map(([column, figures]): AccuracyRow => [column, "glaze", figures]),
      0,
    ),
    "",
    "log10 of the viscosity at a temperature (`log_visc_1200` is 1200 °C):",
    "",
    accuracyTable(
      rows("log_visc").map(([column, figures]): AccuracyRow => [column, "glaze", figures]),
      2,
    ),
    "",
    `How often a stated 90 % interval held; widths in units of the scatter of a point, the root of the squares of`,
    `${noise.logSd} in log10 and ${noise.temperatureSdK} K times the slope:`,
    "",
    intervalTable(intervals),
    "",
  ];
}

/** The same expansion model by other people's regression: independent-check.py. */
function independentSection(): string[] {
  const { made, figures } = independent;
  return [
    "## The same by an independent implementation",
    "",
    `\`data/fitting/independent-check.py\`, run by hand (${made}): Huber regression on the products of all common oxides,`,
    "same folds, nothing shared but data and definitions. To compare with *products of all common oxides* above.",
    "",
    accuracyTable(
      DOMAINS.map((d): AccuracyRow => ["independent", d, figures[d]]),
      2,
    ),
    "",
  ];
}

/** Publications with the largest single misses, one line each. */
function worst(
  publications: readonly number[],
  measured: readonly number[],
  errors: Float64Array,
  counts: (i: number) => boolean,
): string[] {
  const order = publications
    .map((_, i) => i)
    .filter(counts)
    .sort((a, b) => Math.abs(errors[b]!) - Math.abs(errors[a]!));
  const byPublication = new Map<number, number>();
  for (const i of order) if (!byPublication.has(publications[i]!)) byPublication.set(publications[i]!, i);
  return [...byPublication].slice(0, 12).map(([publication, i]) => {
    const error = errors[i]!;
    return `publication ${publication}: measured ${measured[i]}, error ${error > 0 ? "+" : "−"}${Math.abs(error).toPrecision(3)}`;
  });
}
