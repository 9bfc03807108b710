/**
 * A film of melt running down a wall: closed forms.
 *
 *     ∂h/∂k + ∂(h³)/∂x = 0,   k = (ρ g sin θ / 3) ∫ dt/η
 *
 * x runs down the wall, h is the thickness. The melt work k [1/m] gathers weight, slope, viscosity and time, so every
 * firing of one glaze is the same flow, only shorter or longer, and firings add up.
 * Surface tension is left out here; it shapes the roll (roll.ts) and hardly moves the front.
 *
 * @module
 */

/** Standard gravity [m/s²]. */
export const GRAVITY = 9.80665;

/** A film of one thickness on a wall. */
export interface Film {
  /** Thickness [m]. */
  thicknessM: number;
  /** Viscosity of the melt [Pa·s]. */
  viscosityPaS: number;
  /** Density of the melt [kg/m³]. */
  densityKgPerM3: number;
  /** Slope of the wall from level; 90 if left out [°]. */
  slopeDeg?: number;
}

/**
 * Mean velocity of a film over its thickness: ρ g sin θ h²/3η.
 * @returns velocity down the wall [m/s]
 * @remarks Not the surface's, which is half as fast again: the classic slip.
 * @example meanVelocity({ thicknessM: 0.3e-3, viscosityPaS: 1e3, densityKgPerM3: 2500 }) // 7.35e-7
 */
export function meanVelocity({ thicknessM, viscosityPaS, densityKgPerM3, slopeDeg = 90 }: Film): number {
  return (densityKgPerM3 * GRAVITY * downhill(slopeDeg) * thicknessM ** 2) / (3 * viscosityPaS);
}

/**
 * Velocity of a film's surface: ρ g sin θ h²/2η.
 * @returns velocity down the wall [m/s]
 * @example surfaceVelocity({ thicknessM: 0.3e-3, viscosityPaS: 1e3, densityKgPerM3: 2500 }) // 1.1e-6
 */
export function surfaceVelocity(film: Film): number {
  return 1.5 * meanVelocity(film);
}

/** Share of the weight that pulls along the wall: 0 level, 1 upright. @param slopeDeg - from level [°] */
export function downhill(slopeDeg: number): number {
  return slopeDeg === 0 ? 0 : Math.sin((slopeDeg * Math.PI) / 180);
}

/**
 * How far the lower edge of a coat runs.
 *
 *     L = f                            while f ≤ H/2
 *     L = (27/4 · H² f)^(1/3) − H      after that
 *
 * The edge moves at the mean velocity of the film behind it. Meanwhile the coat thins from the top, h = √(x/3k); when
 * the thinning reaches the edge, the film there gets thinner and slows it: the second line, Huppert's sheet.
 * @param freeRunM - f = k h², what an endless coat would run [m]
 * @param glazedM - height H of the glazed band at the start [m]
 * @returns advance of the lower edge [m]
 * Source: derived; the second line is huppert-1982.
 * @example frontAdvance(0.00132, 0.1) // 0.00132
 */
export function frontAdvance(freeRunM: number, glazedM: number): number {
  if (freeRunM <= glazedM / 2) return freeRunM;
  return Math.cbrt(6.75 * glazedM ** 2 * freeRunM) - glazedM;
}

/**
 * Thickness of coat whose lower edge runs just so far: {@link frontAdvance} turned round.
 * @param workPerM - melt work k [1/m]
 * @param glazedM - height of the glazed band [m]
 * @param clearanceM - how far it may run [m]
 * @returns thickness [m]; Infinity where nothing flows
 * @example passingThickness(14700, 0.1, 0.003) // 0.00045
 */
export function passingThickness(workPerM: number, glazedM: number, clearanceM: number): number {
  if (workPerM <= 0) return Number.POSITIVE_INFINITY;
  const free = clearanceM <= glazedM / 2 ? clearanceM : (glazedM + clearanceM) ** 3 / (6.75 * glazedM ** 2);
  return Math.sqrt(free / workPerM);
}

/**
 * Thickness of the coat down the wall after it has run, roll left out.
 * @param freeRunM - k h² [m]
 * @param thicknessM - thickness of the coat at the start [m]
 * @param glazedM - height of the glazed band [m]
 * @param atM - distances from the upper edge [m]
 * @returns thickness at each [m]; its integral is the volume put on, whatever the run
 * @example filmProfile(0, 0.3e-3, 0.1, [0.05]) // [0.0003]
 */
export function filmProfile(freeRunM: number, thicknessM: number, glazedM: number, atM: readonly number[]): number[] {
  const front = glazedM + frontAdvance(freeRunM, glazedM);
  return atM.map((x) => {
    if (x < 0 || x > front) return 0;
    return x >= 3 * freeRunM ? thicknessM : thicknessM * Math.sqrt(x / (3 * freeRunM));
  });
}
