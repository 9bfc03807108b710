/** Round steps for a scale. @module */

/**
 * A step of 1, 2 or 5 times a power of ten.
 * @param span - length of the scale, in its unit
 * @param most - most steps wanted [-]
 * @example niceStep(0.52, 6) // 0.1
 */
export function niceStep(span: number, most: number): number {
  const rough = span / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = rough / power;
  return power * (share > 5 ? 10 : share > 2 ? 5 : share > 1 ? 2 : 1);
}
