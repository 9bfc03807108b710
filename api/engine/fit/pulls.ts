/** What each oxide, and one more part of each material, does to the stress. @module */
import { expansionPerPart } from "../glass/index.ts";
import { quantileOf, round } from "../quantity.ts";
import { POISSON } from "./constants.ts";
import type { Prepared } from "./situation.ts";
import { stackStress } from "./stress.ts";
import type { Summary } from "./summary.ts";
import type { OxidePull, PartPull } from "./types.ts";

/**
 * Stress per 1e-6/K of the glaze's mean expansion, at the centre.
 *
 *     dσ/dα = E₁ (Ts − 20)(1 + s((Ts + 20)/2 − 160)), shared with the wall
 *
 * @returns slope [MPa per 1e-6/K], tension positive
 */
export function stressPerExpansion({ situation }: Prepared, summary: Summary): number {
  const c = summary.setPointC.value;
  const { perKelvin, anchorC } = situation.rise;
  const { body, thicknessM, wallM, glazed } = situation;
  const coat = { pa: quantileOf(situation.youngsGPa, 0.5) * 1e9, poisson: POISSON, thicknessM, mismatch: 1e-6 };
  const wall = { pa: body.youngsGPa.value * 1e9, poisson: body.poisson, thicknessM: wallM };
  const [squeeze = 0] = stackStress([coat], wall, glazed);
  return (-squeeze / 1e6) * (c - 20) * (1 + perKelvin * ((c + 20) / 2 - anchorC));
}

/** Stress that each oxide adds where silica would stand in its place. */
export function pullsOf(prepared: Prepared, perUnit: number): OxidePull[] {
  const { contributions, chemistry } = prepared;
  if (!contributions || !chemistry) return [];
  return contributions.oxides
    .filter(({ oxide }) => (chemistry.fired.weightPercent[oxide] ?? 0) > 0)
    .map(({ oxide, contribution, perWeightPercent }) => ({
      oxide,
      molePercent: round(chemistry.fired.molePercent[oxide] ?? 0, 2),
      weightPercent: round(chemistry.fired.weightPercent[oxide] ?? 0, 2),
      pullMPa: round(contribution * perUnit, 1),
      perWeightPercentMPa: round(perWeightPercent * perUnit, 2),
    }))
    .sort((a, b) => b.pullMPa - a.pullMPa || (a.oxide < b.oxide ? -1 : 1));
}

/** What one more part of each material would do; nothing for a glaze without a recipe. */
export function partsOf({ chemistry }: Prepared, perUnit: number): PartPull[] {
  if (!chemistry) return [];
  return expansionPerPart(chemistry).map(({ label, material, perPart }) => ({
    label,
    material,
    perPartMPa: round(perPart * perUnit, 2),
  }));
}
