/** Layers that flow over each other. @module */

const BOLTZMANN = 1.380649e-23;

/**
 * Share of each layer's fluidity in the flow of a stack.
 *
 *     u = (ρ g sin θ H²/3) Σ wᵢ/ηᵢ,   wᵢ = [(H − yᵢ₋₁)³ − (H − yᵢ)³]/H³
 *
 * Shear is greatest at the clay, so the coat beside it counts most: a runny glaze under a stiff one carries the stiff one
 * down; the other way round it slides off alone.
 * @param thicknesses - from the clay outwards, any unit
 * @returns weights, summing to 1 [-]
 * Source: derived; checked against a velocity profile integrated numerically, tests/independent/film.py.
 * @example flowShares([0.2, 0.2]) // [0.875, 0.125]
 */
export function flowShares(thicknesses: readonly number[]): number[] {
  const whole = thicknesses.reduce((sum, each) => sum + each, 0);
  let below = 0;
  return thicknesses.map((each) => {
    const share = (1 - below / whole) ** 3 - Math.max(1 - (below + each) / whole, 0) ** 3;
    below += each;
    return share;
  });
}

/**
 * How far two melts mix by diffusion: √(2 ∫D dt) with D = kT/λη.
 * @param work - ∫ dt/η of the mixture [1/Pa]
 * @param temperatureC - where most of the work is done, the peak [°C]
 * @param jumpM - length λ of a jump, 0.1 to 1 nm [m]
 * @returns mixing length [m]
 * @remarks Eyring's relation takes network atoms: alkalis go further. Bubbles stir a boiling glaze more than diffusion does.
 * Source: from-memory-handbooks.
 * @example mixingLength(1.8, 1240, 0.3e-9) // 1.58e-5
 */
export function mixingLength(work: number, temperatureC: number, jumpM: number): number {
  return Math.sqrt((2 * BOLTZMANN * (temperatureC + 273.15) * work) / jumpM);
}

/**
 * How much of a stack is one melt: its mixed zones over its whole thickness.
 * @param lengthM - mixing length to either side of each interface [m]
 * @param thicknesses - [m]
 * @returns share between 0, separate, and 1, mixed [-]; 1 for a single coat
 * @example mixedShare(0.00002, [0.0002, 0.0002]) // 0.1
 */
export function mixedShare(lengthM: number, thicknesses: readonly number[]): number {
  const whole = thicknesses.reduce((sum, each) => sum + each, 0);
  const zones = 2 * lengthM * (thicknesses.length - 1);
  return thicknesses.length < 2 ? 1 : Math.min(1, zones / whole);
}
