/** Viscosity of a glass from hard to runny, as one curve. @module */
import file from "../../../data/models/viscosity.json" with { type: "json" };
import type { Notice } from "../errors.ts";
import type { Estimate } from "../quantity.ts";
import type { ViscosityFile } from "./model-file.ts";
import { type Myega, myegaAt, myegaTemperature } from "./myega.ts";
import { MODEL_OXIDES, vectorOf } from "./oxides.ts";
import { rangeWarnings, trainingRange, widening } from "./range-warnings.ts";
import { scaleFunction } from "./spread.ts";
import { termSum } from "./term-sum.ts";
import { QUANTITY_COUNT, quantitiesOf } from "./terms.ts";
import type { MoleFractions } from "./types.ts";

/** The fitted model, for those who show its accuracy. */
export const VISCOSITY = file as unknown as ViscosityFile;

const t12 = termSum(VISCOSITY.t12K);
const lnFragility = termSum(VISCOSITY.lnFragility);
const range = trainingRange(VISCOSITY.training.rangesMolePercent);
const scaleOf = scaleFunction(VISCOSITY.spread, range.low, range.high);
const shape: readonly number[] = Object.freeze([...VISCOSITY.shape]);
const ZERO_C = 273.15;

/** Viscosity of one glass at every temperature. */
export interface ViscosityCurve {
  /** Parameters of the curve: limit [log10 Pa·s], temperature of 10^12 Pa·s [K], fragility [-]. */
  parameters: Myega;
  /** log10 of the viscosity [Pa·s] at a temperature [°C]. */
  logViscosity(temperatureC: number): Estimate;
  /** Temperature [°C] at which the viscosity is 10^`logViscosity` Pa·s. */
  temperatureC(logViscosity: number): Estimate;
  /** Oxides outside the glasses that the model was fitted to. */
  warnings: Notice[];
  sources: string[];
}

/**
 * Viscosity of a silicate glass and its melt from 10^1.5 to 10^13 Pa·s.
 *
 * One falling curve a glass (see myega.ts), its temperature of 10^12 Pa·s and its fragility sums of terms fitted to
 * all isokoms and isotherms of the measured glasses together, so a viscosity read at a temperature and the temperature
 * read at that viscosity always agree. The doubt is a temperature error and a viscosity error together: in log10 η it
 * is large where the curve is steep.
 *
 *     scale of log₁₀ η = k √(logSd² + (temperatureSd · s)²),   of T the same divided by s,   s = −d log₁₀ η/dT
 *
 * k is the file's spread at this glass (see spread.ts), logSd and temperatureSd its noise. T₁₂ and ln fragility are kept
 * within the ranges of the file.
 *
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @returns curve with estimates (value + scale × z) of log10 η [Pa·s] and temperatures [°C]
 * @remarks Of the homogeneous melt: crystals, bubbles and unmelted grains stiffen a real glaze. Outside the training
 * range it answers with a wider spread and a warning that names the oxide.
 * Source: sciglass-2019, fitted by data/fitting; form of the curve: myega-2009.
 */
export function viscosityCurve(moleFractions: MoleFractions): ViscosityCurve {
  const x = new Float64Array(MODEL_OXIDES.length);
  const q = new Float64Array(QUANTITY_COUNT);
  const unknown = vectorOf(moleFractions, x);
  quantitiesOf(x, q);
  const parameters: Myega = {
    limit: VISCOSITY.limit,
    t12K: clamp(t12.of(q), VISCOSITY.t12K.range),
    fragility: Math.exp(clamp(lnFragility.of(q), VISCOSITY.lnFragility.range)),
  };
  const scale = scaleOf(x) * widening(unknown);
  const noise = (slope: number) => scale * Math.hypot(VISCOSITY.noise.logSd, VISCOSITY.noise.temperatureSdK * slope);
  return {
    parameters,
    logViscosity(temperatureC) {
      const { logViscosity, slope } = myegaAt(parameters, temperatureC + ZERO_C);
      return { value: logViscosity, scale: noise(slope), shape };
    },
    temperatureC(logViscosity) {
      const temperatureK = myegaTemperature(parameters, logViscosity).value;
      const { slope } = myegaAt(parameters, temperatureK);
      return { value: temperatureK - ZERO_C, scale: noise(slope) / slope, shape };
    },
    warnings: rangeWarnings(range, x, unknown, moleFractions),
    sources: VISCOSITY.sources,
  };
}

function clamp(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(Math.max(value, low), high);
}
