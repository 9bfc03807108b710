/** The soft hill: how likely each stress is. @module */
import type { FitReport } from "../../fit/types.ts";

/** Probability density, to any scale. */
export interface Hill {
  from: number;
  to: number;
  /** Height at a stress, 1 at the highest. */
  height: (mpa: number) => number;
}

/** 90 % interval in standard deviations. */
const IN_SIGMAS = 2 * 1.6448536269514722;
/** Width of the smoothing, in standard deviations (Silverman's rule for 20 points). */
const BANDWIDTH = 1.06 * 20 ** -0.2;
const STEPS = 96;

/**
 * Smooths the twenty equally likely cases into a hill. Smoothing widens; the cases are drawn together first by as much,
 * so that the hill is as wide as the doubt and no wider.
 * Source: B.W. Silverman, Density Estimation for Statistics and Data Analysis, 1986, equations 3.28 and 6.8 (from memory).
 */
export function hillOf({ stress }: FitReport): Hill {
  const values = stress.cases.map(({ stressMPa }) => stressMPa);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  // A glaze known exactly would be a needle that no screen can show.
  const sigma = Math.max((stress.high - stress.low) / IN_SIGMAS, 1.5);
  const h = BANDWIDTH * sigma;
  const shrink = 1 / Math.sqrt(1 + BANDWIDTH ** 2);
  const drawn = values.map((value) => mean + (value - mean) * shrink);
  const width = h * shrink;
  const density = (mpa: number) => {
    let sum = 0;
    for (const value of drawn) {
      const z = (mpa - value) / width;
      if (z < 6 && z > -6) sum += Math.exp(-0.5 * z * z);
    }
    return sum;
  };
  const from = Math.min(...drawn) - 2.6 * width;
  const to = Math.max(...drawn) + 2.6 * width;
  const table = Float64Array.from({ length: STEPS + 1 }, (_, i) => density(from + ((to - from) * i) / STEPS));
  const peak = Math.max(...table);
  const height = (mpa: number) => {
    const place = ((mpa - from) / (to - from)) * STEPS;
    if (!(place >= 0 && place <= STEPS)) return 0;
    const i = Math.min(Math.floor(place), STEPS - 1);
    return (table[i]! + (table[i + 1]! - table[i]!) * (place - i)) / peak;
  };
  return { from, to, height };
}
