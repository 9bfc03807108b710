/**
 * Viscosity against temperature in the form of Mauro, Yue, Ellison, Gupta and Allan.
 *
 *     log₁₀ η(T) = A + (12 − A) · u · exp[(m/(12 − A) − 1)(u − 1)],   u = T₁₂ / T,   T in K, η in Pa·s
 *
 * A is the limit at infinite temperature, T₁₂ the temperature of 10¹² Pa·s, m the fragility: the slope of log η
 * against T₁₂/T at T₁₂. One smooth falling curve a glass, so that no two points of it can contradict each other.
 * Source: myega-2009.
 *
 * @module
 */

/** Parameters of one glass. */
export interface Myega {
  /** log₁₀ of the viscosity at infinite temperature [log10 Pa·s]. */
  limit: number;
  /** Temperature of 10¹² Pa·s [K]. */
  t12K: number;
  /** Fragility [-]. */
  fragility: number;
}

/** A point of the curve with its derivatives, for the fit. */
export interface MyegaPoint {
  logViscosity: number;
  /** −d log η / dT [1/K], positive. */
  slope: number;
  byT12: number;
  byFragility: number;
  byLimit: number;
}

/**
 * Viscosity at a temperature.
 * @param glass - parameters
 * @param temperatureK - temperature [K]
 * @returns log₁₀ of the viscosity [Pa·s] and derivatives by temperature [1/K], T₁₂ [1/K], fragility and limit [-]
 * @example myegaAt({ limit: -2, t12K: 850, fragility: 38 }, 850).logViscosity // 12
 */
export function myegaAt({ limit, t12K, fragility }: Myega, temperatureK: number): MyegaPoint {
  const span = 12 - limit;
  const u = t12K / temperatureK;
  const c = fragility / span - 1;
  const e = Math.exp(c * (u - 1));
  const byU = span * e * (1 + c * u);
  return {
    logViscosity: limit + span * u * e,
    slope: (byU * u) / temperatureK,
    byT12: byU / temperatureK,
    byFragility: u * e * (u - 1),
    byLimit: 1 - u * e + (u * e * (u - 1) * fragility) / span,
  };
}

/**
 * Temperature of a viscosity: Newton's method on the falling curve.
 * @param glass - parameters
 * @param logViscosity - log₁₀ of the viscosity, above the limit [log10 Pa·s]
 * @returns temperature [K], rounds used, and whether it settled to 1e-9 in log η
 * @example myegaTemperature({ limit: -2, t12K: 850, fragility: 38 }, 12).value // 850
 */
export function myegaTemperature(glass: Myega, logViscosity: number) {
  const span = 12 - glass.limit;
  const c = glass.fragility / span - 1;
  const wanted = Math.log((logViscosity - glass.limit) / span);
  // ln u + c (u − 1) = wanted: rising and concave in ln u where c > −1/u, so Newton in ln u closes in from any side.
  let lnU = wanted / (1 + c);
  for (let iterations = 1; iterations <= 60; iterations++) {
    const u = Math.exp(lnU);
    const miss = lnU + c * (u - 1) - wanted;
    if (Math.abs(miss) < 1e-12) return { value: glass.t12K / u, iterations, converged: true };
    lnU -= Math.max(-1, Math.min(1, miss / Math.max(1 + c * u, 0.05)));
  }
  return { value: glass.t12K / Math.exp(lnU), iterations: 60, converged: false };
}
