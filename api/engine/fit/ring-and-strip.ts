/**
 * What a split ring and a thin strip show of the stress in a glaze. A glaze that is squeezed closes a ring glazed outside
 * and turns a strip hollow on the clay side.
 *
 * @module
 */

/**
 * Curvature of a strip of two layers, uniaxial.
 *
 *     κ = 6 δ (1 + m)² / ((t + H)(3(1 + m)² + (1 + mn)(m² + 1/(mn)))),   m = t/H, n = E_g/E_b
 *
 * @param mismatch - body contraction minus glaze contraction, δ [-]; above 0 squeezes the glaze
 * @param glazeM - glaze thickness t [m]; `bodyM` body thickness H [m]
 * @param glazePa - Young's modulus of the glaze [Pa]; `bodyPa` of the body
 * @returns curvature [1/m]; above 0 the glazed face bulges
 * Source: S. Timoshenko, J. Opt. Soc. Am. 11 (1925) 233.
 * @example stripCurvature(6e-4, 3e-4, 5e-3, 70e9, 60e9) // 0.0409
 */
export function stripCurvature(
  mismatch: number,
  glazeM: number,
  bodyM: number,
  glazePa: number,
  bodyPa: number,
): number {
  const m = glazeM / bodyM;
  const n = glazePa / bodyPa;
  const stiffness = 3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n));
  return (6 * mismatch * (1 + m) ** 2) / ((glazeM + bodyM) * stiffness);
}

/**
 * Rise of the free end of a strip clamped at the other.
 *
 *     f = κ L²/2
 *
 * @returns deflection [m]
 * @example cantileverDeflection(0.0409, 0.2) // 0.000818
 */
export function cantileverDeflection(curvature: number, lengthM: number): number {
  return (curvature * lengthM * lengthM) / 2;
}

/**
 * Sag of a strip lying on its ends.
 *
 *     f = κ L²/8
 *
 * @returns sag of the middle [m]
 * @example spanSag(0.0409, 0.2) // 0.0002045
 */
export function spanSag(curvature: number, spanM: number): number {
  return (curvature * spanM * spanM) / 8;
}

/**
 * Mismatch that bends a strip so far: the inverse of {@link stripCurvature}.
 * @returns δ [-]
 * @example stripMismatch(0.0409, 3e-4, 5e-3, 70e9, 60e9) // 6.0e-4
 */
export function stripMismatch(
  curvature: number,
  glazeM: number,
  bodyM: number,
  glazePa: number,
  bodyPa: number,
): number {
  return curvature / stripCurvature(1, glazeM, bodyM, glazePa, bodyPa);
}

/**
 * How far the gap of a narrow ring glazed outside closes when it is cut.
 *
 *     Δgap = 2π R² Δκ,   Δκ = −6 σ_g t/(E_b H²)
 *
 * @param stress - stress in the glaze, tension positive [Pa]
 * @param radiusM - mean radius R [m]; `wallM` wall H [m]; `glazeM` glaze t [m]
 * @param bodyPa - Young's modulus of the body [Pa]
 * @returns closing of the gap [m]; below 0 it opens (tension), and a ring glazed inside does the opposite
 * @remarks A film form: at t/H 0.075 it reads 15 % high; {@link ringClosingOf} takes both layers. Derived.
 * @example ringClosing(-60e6, 0.03, 0.004, 3e-4, 60e9) // 0.000636
 */
export function ringClosing(stress: number, radiusM: number, wallM: number, glazeM: number, bodyPa: number): number {
  const curvature = (-6 * stress * glazeM) / (bodyPa * wallM * wallM);
  return 2 * Math.PI * radiusM * radiusM * curvature;
}

/**
 * How far the gap closes, both layers in full.
 *
 *     Δgap = 2π R² κ,   κ from {@link stripCurvature}
 *
 * @param mismatch - δ [-], above 0 squeezes the glaze
 * @returns closing of the gap [m]
 * @remarks Within 3 % of the curved-beam solution at t/H 0.075, R/H 7.5 (tests/independent/layers.py).
 * @example ringClosingOf(9.19e-4, 0.03, 0.004, 3e-4, 70e9, 60e9) // 0.000527
 */
export function ringClosingOf(
  mismatch: number,
  radiusM: number,
  wallM: number,
  glazeM: number,
  glazePa: number,
  bodyPa: number,
): number {
  return 2 * Math.PI * radiusM * radiusM * stripCurvature(mismatch, glazeM, wallM, glazePa, bodyPa);
}

/**
 * Stress in the glaze from how far the gap closed: the inverse of {@link ringClosing}.
 *
 *     σ_g = −E_b H² Δgap/(12π R² t)
 *
 * @returns stress [Pa], tension positive
 * @example ringStress(0.000636, 0.03, 0.004, 3e-4, 60e9) // −60e6
 */
export function ringStress(closingM: number, radiusM: number, wallM: number, glazeM: number, bodyPa: number): number {
  return (-bodyPa * wallM * wallM * closingM) / (12 * Math.PI * radiusM * radiusM * glazeM);
}
