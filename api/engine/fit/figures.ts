/** The figures of an answer, each with its interval, unit and range. @module */
import { at, moistureAge, Z90 } from "../body/index.ts";
import { quantileOf, quantity, UNITS } from "../quantity.ts";
import { DRAWS } from "./draws.ts";
import { facesOf, type Simulation, skinOf } from "./simulate.ts";
import type { Prepared } from "./situation.ts";
import type { Middle, Summary } from "./summary.ts";
import type { FitReport } from "./types.ts";

/** What {@link figuresOf} gives. */
export type Figures = Pick<
  FitReport,
  "stress" | "thresholds" | "mismatch" | "setPoint" | "glaze" | "body" | "shivering"
>;

/** Rounds what a simulation amounts to and gives it units. */
export function figuresOf(
  prepared: Prepared,
  summary: Summary,
  simulation: Simulation,
  cases: FitReport["stress"]["cases"],
): Figures {
  const { situation, body, model } = prepared;
  const { expansion, recipeSd, transitionC, youngsGPa } = situation;
  const toSetPoint: [number, number] = [20, Math.round(summary.setPointC.value)];
  const faces = facesOf(situation);
  const skinM = skinOf(situation);
  const share = (-faces * skinM) / situation.wallM;
  const estimate = (e: typeof expansion, extraSd = 0): Middle => {
    const middle = quantileOf(e, 0.5);
    const half = (p: number) => Math.hypot(quantileOf(e, p) - middle, extraSd * Z90);
    return { value: middle, low: middle - half(0.05), high: middle + half(0.95) };
  };
  const spread = (s: { value: number; sd: number; floor?: number }): Middle => ({
    value: at(s, 0),
    low: at(s, -Z90),
    high: at(s, Z90),
  });
  const thickness = skinM * 1000;
  const { lifted } = simulation;
  return {
    stress: { ...of(scaled(summary.stress, 1e-6), UNITS.stress, { decimals: 1 }), cases },
    thresholds: summary.thresholdQuantities,
    mismatch: of(scaled(summary.mismatch, 100), UNITS.strain, { decimals: 4, rangeC: toSetPoint }),
    setPoint: of(summary.setPointC, UNITS.temperature, { decimals: 0 }),
    glaze: {
      model,
      expansion: of(estimate(expansion, recipeSd), UNITS.expansion, { rangeC: [20, 300] }),
      expansionToSetPoint: of(summary.glazeMean, UNITS.expansion, { rangeC: toSetPoint }),
      transition: of(estimate(transitionC), UNITS.temperature, { decimals: 0 }),
      youngs: of(estimate(youngsGPa), UNITS.modulus, { decimals: 1 }),
      thickness: of(spread({ value: thickness, sd: thickness * situation.thicknessSd }), UNITS.length),
    },
    body: {
      class: body.classId,
      expansion: of(spread(body.expansion), UNITS.expansion, { rangeC: body.expansion.rangeC }),
      expansionToSetPoint: of(summary.bodyMean, UNITS.expansion, { rangeC: toSetPoint }),
      youngs: of(spread(body.youngsGPa), UNITS.modulus, { decimals: 1 }),
      moistureExpansion: of(scaled(spread(body.moisturePercent), moistureAge(situation.serviceYears)), UNITS.strain, {
        decimals: 4,
      }),
      stress: of(
        summary.bent ? scaled(summary.bent.underGlaze, 1e-6) : scaled(summary.stress, share / 1e6),
        UNITS.stress,
        {
          decimals: 1,
        },
      ),
      rupture: of(spread(body.ruptureMPa), UNITS.stress, { decimals: 0 }),
      splits: lifted.splits / DRAWS,
      ...(body.bounds ? { bounds: body.bounds(summary.setPointC.value) } : {}),
    },
    shivering: {
      edgeRadiusMm: situation.edgeM * 1000,
      edgePull: of(scaled(summary.stress, (-skinM / situation.edgeM) * 1e-6), UNITS.stress, {
        decimals: 1,
      }),
      edges: lifted.edges / DRAWS,
      flakes: lifted.flakes / DRAWS,
    },
  };
}

/** A quantity of a middle, its ends put in order. */
export function of(m: Middle, unit: string, options?: Parameters<typeof quantity>[4]) {
  return quantity(m.value, Math.min(m.low, m.high), Math.max(m.low, m.high), unit, options);
}

/** A middle in other units, or of the other sign. */
export function scaled(m: Middle, by: number): Middle {
  return { value: m.value * by, low: m.low * by, high: m.high * by };
}
