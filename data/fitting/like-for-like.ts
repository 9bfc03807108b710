/** The expansion model beside the best published set: on random samples of publications, and on parts of the rows. @module */
import { PUBLISHED_SETS } from "../../api/engine/glass/expansion/index.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { accuracyOf } from "./accuracy.ts";
import { DOMAINS, inDomain } from "./domains.ts";
import type { FittedProperty } from "./fit-property.ts";
import type { GlassRow } from "./read-glasses.ts";
import { type AccuracyRow, accuracyTable } from "./report-tables.ts";
import { type Samples, sampleFigures } from "./samples.ts";
import { setError } from "./score-sets.ts";
import { TARGETS } from "./targets.ts";

/** One glass with the errors of both. */
interface Pair {
  row: GlassRow;
  publication: number;
  set: number;
  model: number;
}

/** Every row of the fit that the set answers for. */
function pairs({ rows, heldOut }: FittedProperty, id: string): Pair[] {
  const published = PUBLISHED_SETS.find((candidate) => candidate.id === id)!;
  return rows.flatMap((row, i) => {
    const set = setError(published, row);
    return set === null ? [] : { row, publication: row.publication, set, model: heldOut.errors[i]! };
  });
}

/** Samples of publications for every demand that a published set stands beside. */
export function samplesOf(expansion: FittedProperty): Samples {
  return Object.fromEntries(
    TARGETS.flatMap(({ domain, beside, atMost }) =>
      beside
        ? [
            [
              domain,
              sampleFigures(
                pairs(expansion, beside.set).filter(({ row }) => inDomain(domain, row.x)),
                beside.read,
                atMost,
              ),
            ],
          ]
        : [],
    ),
  );
}

const COLOURS = ["Fe2O3", "FeO", "MnO", "SnO2", "CoO", "CuO", "NiO", "Cr2O3", "Bi2O3"].map((oxide) =>
  (MODEL_OXIDES as readonly string[]).indexOf(oxide),
);

/** Parts of the rows that one might ask about. */
function partsOf(rows: readonly GlassRow[]): [name: string, holds: (row: GlassRow) => boolean][] {
  const size = new Map<number, number>();
  for (const { publication } of rows) size.set(publication, (size.get(publication) ?? 0) + 1);
  return [
    ["all", () => true],
    ["published since 1990", ({ year }) => year >= 1990],
    ["published before 1990", ({ year }) => year < 1990],
    ["publications of 5 glasses or more", ({ publication }) => size.get(publication)! >= 5],
    ["publications of 10 glasses or more", ({ publication }) => size.get(publication)! >= 10],
    ["below 0.5 mol % colouring oxides", ({ x }) => COLOURS.reduce((sum, i) => sum + x[i]!, 0) < 0.005],
    ["measured 3 to 10e-6/K", ({ measured }) => measured.cte! >= 3 && measured.cte! <= 10],
  ];
}

/** Section of the report: what the figures would be on parts of the rows. Nothing is left out of the figures elsewhere. */
export function partsSection(expansion: FittedProperty): string[] {
  const all = pairs(expansion, "appen-1949");
  const lines = partsOf(expansion.rows).flatMap(([name, holds]) =>
    DOMAINS.flatMap((domain): AccuracyRow[] => {
      const own = all.filter(({ row }) => holds(row) && inDomain(domain, row.x));
      return [
        [`model, ${name}`, domain, accuracyOf(own.map(({ model }) => model))],
        [`Appen 1949, ${name}`, domain, accuracyOf(own.map(({ set }) => set))],
      ];
    }),
  );
  const { all: every, unequal } = expansion.model.betweenPapers;
  const single = (rms: number) => rms / Math.SQRT2;
  const part = (rms: number) => Math.round(100 * (single(rms) / expansion.model.heldOut.glaze!.rmse) ** 2);
  return [
    "## Where the mean square of the expansion comes from",
    "",
    "The data mark no row as devitrified, doubtful or read off a curve, and name no temperature range; the shares of all",
    "rows total 100 within 0.03. So there is no rule for leaving rows out that does not look at the miss itself, and none",
    "is left out. For the record, the same predictions on parts of the rows:",
    "",
    accuracyTable(lines, 2),
    "",
    `Two publications that measured one glass differ by ${every.rms} to ${unequal.rms} root mean square, so a single measurement is`,
    `off by ${single(every.rms).toFixed(2)} to ${single(unequal.rms).toFixed(2)}: ${part(every.rms)} to ${part(unequal.rms)} % of the model's mean square among glazes is in the measurements.`,
    "",
  ];
}
