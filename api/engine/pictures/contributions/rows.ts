/** Which oxides get a row, and what the rows amount to. @module */
import type { FitReport, OxidePull } from "../../fit/types.ts";

export const YARDSTICK = "SiO2";
/** Most bars in one picture [-]. */
const MOST = 9;

/** Rows of the picture: bars from the hardest pull to the hardest push; the yardstick; and the rest in one line. */
export interface Rows {
  bars: OxidePull[];
  yardstick: OxidePull | undefined;
  rest: OxidePull[];
}

export function rowsOf({ pulls }: FitReport): Rows {
  const others = pulls.filter(({ oxide }) => oxide !== YARDSTICK);
  const weighty = [...others]
    .filter(({ pullMPa, weightPercent }) => Math.abs(pullMPa) >= 1 || weightPercent >= 2)
    .sort((a, b) => Math.abs(b.pullMPa) - Math.abs(a.pullMPa))
    .slice(0, MOST);
  const chosen = new Set(weighty);
  return {
    bars: others.filter((pull) => chosen.has(pull)).sort((a, b) => b.pullMPa - a.pullMPa),
    yardstick: pulls.find(({ oxide }) => oxide === YARDSTICK),
    rest: others.filter((pull) => !chosen.has(pull)),
  };
}

/**
 * The swap for silica that eases the stress most: one weight per cent of an oxide out, one of silica in.
 * @returns oxide and drop of the stress [MPa], or undefined where no swap eases it by 1 MPa
 * @remarks Exact: each derivative scales the rest down alike, so that the scaling cancels in the difference.
 */
export function bestSwap({ pulls }: FitReport): { oxide: string; dropMPa: number } | undefined {
  const silica = pulls.find(({ oxide }) => oxide === YARDSTICK);
  if (!silica) return undefined;
  let best: { oxide: string; dropMPa: number } | undefined;
  for (const { oxide, weightPercent, perWeightPercentMPa } of pulls) {
    const dropMPa = perWeightPercentMPa - silica.perWeightPercentMPa;
    if (weightPercent >= 1 && dropMPa >= 1 && dropMPa > (best?.dropMPa ?? 0)) best = { oxide, dropMPa };
  }
  return best;
}
