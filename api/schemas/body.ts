/** A fired clay body as a maker may know it. @module */
import { z } from "zod";
import { RED_STONEWARE } from "./larch-lane.ts";
import { bodyExpansion, plusMinus, rangeC } from "./numbers.ts";

/** A fact of the fired clay, and what is taken where it is not told. */
const asInClass = (fact: string) => `${fact}; as in its class if left out, or any if it has none.`;

const facts = {
  absorptionPercent: z
    .number()
    .min(0)
    .max(40)
    .optional()
    .meta({
      description: asInClass("Water absorption [% of dry weight]"),
      examples: [2.5],
    }),
  moistureExpansionPercent: z
    .number()
    .min(0)
    .max(1)
    .optional()
    .meta({
      description: asInClass("Long-term moisture expansion [% of length]"),
      examples: [0.02],
    }),
  youngsGPa: z
    .number()
    .min(1)
    .max(400)
    .optional()
    .meta({
      description: asInClass("Young's modulus [GPa]"),
      examples: [50],
    }),
  ruptureMPa: z
    .number()
    .min(1)
    .max(500)
    .optional()
    .meta({
      description: asInClass("Modulus of rupture of an unglazed bar [MPa]"),
      examples: [45],
    }),
  quartzPercent: z
    .number()
    .min(0)
    .max(80)
    .optional()
    .meta({
      description: asInClass("Free quartz left in the fired body [% by weight]"),
      examples: [15],
    }),
  cristobalitePercent: z
    .number()
    .min(0)
    .max(60)
    .optional()
    .meta({
      description: asInClass("Cristobalite in the fired body [% by weight]"),
      examples: [1],
    }),
};

const bodyClass = z
  .string()
  .min(1)
  .max(100)
  .meta({ description: "Class of body from GET /v1/bodies.", examples: ["red-stoneware"] });

export const ClassBody = z
  .strictObject({ class: bodyClass, ...facts })
  .meta({ id: "ClassBody", description: "A body known only by its class." });

export const StatedBody = z
  .strictObject({
    expansion: z
      .strictObject({
        value: bodyExpansion.meta({ description: "Mean linear expansion over rangeC [1e-6/K].", examples: [6.2] }),
        rangeC: rangeC(1200, [20, 500]).optional(),
        plusMinus: plusMinus.optional(),
      })
      .meta({
        description: "Mean expansion as a data sheet states it; 20–500 °C where no range is given, with a warning.",
      }),
    class: bodyClass.optional().meta({
      description: "Class of body; gives the shape of the curve between and beyond the stated range.",
      examples: ["red-stoneware"],
    }),
    ...facts,
  })
  .meta({ id: "StatedBody", description: "A body with a stated mean expansion.", examples: [RED_STONEWARE] });

export const CurveBody = z
  .strictObject({
    curve: z
      .array(
        z
          .strictObject({
            c: z
              .number()
              .min(-50)
              .max(1700)
              .meta({ description: "Temperature [°C].", examples: [500] }),
            strainPercent: z
              .number()
              .min(-3)
              .max(3)
              .meta({ description: "Length change from the first point [% of length].", examples: [0.3] }),
          })
          .meta({ id: "CurvePoint", description: "One point of a dilatometer curve." }),
      )
      .min(2)
      .max(2000)
      .meta({
        description: "Dilatometer points, cold to hot, 2 to 2000 of them.",
        examples: [
          [
            { c: 20, strainPercent: 0 },
            { c: 300, strainPercent: 0.16 },
            { c: 700, strainPercent: 0.45 },
          ],
        ],
      }),
    plusMinusPercent: z
      .number()
      .min(0)
      .max(5)
      .optional()
      .meta({
        description: "Half-width of a 90 % interval at the hot end [% of length]; 3 % of the reading if left out.",
        examples: [0.01],
      }),
    ...facts,
  })
  .meta({ id: "CurveBody", description: "A body with a dilatometer curve." });

export const PhasesBody = z
  .strictObject({
    phases: z
      .record(z.string().min(1).max(60), z.number().min(0).max(100))
      .meta({ description: "Phase → share by volume [%].", examples: [{ quartz: 20, mullite: 20, glass: 60 }] }),
    ...facts,
  })
  .meta({ id: "PhasesBody", description: "A body known by what it is made of once fired." });

export const Body = z
  .union([ClassBody, StatedBody, CurveBody, PhasesBody])
  .meta({ id: "Body", description: "A fired clay body: by class, stated expansion, dilatometer curve or phases." });
