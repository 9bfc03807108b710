/** The main job: will this glaze fit this clay? @module */
import { at, moistureAge, Z90 } from "../body/index.ts";
import { expansionPerPart } from "../glass/index.ts";
import { middle90 } from "../numeric/quantiles.ts";
import { quantileOf, quantity, round, UNITS } from "../quantity.ts";
import { DATA_VERSION, DEFAULT_SEED, ENGINE_VERSION } from "../version.ts";
import { cautionsFor } from "./cautions.ts";
import { FIT_SOURCES, POISSON } from "./constants.ts";
import { drawCurves } from "./curves.ts";
import { DRAWS, drawsFor } from "./draws.ts";
import { driversOf, nextSteps } from "./next.ts";
import { stressProfile } from "./profile.ts";
import { headline, reasonsFor } from "./reasons.ts";
import { facesOf, type Simulation, simulate, skinOf } from "./simulate.ts";
import { type Prepared, prepare } from "./situation.ts";
import { type Middle, type Summary, summarise } from "./summary.ts";
import { TRIAL_SOURCES, tryOut } from "./trials.ts";
import type { FitReport, FitRequest, OxidePull, PartPull, Reason } from "./types.ts";
import { judge, twentyCases } from "./verdict.ts";

/**
 * Judges one glaze on one body, fired and made so.
 *
 *     δ = [ε_b(Ts) − ε_b(20)] − [ε_g(Ts) − ε_g(20)],   σ = −E_g δ/(1 − ν_g) shared with the wall
 *
 * @param request - glaze, body, firing, ware, seed
 * @returns verdict, probabilities, stress [MPa, tension positive] with its twenty cases, thresholds, reasons, warnings, cautions
 * @throws EngineError with every issue, pointers from the root of the request
 * @remarks Pure and deterministic: the same request and seed give the same answer to the last digit.
 * @example checkFit({ glaze: { expansion: { value: 8.1 } }, body: { expansion: { value: 5.4 } } }).verdict // "crazes"
 */
export function checkFit(request: FitRequest): FitReport {
  const seed = request.seed ?? DEFAULT_SEED;
  const prepared = prepare(request);
  const { situation, body } = prepared;
  const draws = drawsFor(seed);
  const simulation = simulate(situation, draws);
  const summary = summarise(situation, simulation);
  const cases = twentyCases(simulation, summary.order, summary.thresholds);
  const judgement = judge(cases);
  const perUnit = stressPerExpansion(prepared, summary);
  const pulls = pullsOf(prepared, perUnit);
  const figures = figuresOf(prepared, summary, simulation, cases);
  const trials = tryOut(situation, simulation, draws);
  const { counts } = simulation;
  const reasons = reasonsFor(prepared, summary, judgement, pulls, figures, trials);
  const next = nextSteps(prepared, simulation, summary, judgement);
  const glazePa = quantileOf(situation.youngsGPa, 0.5) * 1e9;
  const coats = coatsOf(prepared, simulation);

  return {
    verdict: judgement.verdict,
    headline: headline(prepared, judgement),
    probabilities: {
      crazesOnCooling: counts.crazesOnCooling / DRAWS,
      crazesLater: counts.crazesLater / DRAWS,
      sound: counts.sound / DRAWS,
      shivers: counts.shivers / DRAWS,
    },
    ...figures,
    trials,
    ...(coats ? { coats, ...mixedOf(request, prepared) } : {}),
    pulls,
    ...(request.include?.includes("parts") ? { parts: partsOf(prepared, perUnit) } : {}),
    drivers: driversOf(simulation),
    reasons,
    next,
    ...(request.include?.includes("curves") ? { curves: drawCurves(situation, summary.setPointC.value) } : {}),
    ...(request.include?.includes("profile")
      ? {
          profile: stressProfile(situation, {
            stress: summary.stress.value,
            mismatch: summary.mismatch.value,
            glazePa,
            coats: coats?.map(({ thicknessMm, stress }) => ({ thicknessMm, stress: stress.value * 1e6 })),
          }),
        }
      : {}),
    engine: { version: ENGINE_VERSION, dataVersion: DATA_VERSION, seed },
    warnings: prepared.warnings,
    cautions: [...prepared.cautions, ...cautionsFor(prepared, summary, judgement)],
    sources: sourcesOf([...prepared.sources, ...body.sources], [...reasons, ...next]),
  };
}

