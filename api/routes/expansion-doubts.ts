/** What the doubt about an expansion is made of, as the service shows it. @module */
import type { z } from "zod";
import type { GlazeChemistry } from "../engine/chemistry/index.ts";
import { type Doubts, glazeDoubts } from "../engine/fit/index.ts";
import type { Shown } from "../http/operation.ts";
import type { ExpansionDoubtReport } from "../schemas/expansion-doubts.ts";

/**
 * @param chemistry - analysed glaze
 * @param thicknessMm - thickness of the fired glaze [mm]
 * @param doubts - doubts to leave out are false
 * @param bulk - expansion of the glass in bulk, to set beside [1e-6/K]
 */
export function showDoubts(
  chemistry: GlazeChemistry,
  thicknessMm: number,
  doubts: Doubts,
  bulk: number,
): Shown<z.output<typeof ExpansionDoubtReport>> {
  const { terms, together } = glazeDoubts(chemistry, thicknessMm, doubts);
  const { value, low, high } = together;
  const place = doubts.onWare === false ? "Left out that it takes up clay on the pot," : "On the pot";
  return {
    counted: {
      betweenPapers: doubts.betweenPapers !== false,
      onWare: doubts.onWare !== false,
      crystals: doubts.crystals !== false,
      materials: doubts.materials !== false,
    },
    thicknessMm,
    terms,
    together,
    text: `${place} I expect ${value}e-6/K, likely ${low} to ${high}, against ${bulk} for the glass in bulk (20–300 °C).`,
  };
}
