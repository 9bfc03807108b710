/** The chemistry of a glaze as the service shows it. @module */
import type { z } from "zod";
import type { GlazeChemistry } from "../engine/chemistry/index.ts";
import { round } from "../engine/quantity.ts";
import type { Shown } from "../http/operation.ts";
import type { Chemistry } from "../schemas/chemistry.ts";
import { pointInto } from "./point-into.ts";
import { roundEach } from "./rounding.ts";
import { STAMP } from "./stamp.ts";

/** Half-width of a 90 % interval in standard deviations of a normal distribution [-]. */
const HALF_WIDTH_90 = 1.645;

/**
 * @param chemistry - unrounded, from the engine
 * @returns weight and mole per cent to 0.01, moles to 0.0001, Seger figures to 0.001
 */
export function showChemistry(chemistry: GlazeChemistry): Shown<z.output<typeof Chemistry>> {
  const { fired, asWeighed, moles, seger, weightPercentSd, lines, massBalance } = chemistry;
  const spread = Object.entries(weightPercentSd).map(([oxide, sd]) => [oxide, sd * HALF_WIDTH_90]);
  return {
    fired: {
      weightPercent: roundEach(fired.weightPercent, 2),
      weightPercentPlusMinus: roundEach(Object.fromEntries(spread), 2),
      molePercent: roundEach(fired.molePercent, 2),
    },
    asWeighed: {
      weightPercent: roundEach(asWeighed.weightPercent, 2),
      lossOnIgnitionPercent: round(asWeighed.lossOnIgnitionPercent, 2),
    },
    molesPer100g: roundEach(moles, 4),
    seger: seger && {
      moles: roundEach(seger.moles, 3),
      fluxSum: round(seger.fluxSum, 3),
      silicaToAlumina: seger.silicaToAlumina === null ? null : round(seger.silicaToAlumina, 2),
      alkaliShare: seger.alkaliShare === null ? null : round(seger.alkaliShare, 3),
    },
    lines: lines.map(({ label, material, parts, share, addition, lossOnIgnitionPercent, weightPercent }) => ({
      label,
      material,
      parts,
      sharePercent: round(share * 100, 2),
      addition,
      lossOnIgnitionPercent: round(lossOnIgnitionPercent, 2),
      weightPercent: roundEach(weightPercent, 2),
    })),
    massBalance: {
      weighedG: round(massBalance.weighedG, 3),
      glassG: round(massBalance.glassG, 3),
      lostG: round(massBalance.lostG, 3),
      error: round(massBalance.error, 9),
    },
    engine: STAMP,
    warnings: chemistry.warnings.map((notice) => pointInto("/glaze", notice)),
    cautions: chemistry.cautions.map((notice) => pointInto("/glaze", notice)),
    sources: chemistry.sources,
  };
}
