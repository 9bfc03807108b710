/** What the engine says, unrounded, of a glass, of a body and of a fit. @module */
import { contractionAt, describeBody } from "../../../api/engine/body/index.ts";
import { analyseGlaze } from "../../../api/engine/chemistry/index.ts";
import { drawsFor } from "../../../api/engine/fit/draws.ts";
import * as fit from "../../../api/engine/fit/index.ts";
import { sharesOf } from "../../../api/engine/fit/shares.ts";
import { simulate } from "../../../api/engine/fit/simulate.ts";
import { prepare } from "../../../api/engine/fit/situation.ts";
import { summarise } from "../../../api/engine/fit/summary.ts";
import { quenchDifferences } from "../../../api/engine/fit/trials.ts";
import * as glass from "../../../api/engine/glass/index.ts";
import { quantileOf } from "../../../api/engine/quantity.ts";
import type { OxideComposition, Recipe } from "../../../api/engine/recipe/types.ts";

/** Where intervals are read [-]. */
export const PROBABILITIES = [0.001, 0.05, 0.3, 0.5, 0.77, 0.95, 0.9995];

/** An array as text: little-endian doubles in base 64. */
export const packed = (values: ArrayLike<number>) => Buffer.from(Float64Array.from(values).buffer).toString("base64");

const quantiles = (estimate: Parameters<typeof quantileOf>[0]) => ({
  value: estimate.value,
  scale: estimate.scale,
  quantiles: PROBABILITIES.map((p) => quantileOf(estimate, p)),
});

/** Everything that the engine says of one glass. */
export function ofGlaze(glaze: Recipe | OxideComposition) {
  const chemistry = analyseGlaze(glaze);
  const { moleFractions, fired } = chemistry;
  const properties = glass.glassProperties(moleFractions);
  const curve = glass.viscosityCurve(moleFractions);
  return {
    chemistry: {
      ...chemistry,
      lineLossPercent: chemistry.lines.map((line) => line.lossOnIgnitionPercent),
      lines: undefined,
      warnings: undefined,
      cautions: undefined,
      sources: undefined,
    },
    sets: Object.fromEntries(
      glass.PUBLISHED_SETS.map((set) => [
        set.id,
        glass.askSet(set, set.basis === "mole" ? fired.molePercent : fired.weightPercent).value,
      ]),
    ),
    expansion: quantiles(properties.expansion),
    transition: quantiles(properties.transitionC),
    youngs: quantiles(properties.youngsGPa),
    liquidus: quantiles(glass.liquidusIndication(moleFractions).liquidusC),
    viscosity: {
      parameters: curve.parameters,
      byTemperature: [600, 900, 1250].map((c) => ({ c, ...quantiles(curve.logViscosity(c)) })),
      byViscosity: [12, 6.6, 3].map((log) => ({ log, ...quantiles(curve.temperatureC(log)) })),
    },
    contributions: glass.expansionContributions(moleFractions),
    perPart: glass.expansionPerPart(chemistry).map((part) => part.perPart),
    doubt: Object.fromEntries(glass.expansionDoubt(moleFractions).map((part) => [part.term, part.halfWidth])),
    density: glass.appenDensity(moleFractions).value,
    youngsByPacking: glass.makishimaMackenzie(moleFractions).value,
    surfaceTension: Object.fromEntries(
      glass
        .surfaceTension(moleFractions, fired.weightPercent, 1150)
        .map(({ model, value }) => [model, value?.value ?? null]),
    ),
    doubts: doubtsOf(chemistry),
  };
}

/** Doubts about a coat 0.3 mm thick, by name and together. */
function doubtsOf(chemistry: Parameters<typeof fit.glazeDoubts>[0]) {
  const { terms, together } = fit.glazeDoubts(chemistry, 0.3);
  const named = [...terms, { term: "together", effect: together }];
  return Object.fromEntries(named.map(({ term, effect: { value, low, high } }) => [term, { value, low, high }]));
}

/** Everything that the engine says of one body. */
export function ofBody(asked: Parameters<typeof describeBody>[0]) {
  const model = describeBody(asked);
  const deviates = [
    {},
    { bodyMean: 1.2, bodyQuartz: -0.7, bodyCristobalite: 0.9, bodyRise: 1.5 },
    { bodyMean: -2.1, bodyQuartz: 2.2, bodyCristobalite: -3, bodyRise: -0.4 },
  ];
  const temperatures = [60, 118.3, 164.7, 233, 301, 512.7, 571.9, 573, 599.1, 649, 811.3, 990];
  return {
    expansion: { value: model.expansion.value, sd: model.expansion.sd },
    youngsGPa: model.youngsGPa,
    moisturePercent: model.moisturePercent,
    ruptureMPa: model.ruptureMPa,
    poisson: model.poisson,
    bounds: model.bounds ? model.bounds(640) : null,
    contraction: deviates.map((z) => ({ z, at: temperatures.map((c) => ({ c, strain: contractionAt(model, c, z) })) })),
  };
}

/** A fit with every draw. The report is made last: the arrays of a simulation live until the next one. */
export function ofFit(request: fit.FitRequest) {
  const draws = drawsFor(request.seed ?? 1);
  const { situation } = prepare(request);
  const run = simulate(situation, draws);
  const differences = new Float64Array(run.stress.length);
  quenchDifferences(situation, run, draws, differences);
  const summary = summarise(situation, run);
  const perDraw = {
    stress: run.stress,
    mismatch: run.mismatch,
    setC: run.setPointC,
    pa: run.glazePa,
    alpha: run.alpha,
    root: run.root,
    outcome: run.outcome,
  };
  const answer = {
    perDraw: Object.fromEntries(Object.entries(perDraw).map(([name, values]) => [name, packed(values)])),
    coats: run.coatStress.map(packed),
    bent: run.bent && { across: packed(run.bent.across), underGlaze: packed(run.bent.underGlaze) },
    quench: packed(differences),
    ...{ lifted: { ...run.lifted }, counts: { ...run.counts }, ...sharesOf(run) },
    summary: {
      stress: summary.stress,
      mismatch: summary.mismatch,
      setPointC: summary.setPointC,
      glazeMean: summary.glazeMean,
      bodyMean: summary.bodyMean,
      thresholds: summary.thresholds,
      moistureStress: summary.moistureStress,
      underGlaze: summary.bent?.underGlaze ?? null,
    },
  };
  const { verdict, probabilities, stress, trials, pulls, parts } = fit.checkFit({ ...request, include: ["parts"] });
  return { ...answer, report: { verdict, probabilities, cases: stress.cases, trials, pulls, parts: parts ?? [] } };
}
