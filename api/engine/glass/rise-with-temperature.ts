/** How the expansion of a glass grows with temperature. @module */

/**
 * Rise of the instantaneous expansion of a glass with temperature:
 *
 *     α(T) = ᾱ(20–300) · (1 + s · (T − 160)),   T in °C, below the set point
 *
 * A straight line through the 20–300 °C mean at the middle of that range, 160 °C. Two published trends give s:
 * - Means from 25 °C to the setting point stand 1.14 ± 0.05 above 0–300 °C means (thirteen commercial glasses).
 *   The mean of a straight line is its value at the middle, so with setting points near 540 °C the middle is
 *   (25 + 540)/2 = 282 °C against 150 °C: s = 0.14/132 = 0.00106 per K.
 * - The instantaneous value at 350 °C stands 1.15 above that at 210 °C (quartiles 9–22 %): with
 *   (1 + 190 s)/(1 + 50 s) = 1.15, s = 0.15/(190 − 1.15 × 50) = 0.00113 per K.
 * Both are near 0.0011. The spread of the first (0.05/132) is 0.00038 per K. The quartiles of the second would give
 * more, 0.00066–0.00170 per K, but they hold the noise of the network that predicted it: sd 0.00035 between glasses.
 *
 * The mistake to avoid: multiplying a 20–300 °C mean by the whole way down from the set point.
 */
export const RISE_WITH_TEMPERATURE = {
  /** Relative rise per kelvin [1/K]. */
  perKelvin: 0.0011,
  /** Standard deviation of that rise between glasses [1/K]. */
  sd: 0.00035,
  /** Temperature at which the instantaneous value equals the 20–300 °C mean [°C]. */
  anchorC: 160,
  /** Key in data/sources.json. */
  source: "mclellan-shand-1984",
} as const;

/**
 * Mean expansion over a range, from the 20–300 °C mean.
 * @param mean20to300 - mean linear expansion 20–300 °C [1e-6/K]
 * @param fromC - lower end [°C]
 * @param toC - upper end, below the set point [°C]
 * @param perKelvin - relative rise [1/K]
 * @returns mean over the range [1e-6/K]
 * @example meanOver(6.5, 20, 620) // 7.644
 */
export function meanOver(
  mean20to300: number,
  fromC: number,
  toC: number,
  perKelvin: number = RISE_WITH_TEMPERATURE.perKelvin,
): number {
  return mean20to300 * (1 + perKelvin * ((fromC + toC) / 2 - RISE_WITH_TEMPERATURE.anchorC));
}
