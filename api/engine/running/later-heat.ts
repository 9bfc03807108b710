/** Decal, lustre and enamel firings of a piece that is glazed and fired. @module */

import { SET_POINT } from "../fit/constants.ts";
import { middle90 } from "../numeric/quantiles.ts";
import { quantity } from "../quantity.ts";
import type { ReadCoat } from "./coats.ts";
import { DRAWS, type RunDraws } from "./draws.ts";
import { meltOf } from "./melt.ts";
import { workAt } from "./melt-work.ts";
import { inMm } from "./outcome.ts";
import { SOLIDS_AGAIN } from "./practice.ts";
import { simulateRun, type WallM } from "./simulate.ts";
import type { Timeline } from "./timeline.ts";
import type { LaterHeat, LaterHeatReport } from "./types.ts";
import { mm } from "./words.ts";

/** Below and above these the stress stays, or is set anew [-] (a choice, no source). */
const KEPT = 0.1;
const ANEW = 0.95;
const PRACTICE = "common-practice";

/**
 * What one later firing does.
 *
 *     relaxed = 1 − exp(−G ∫ dt/η)
 *
 * @param asked - kind and peak
 * @param timeline - the same, read
 * @returns share of the stress that flows away, the run, and advice
 * @remarks The work is that of the melt at the same viscosity as in the glaze firing; G is that of the set point.
 */
export function laterHeatOf(
  asked: LaterHeat,
  timeline: Timeline,
  coats: readonly ReadCoat[],
  wall: WallM,
  draws: RunDraws,
): LaterHeatReport {
  const melt = meltOf(coats, timeline, SOLIDS_AGAIN, draws);
  const shares = Float64Array.from({ length: DRAWS }, (_, i) => {
    const kiln = melt.mixed.perKelvin * (melt.plusMinusK / 1.645) * draws.normal.kiln[i]!;
    return -Math.expm1(-SET_POINT.shearModulusGPa * 1e9 * 10 ** (workAt(melt.mixed, draws.viscosity[i]!) + kiln));
  });
  const { value, low, high } = middle90(shares);
  const relaxed = quantity(value, low, high, "-", { decimals: 3 });
  const run = inMm(simulateRun(melt, wall, draws).advance);
  const stress = value < KEPT ? "kept" : value < ANEW ? "partly-relaxed" : "set-anew";
  return {
    kind: asked.kind,
    peakC: asked.peakC,
    stress,
    relaxed,
    run,
    text: words(asked, stress, run.value),
    advice: adviceFor(asked),
  };
}

function words({ kind, peakC }: LaterHeat, stress: LaterHeatReport["stress"], runMm: number): string {
  const what = {
    decal: "The decal firing",
    lustre: "The lustre firing",
    enamel: "The enamel firing",
    other: "The later firing",
  }[kind];
  const told = {
    kept: `${what} at ${peakC} °C is too cool for the glaze to flow: the stress of the glaze firing stays. On the way up and down it passes the clay's steps again, and a glaze that is near crazing may craze.`,
    "partly-relaxed": `At ${peakC} °C a part of the glaze's stress flows away and the rest stays; what the glaze holds afterwards lies between the two firings. If it was stretched it may still craze.`,
    "set-anew": `At ${peakC} °C the glaze softens enough to lose its old stress: it is set anew as this firing cools, so judge the fit with this cooling. A pair that crazes after the glaze firing will craze after this one too, sooner if it cools faster.`,
  }[stress];
  const moisture =
    peakC >= 500
      ? " Heat like this drives out the moisture by which an old body has grown; the growth starts again from nothing."
      : "";
  return `${told}${moisture}${runMm >= 0.05 ? ` It runs another ${mm(runMm)}.` : ""}`;
}

function adviceFor({ peakC }: LaterHeat): LaterHeatReport["advice"] {
  const advice = [
    "Dry the piece through first, at 100 to 120 °C for some hours: a crazed or porous one holds water that bursts the glaze.",
    "Heat no faster than 100 °C an hour to 300 °C with the lid ajar, so that the medium burns away; air the room.",
  ];
  if (peakC > 573) {
    advice.push(
      "Quartz in the clay turns at 573 °C, cristobalite from 220 to 270 °C, both ways: pass both at no more than 100 °C an hour, 60 for thick or wide ware, or it dunts.",
    );
  } else
    advice.push(
      "Cristobalite in the clay turns from 220 to 270 °C, both ways: pass it at no more than 100 °C an hour.",
    );
  return advice.map((text) => ({ text, source: PRACTICE }));
}