/** Stress in each coat, where there are several. */
function coatsOf({ coats }: Prepared, { coatStress }: Simulation): FitReport["coats"] {
  if (coats.length === 1) return undefined;
  return coats.map(({ thicknessMm }, j) => ({
    thicknessMm,
    stress: of(scaled(middle90(coatStress[j]!), 1e-6), UNITS.stress, { decimals: 1 }),
  }));
}

/** The answer for coats melted into one: their oxides mixed by thickness. Nothing where a coat's oxides are unknown. */
function mixedOf(request: FitRequest, { coats }: Prepared): Pick<FitReport, "mixed"> {
  const amounts: Record<string, number> = {};
  let thicknessMm = 0;
  for (const coat of coats) {
    if (!coat.chemistry) return {};
    thicknessMm += coat.thicknessMm;
    for (const [oxide, percent] of Object.entries(coat.chemistry.fired.weightPercent)) {
      amounts[oxide] = (amounts[oxide] ?? 0) + percent * coat.thicknessMm;
    }
  }
  const glaze = { oxides: { basis: "weightPercent" as const, amounts: perHundred(amounts) }, thicknessMm };
  const { verdict, headline, probabilities, stress } = checkFit({ ...request, glaze, include: [] });
  const { cases: _, ...quantity } = stress;
  return { mixed: { verdict, headline, probabilities, stress: quantity } };
}

function perHundred(amounts: Readonly<Record<string, number>>): Record<string, number> {
  const total = Object.values(amounts).reduce((sum, amount) => sum + amount, 0);
  return Object.fromEntries(Object.entries(amounts).map(([oxide, amount]) => [oxide, (amount / total) * 100]));
}

/** Every key that the answer rests on, once, in order. */
function sourcesOf(keys: readonly string[], reasons: readonly Reason[]): string[] {
  const all = new Set([...keys, ...FIT_SOURCES, ...TRIAL_SOURCES]);
  for (const { sources } of reasons) for (const key of sources) all.add(key);
  return [...all].sort();
}

type Figures = Pick<FitReport, "stress" | "thresholds" | "mismatch" | "setPoint" | "glaze" | "body" | "shivering">;

function figuresOf(
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
      thickness: of(spread({ value: thickness, sd: thickness * situation.thicknessSd, floor: 0 }), UNITS.length),
    },
    body: {
      class: body.classId,
      expansion: of(spread(body.expansion), UNITS.expansion, { rangeC: body.expansion.rangeC }),
      expansionToSetPoint: of(summary.bodyMean, UNITS.expansion, { rangeC: toSetPoint }),
      youngs: of(spread(body.youngsGPa), UNITS.modulus, { decimals: 1 }),
      moistureExpansion: of(scaled(spread(body.moisturePercent), moistureAge(situation.serviceYears)), UNITS.strain, {
        decimals: 4,
      }),
      stress: of(scaled(summary.stress, share / 1e6), UNITS.stress, { decimals: 1 }),
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

function of(m: Middle, unit: string, options?: Parameters<typeof quantity>[4]) {
  return quantity(m.value, Math.min(m.low, m.high), Math.max(m.low, m.high), unit, options);
}

function scaled(m: Middle, by: number): Middle {
  return { value: m.value * by, low: m.low * by, high: m.high * by };
}

/**
 * Stress per 1e-6/K of the glaze's mean expansion, at the centre.
 *
 *     dσ/dα = E₁ (Ts − 20)(1 + s((Ts + 20)/2 − 160)), shared with the wall
 *
 * @returns slope [MPa per 1e-6/K], tension positive
 */
function stressPerExpansion({ situation }: Prepared, summary: Summary): number {
  const c = summary.setPointC.value;
  const { perKelvin, anchorC } = situation.rise;
  const youngs = quantileOf(situation.youngsGPa, 0.5) * 1e3;
  const faces = facesOf(situation);
  const wall = ((situation.body.youngsGPa.value * 1e3) / (1 - situation.body.poisson)) * situation.wallM;
  const sharing = 1 + (faces * (youngs / (1 - POISSON)) * situation.thicknessM) / wall;
  return ((youngs / (1 - POISSON)) * 1e-6 * (c - 20) * (1 + perKelvin * ((c + 20) / 2 - anchorC))) / sharing;
}

/** Stress that each oxide adds where silica would stand in its place. */
function pullsOf(prepared: Prepared, perUnit: number): OxidePull[] {
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
function partsOf({ chemistry }: Prepared, perUnit: number): PartPull[] {
  if (!chemistry) return [];
  return expansionPerPart(chemistry).map(({ label, material, perPart }) => ({
    label,
    material,
    perPartMPa: round(perPart * perUnit, 2),
  }));
}
