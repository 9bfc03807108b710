/** The firing again, with or without another coat. @module */
import { quantity, UNITS } from "../quantity.ts";
import type { RunDraws } from "./draws.ts";
import { layersReport } from "./layers.ts";
import { meltOf, type ReadyMelt } from "./melt.ts";
import { outcomeOf } from "./outcome.ts";
import { SOLIDS_AGAIN } from "./practice.ts";
import type { ReadRunning } from "./read-request.ts";
import { togetherMm } from "./read-request.ts";
import { type RunSample, simulateRun, type WallM } from "./simulate.ts";
import type { RunningReport } from "./types.ts";
import { coatMm, mm } from "./words.ts";

const PRACTICE = "common-practice";

/**
 * Run by the end of a second firing, the first included.
 *
 * The melt is there from the start and has fewer grains in it, and the film goes on from where it stood: melt work adds.
 * A new coat covers the old one down to its edge, and the two flow as one film of both thicknesses.
 * @param read - the question
 * @param first - runs of the first firing
 */
export function refiringOf(
  { coats, refiring }: ReadRunning,
  first: RunSample,
  wall: WallM,
  draws: RunDraws,
): RunningReport["refiring"] & { melt: ReadyMelt } {
  const all = [...coats, ...refiring.coats];
  const melt = meltOf(all, refiring.firing, SOLIDS_AGAIN, draws);
  const outcome = outcomeOf(simulateRun(melt, wall, draws, { before: first, reaching: true }), wall);
  const { thicknessMm, plusMinusMm } = togetherMm(all);
  const what =
    refiring.coats.length > 0
      ? `With ${coatMm(thicknessMm)} in all after the new ${refiring.coats.length > 1 ? "coats" : "coat"}`
      : "Fired again as it is";
  return {
    ...outcome,
    text: `${what}, the edge stands ${mm(outcome.run.value)} below where the glaze was put on. ${outcome.text.slice(outcome.text.indexOf(". ") + 2)}`,
    layers: layersReport(all, melt, refiring.firing, wall, draws),
    thickness: quantity(thicknessMm, Math.max(thicknessMm - plusMinusMm, 0), thicknessMm + plusMinusMm, UNITS.length),
    advice: adviceFor(refiring.coats.length > 0).map((text) => ({ text, source: PRACTICE })),
    melt,
  };
}

function adviceFor(reglazed: boolean): string[] {
  const always = [
    "Heat slowly to 600 °C: the old glaze holds water and air shut in, and a cold glaze cracks on a fast rise.",
  ];
  if (!reglazed) return always;
  return [
    "A fired glaze drinks no water, so a new coat dries slowly: warm the piece to about 80 °C and build the coat up thin, dry between.",
    "A thick new coat over a thick old one runs with the square of both together: keep it off the lower third.",
    ...always,
  ];
}
