/** Shapes that every answer is built from: quantities, notices, the engine's stamp. @module */
import { z } from "zod";
import { count, list, share, signed, spanC, words } from "./figures.ts";

/** A number that is never bare. */
export const Quantity = z
  .strictObject({
    value: signed("Best figure, in `unit`.", 6.42),
    low: signed("Lower end of the interval, in `unit`.", 5.8),
    high: signed("Upper end of the interval, in `unit`.", 7.04),
    coverage: share("Share of cases in which the truth should lie between low and high [-].", 0.9),
    unit: words("Unit as printed beside the number.", "1e-6/K"),
    rangeC: spanC("Temperature range of a mean value [°C].", [20, 300]).optional(),
  })
  .meta({ id: "Quantity", description: "A value with the interval that should hold the truth, its unit and range." });

/**
 * A quantity with what it is.
 * @param description - ends in its unit in brackets, or says that it is in `unit` where that was asked for
 */
export const quantity = (description: string) => Quantity.meta({ description });
/** The same, where there may be none; the description says when. */
export const quantityOrNull = (description: string) => z.union([Quantity, z.null()]).meta({ description });

/** A warning or a caution. */
export const Notice = z
  .strictObject({
    code: words("Stable kebab-case identifier.", "outside-training-range"),
    message: words("One or two plain sentences.", "The sheet gives no range for 6.2. I have taken it as 20 to 500 °C."),
    pointer: words("JSON Pointer to the input that caused it.", "/body/expansion").optional(),
  })
  .meta({
    id: "Notice",
    description: "A remark beside an answer: a warning, or a caution where someone could be hurt.",
  });

/** Which engine answered, so that the answer can be had again. */
export const EngineStamp = z
  .strictObject({
    version: words("Version of the engine.", "0.1.0"),
    dataVersion: words("Date of the data the answer rests on.", "2026-11-25"),
    seed: count("Seed of the quasi-random draws [-].", 1, { max: 4294967295 }),
  })
  .meta({ id: "EngineStamp", description: "Which engine, data and seed gave the answer." });

/** What every computed answer carries beside its figures. */
export const answerFields = {
  engine: EngineStamp,
  warnings: z.array(Notice).meta({ description: "Unusual input and assumptions made; empty if none." }),
  cautions: z.array(Notice).meta({ description: "What could hurt someone, with the usual defence; empty if none." }),
  sources: list("Keys into GET /v1/sources for what the answer rests on.", "ciaaw-2021"),
};
