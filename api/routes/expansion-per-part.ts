/** What one more part of each material would do, as the service shows it. @module */
import type { z } from "zod";
import type { GlazeChemistry } from "../engine/chemistry/index.ts";
import { expansionPerPart } from "../engine/glass/index.ts";
import { round, UNITS } from "../engine/quantity.ts";
import type { Shown } from "../http/operation.ts";
import type { PartEffects } from "../schemas/expansion-near.ts";

/** @param chemistry - analysed glaze */
export function showPerPart(chemistry: GlazeChemistry): Shown<z.output<typeof PartEffects>> {
  return {
    unit: `${UNITS.expansion} per part`,
    rangeC: [20, 300],
    lines: expansionPerPart(chemistry).map(({ label, material, perPart }) => {
      const effect = round(perPart, 4);
      return { label, material, perPart: effect, text: inWords(label, effect) };
    }),
  };
}

function inWords(label: string, effect: number): string {
  if (effect === 0) return `One more part of ${label} leaves the expansion as it is.`;
  const way = effect > 0 ? "raises" : "lowers";
  return `One more part of ${label} ${way} the expansion by about ${Number(Math.abs(effect).toPrecision(2))}e-6/K.`;
}
