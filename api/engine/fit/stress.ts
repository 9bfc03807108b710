/**
 * Stress in a glaze after cooling, far from edges. Tension is positive; a mismatch above 0 (the body shrinks more
 * than the glaze) squeezes the glaze.
 *
 * @module
 */

/** Glaze and body as two elastic layers. */
export interface Layers {
  /** Young's modulus of the glaze [Pa]. */
  glazePa: number;
  /** Poisson's ratio of the glaze [-]. */
  glazePoisson: number;
  /** Glaze thickness [m]. */
  glazeM: number;
  /** Young's modulus of the body [Pa]. */
  bodyPa: number;
  bodyPoisson: number;
  /** Wall thickness of the body [m]. */
  wallM: number;
}

const biaxial = (youngs: number, poisson: number) => youngs / (1 - poisson);

/**
 * Thin glaze on a thick body.
 *
 *     σ = −E_g δ / (1 − ν_g)
 *
 * @param glazePa - Young's modulus [Pa]; `glazePoisson` [-]
 * @param mismatch - body contraction minus glaze contraction, δ [-]
 * @returns in-plane stress [Pa]
 * @example thinStress(70e9, 0.2, 6e-4) // −52.5e6
 */
export function thinStress(glazePa: number, glazePoisson: number, mismatch: number): number {
  return -biaxial(glazePa, glazePoisson) * mismatch;
}

/**
 * Glaze on one or both faces of a wall that stays straight: both faces alike, or a closed wall that cannot bend.
 *
 *     σ = −E₁ δ / (1 + n E₁ t / (E₂ H)),   E = Young's modulus / (1 − ν)
 *
 * @param layers - moduli and thicknesses
 * @param mismatch - δ [-]
 * @param faces - glazed faces n: 2, or 1 for a closed wall [-]
 * @returns in-plane stress in the glaze [Pa]
 * @example straightWallStress({ glazePa: 70e9, glazePoisson: .2, glazeM: 3e-4, bodyPa: 60e9, bodyPoisson: .2, wallM: 5e-3 }, 6e-4, 2) // −46.05e6
 */
export function straightWallStress(layers: Layers, mismatch: number, faces: 1 | 2): number {
  const e1 = biaxial(layers.glazePa, layers.glazePoisson);
  const e2 = biaxial(layers.bodyPa, layers.bodyPoisson);
  return sharedStress(e1, layers.glazeM, e2 * layers.wallM, mismatch, faces);
}

/**
 * The same from biaxial moduli.
 * @param glaze - E/(1 − ν) of the glaze [Pa]; `glazeM` its thickness [m]
 * @param wall - E/(1 − ν) of the body times its thickness [N/m]
 * @returns in-plane stress in the glaze [Pa]
 */
export function sharedStress(glaze: number, glazeM: number, wall: number, mismatch: number, faces: number): number {
  return (-glaze * mismatch * wall) / (wall + faces * glaze * glazeM);
}

/** Stress through a flat piece glazed on one face and free to bend [Pa], and its curvature [1/m]. */
export interface BilayerStress {
  glazeInterface: number;
  glazeSurface: number;
  glazeMean: number;
  bodyInterface: number;
  bodyBack: number;
  /** Positive, as under a squeezed glaze: the glazed face bulges. */
  curvature: number;
}

/**
 * Flat piece glazed on one face and free to bend (two-layer plate).
 *
 *     [E₁t + E₂H, (E₁t² − E₂H²)/2; (E₁t² − E₂H²)/2, (E₁t³ + E₂H³)/3] [ε₀; κ] = [−δE₂H; δE₂H²/2]
 *     σ_g(y) = E₁(ε₀ + κy),   σ_b(y) = E₂(ε₀ + κy + δ),   y = 0 at the interface
 *
 * @returns stresses [Pa], tension positive
 * Source: S. Timoshenko, J. Opt. Soc. Am. 11 (1925) 233; T.W. Clyne, Key Eng. Mater. 116-117 (1996) 307 (from memory).
 * @example bilayerStress(layers, 6e-4).glazeMean // −40.20e6 for the layers above
 */
export function bilayerStress(layers: Layers, mismatch: number): BilayerStress {
  const e1 = biaxial(layers.glazePa, layers.glazePoisson);
  const e2 = biaxial(layers.bodyPa, layers.bodyPoisson);
  const { glazeM: t, wallM: h } = layers;
  const a = e1 * t + e2 * h;
  const b = (e1 * t * t - e2 * h * h) / 2;
  const d = (e1 * t ** 3 + e2 * h ** 3) / 3;
  const f0 = -mismatch * e2 * h;
  const f1 = (mismatch * e2 * h * h) / 2;
  const determinant = a * d - b * b;
  const strain = (f0 * d - b * f1) / determinant;
  const curvature = (a * f1 - b * f0) / determinant;
  return {
    glazeInterface: e1 * strain,
    glazeSurface: e1 * (strain + curvature * t),
    glazeMean: e1 * (strain + (curvature * t) / 2),
    bodyInterface: e2 * (strain + mismatch),
    bodyBack: e2 * (strain - curvature * h + mismatch),
    curvature,
  };
}

