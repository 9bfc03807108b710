/** Rounding that still sums. @module */

/**
 * Rounds amounts so that they add up to the rounded total: each is cut down, and what is missing goes to those that lost
 * most (largest remainder).
 * @param amounts - of 0 or more
 * @param decimals - kept [-]
 * @returns amounts in the same order; each within one step of its exact value
 * @example roundShares([1 / 3, 1 / 3, 1 / 3], 2) // [0.34, 0.33, 0.33]: they add up to 1
 */
export function roundShares(amounts: readonly number[], decimals: number): number[] {
  const scale = 10 ** decimals;
  const total = Math.round(amounts.reduce((sum, amount) => sum + amount, 0) * scale);
  // A hair, so that 4.2 written as 4.1999… is not cut to 4.19.
  const cut = amounts.map((amount) => Math.floor(amount * scale + 1e-7));
  const missing = total - cut.reduce((sum, steps) => sum + steps, 0);
  const byLoss = amounts.map((amount, i) => ({ i, loss: amount * scale - cut[i]! })).sort((a, b) => b.loss - a.loss);
  for (const { i } of byLoss.slice(0, Math.max(0, missing))) cut[i] = cut[i]! + 1;
  return cut.map((steps) => steps / scale);
}
