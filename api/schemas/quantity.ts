/** Shapes that every answer is built from: quantities, notices, the engine's stamp. @module */
import { z } from "zod";

/** A number that is never bare. */
export const Quantity = z
  .strictObject({
    value: z.number().meta({ description: "Best figure, in `unit`.", examples: [6.42] }),
    low: z.number().meta({ description: "Lower end of the interval, in `unit`.", examples: [5.8] }),
    high: z.number().meta({ description: "Upper end of the interval, in `unit`.", examples: [7.04] }),
    coverage: z
      .number()
      .min(0)
      .max(1)
      .meta({ description: "Share of cases in which the truth should lie between low and high [-].", examples: [0.9] }),
    unit: z.string().meta({ description: "Unit as printed beside the number.", examples: ["1e-6/K"] }),
    rangeC: z
      .tuple([z.number(), z.number()])
      .optional()
      .meta({ description: "Temperature range of a mean value [°C].", examples: [[20, 300]] }),
  })
  .meta({ id: "Quantity", description: "A value with the interval that should hold the truth, its unit and range." });

/** A warning or a caution. */
export const Notice = z
  .strictObject({
    code: z.string().meta({ description: "Stable kebab-case identifier.", examples: ["outside-training-range"] }),
    message: z.string().meta({
      description: "One or two plain sentences.",
      examples: ["The sheet gives no range for 6.2. I have taken it as 20 to 500 °C."],
    }),
    pointer: z
      .string()
      .optional()
      .meta({ description: "JSON Pointer to the input that caused it.", examples: ["/body/expansion"] }),
  })
  .meta({
    id: "Notice",
    description: "A remark beside an answer: a warning, or a caution where someone could be hurt.",
  });

/** Which engine answered, so that the answer can be had again. */
export const EngineStamp = z
  .strictObject({
    version: z.string().meta({ description: "Version of the engine.", examples: ["0.1.0"] }),
    dataVersion: z.string().meta({ description: "Date of the data the answer rests on.", examples: ["2026-11-25"] }),
    seed: z
      .number()
      .int()
      .meta({ description: "Seed of the quasi-random draws [-].", examples: [1] }),
  })
  .meta({ id: "EngineStamp", description: "Which engine, data and seed gave the answer." });

/** What every computed answer carries beside its figures. */
export const answerFields = {
  engine: EngineStamp,
  warnings: z.array(Notice).meta({ description: "Unusual input and assumptions made; empty if none." }),
  cautions: z.array(Notice).meta({ description: "What could hurt someone, with the usual defence; empty if none." }),
  sources: z
    .array(z.string())
    .meta({ description: "Keys into GET /v1/sources for what the answer rests on.", examples: [["ciaaw-2021"]] }),
};
