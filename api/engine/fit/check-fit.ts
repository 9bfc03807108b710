/** The main job: will this glaze fit this clay? @module */
import { appenDensity } from "../glass/index.ts";
import { middle90 } from "../numeric/quantiles.ts";
import { quantileOf, UNITS } from "../quantity.ts";
import { DATA_VERSION, ENGINE_VERSION } from "../version.ts";
import { sourcesOf } from "./answer-sources.ts";
import { cautionsFor } from "./cautions.ts";
import { drawCurves } from "./curves.ts";
import { of, scaled } from "./figures.ts";
import { judgeFit } from "./judge-fit.ts";
import { driversOf, nextSteps } from "./next.ts";
import { stressProfile } from "./profile.ts";
import { partsOf, pullsOf, stressPerExpansion } from "./pulls.ts";
import { headline, reasonsFor } from "./reasons.ts";
import { sharesOf } from "./shares.ts";
import { probabilitiesOf, type Simulation } from "./simulate.ts";
import type { Prepared } from "./situation.ts";
import { TRIAL_SOURCES, tryOut } from "./trials.ts";
import type { FitReport, FitRequest } from "./types.ts";
import { weighUp } from "./weigh-up.ts";

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
  const { seed, prepared, draws, simulation, summary, judgement, figures } = weighUp(request);
  const { situation } = prepared;
  const perUnit = stressPerExpansion(prepared, summary);
  const pulls = pullsOf(prepared, perUnit);
  const trials = tryOut(situation, simulation, draws);
  const reasons = reasonsFor(prepared, summary, judgement, pulls, figures, trials);
  const doubt = sharesOf(simulation);
  const next = nextSteps(prepared, doubt, summary, judgement);
  const glazePa = quantileOf(situation.youngsGPa, 0.5) * 1e9;
  const coats = coatsOf(prepared, simulation);

  return {
    verdict: judgement.verdict,
    headline: headline(prepared, judgement),
    probabilities: probabilitiesOf(simulation),
    ...figures,
    trials,
    ...(coats ? { coats, ...mixedOf(request, prepared) } : {}),
    pulls,
    ...(request.include?.includes("parts") ? { parts: partsOf(prepared, perUnit) } : {}),
    drivers: driversOf(doubt),
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
    sources: sourcesOf(prepared, TRIAL_SOURCES, [...reasons, ...next]),
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

/** Density of a glass whose oxides have no volumes [g/cm3] (from-memory-handbooks). */
const USUAL_DENSITY = 2.45;

/**
 * The answer for coats melted into one: their oxides mixed by weight, which is thickness times density. Nothing where a
 * coat's oxides are unknown.
 */
function mixedOf(request: FitRequest, { coats }: Prepared): Pick<FitReport, "mixed"> {
  const amounts: Record<string, number> = {};
  let thicknessMm = 0;
  for (const coat of coats) {
    if (!coat.chemistry) return {};
    thicknessMm += coat.thicknessMm;
    const weight = coat.thicknessMm * (appenDensity(coat.chemistry.moleFractions).value ?? USUAL_DENSITY);
    for (const [oxide, percent] of Object.entries(coat.chemistry.fired.weightPercent)) {
      amounts[oxide] = (amounts[oxide] ?? 0) + percent * weight;
    }
  }
  const glaze = { oxides: { basis: "weightPercent" as const, amounts: perHundred(amounts) }, thicknessMm };
  const { verdict, headline, probabilities, stress } = judgeFit({ ...request, glaze });
  const { cases: _, ...quantity } = stress;
  return { mixed: { verdict, headline, probabilities, stress: quantity } };
}

function perHundred(amounts: Readonly<Record<string, number>>): Record<string, number> {
  const total = Object.values(amounts).reduce((sum, amount) => sum + amount, 0);
  return Object.fromEntries(Object.entries(amounts).map(([oxide, amount]) => [oxide, (amount / total) * 100]));
}