/**
 * Mean stress in the clay wall that balances the glaze.
 *
 *     σ_b = −σ_g · n t / H
 *
 * @returns stress in the body [Pa]; tension when the glaze is squeezed
 * @example bodyStress(-46.05e6, 3e-4, 5e-3, 2) // 5.526e6
 */
export function bodyStress(glazeStress: number, glazeM: number, wallM: number, faces: 1 | 2): number {
  return (-glazeStress * faces * glazeM) / wallM;
}

/** One coat of a stack: stiffness [Pa, -], thickness [m], its own mismatch with the body [-]. */
export interface StackLayer {
  pa: number;
  poisson: number;
  thicknessM: number;
  mismatch: number;
}

/**
 * Stress in each coat of a stack on one wall, far from edges.
 *
 *     straight: σ_j = E_j(u − δ_j),   u = n Σ E_j t_j δ_j / (E₂H + n Σ E_j t_j)
 *     free:     σ_j(y) = E_j(ε₀ + κy − δ_j′) with ε₀, κ from force and moment balance of all layers
 *
 * @param coats - the outer coat first, the last on the clay
 * @param wall - the body
 * @param glazed - both faces alike, one face of a closed wall, or one face of a flat piece free to bend
 * @returns mean stress in each coat [Pa], tension positive, in the order given
 * @remarks One coat gives {@link straightWallStress} or {@link bilayerStress} again; a stack of like coats is one coat.
 * @example stackStress([{ pa: 70e9, poisson: .2, thicknessM: 3e-4, mismatch: 6e-4 }], { pa: 60e9, poisson: .2, thicknessM: 5e-3 }, "both-faces") // [-46.05e6]
 */
export function stackStress(
  coats: readonly StackLayer[],
  wall: Omit<StackLayer, "mismatch">,
  glazed: "both-faces" | "one-face" | "one-face-free",
): number[] {
  const e2 = biaxial(wall.pa, wall.poisson);
  const h = wall.thicknessM;
  if (glazed !== "one-face-free") {
    const faces = glazed === "both-faces" ? 2 : 1;
    let stiff = 0;
    let pull = 0;
    for (const { pa, poisson, thicknessM, mismatch } of coats) {
      const share = faces * biaxial(pa, poisson) * thicknessM;
      stiff += share;
      pull += share * mismatch;
    }
    const given = pull / (e2 * h + stiff);
    return coats.map(({ pa, poisson, mismatch }) => biaxial(pa, poisson) * (given - mismatch));
  }
  const { strain, curvature, middles } = bentStack(coats, wall);
  return coats.map(
    ({ pa, poisson, mismatch }, j) => biaxial(pa, poisson) * (strain + curvature * middles[j]! - mismatch),
  );
}

/**
 * How a plate of several coats on one face bends: strain ε₀ where clay and glaze meet, from the body's own free
 * contraction, and curvature κ, from force and moment balance of all layers.
 *
 *     σ_b(y) = E₂(ε₀ + κy),   σ_j(y) = E_j(ε₀ + κy − δ_j),   y = 0 at the interface, the glaze above
 *
 * @param coats - the outer coat first
 * @returns ε₀ [-], κ [1/m], height of the middle of each coat [m]
 */
export function bentStack(
  coats: readonly StackLayer[],
  wall: Omit<StackLayer, "mismatch">,
): { strain: number; curvature: number; middles: number[] } {
  const e2 = biaxial(wall.pa, wall.poisson);
  const h = wall.thicknessM;
  let a = e2 * h;
  let b = (-e2 * h * h) / 2;
  let d = (e2 * h ** 3) / 3;
  let f0 = 0;
  let f1 = 0;
  let top = 0;
  const middles: number[] = [];
  for (let j = coats.length - 1; j >= 0; j--) {
    const { pa, poisson, thicknessM: t, mismatch } = coats[j]!;
    const e = biaxial(pa, poisson);
    const middle = top + t / 2;
    a += e * t;
    b += e * t * middle;
    d += (e * ((top + t) ** 3 - top ** 3)) / 3;
    f0 += e * t * mismatch;
    f1 += e * t * middle * mismatch;
    middles[j] = middle;
    top += t;
  }
  const determinant = a * d - b * b;
  const strain = (f0 * d - b * f1) / determinant;
  const curvature = (a * f1 - b * f0) / determinant;
  return { strain, curvature, middles };
}
