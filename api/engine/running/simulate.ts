/** A thousand possible walls: every uncertain input drawn, the film let run in each. @module */
import { Z90 } from "../body/index.ts";
import { between, DRAWS, type RunDraws } from "./draws.ts";
import { downhill, GRAVITY } from "./film.ts";
import { type MeltWork, workAt } from "./melt-work.ts";
import { MELT_DENSITY, ROLL_HEIGHT, type Span, stiffening } from "./practice.ts";
import { edgeAdvance, rollHeight, rollLength } from "./roll.ts";

/** One firing of one film, in SI. */
export interface Melt {
  /** Work of the stack as separate layers, and as one melt; the same for a single coat. */
  separate: MeltWork;
  mixed: MeltWork;
  /** Share that is mixed for certain [-]; the rest is drawn. */
  mixedShare: (draw: number) => number;
  /** Of the whole stack [m], with half-width (90 %). */
  thicknessM: number;
  plusMinusM: number;
  /** Of the cold glass [kg/m³]. */
  densityKgPerM3: number;
  /** Half-width (90 %) of every temperature [K]. */
  plusMinusK: number;
  /** Standard deviation of log10 η from the spread of the materials [-]. */
  recipeSd: number;
  solids: Span;
}

/** The wall, in SI. */
export interface WallM {
  slopeDeg: number;
  glazedM: number;
  clearanceM: number;
  tensionNPerM: number;
}

/** One element a draw. */
export interface RunSample {
  /** k h², summed over the firings so far [m]; k of this firing [1/m]. */
  free: Float64Array;
  work: Float64Array;
  thickness: Float64Array;
  advance: Float64Array;
  roll: Float64Array;
  /** Thickness of coat, all of it scaled alike, that just reaches the shelf by the end of this firing [m]. */
  reaching: Float64Array;
}

/** Which bound of a stack is taken. */
export type Bound = "drawn" | "separate" | "mixed";

/**
 * Lets the film run.
 * @param melt - this firing
 * @param wall - the wall
 * @param draws - deviates
 * @param options - `before`: the run of an earlier firing of the same piece, which adds; `bound` of a stack, drawn between
 * the two if left out; `reaching`: whether the thickness that reaches the shelf is sought
 * @returns arrays of {@link DRAWS} elements
 */
export function simulateRun(
  melt: Melt,
  wall: WallM,
  draws: RunDraws,
  options: { before?: RunSample; bound?: Bound; reaching?: boolean } = {},
): RunSample {
  const { before, bound = "drawn" } = options;
  const make = () => new Float64Array(DRAWS);
  const out = { free: make(), work: make(), thickness: make(), advance: make(), roll: make(), reaching: make() };
  const { even, normal } = draws;
  const slope = downhill(wall.slopeDeg);
  for (let i = 0; i < DRAWS; i++) {
    const z = draws.viscosity[i]!;
    const mixed = melt.mixedShare(i);
    const share = bound === "drawn" ? mixed + (1 - mixed) * even.mixing[i]! : bound === "mixed" ? 1 : 0;
    const logWork =
      workAt(melt.separate, z) * (1 - share) +
      workAt(melt.mixed, z) * share +
      melt.mixed.perKelvin * (melt.plusMinusK / Z90) * normal.kiln[i]! +
      melt.recipeSd * normal.recipe[i]! -
      stiffening(between(melt.solids, even.solids[i]!));
    const density = melt.densityKgPerM3 * between(MELT_DENSITY, even.density[i]!);
    const pull = density * GRAVITY * slope;
    const spread = 1 + (melt.plusMinusM / melt.thicknessM / Z90) * normal.thickness[i]!;
    const thickness = melt.thicknessM * Math.max(spread, 0.2);
    const work = (pull / 3) * 10 ** logWork;
    const earlier = before?.free[i] ?? 0;
    const full = between(ROLL_HEIGHT, even.roll[i]!);
    const free = earlier + work * thickness ** 2;
    out.work[i] = work;
    out.thickness[i] = thickness;
    out.free[i] = free;
    if (pull === 0) {
      out.roll[i] = thickness;
      out.reaching[i] = THICKEST_M;
      continue;
    }
    const total = free / thickness ** 2;
    const run = (h: number) => edgeAdvance(total * h ** 2, wall.glazedM, rollLength(wall.tensionNPerM, h, pull), full);
    out.advance[i] = run(thickness);
    out.roll[i] = rollHeight(thickness, free, rollLength(wall.tensionNPerM, thickness, pull), full);
    if (options.reaching) out.reaching[i] = reaching(run, wall.clearanceM);
  }
  return out;
}

/** Thinnest and thickest coats that are tried [m]. */
const THINNEST_M = 1e-6;
export const THICKEST_M = 0.02;

/** The thickness at which a run reaches the clearance, by halving; the thickest tried where none does. */
function reaching(run: (thicknessM: number) => number, clearanceM: number): number {
  let [low, high] = [THINNEST_M, THICKEST_M];
  if (run(high) < clearanceM) return high;
  if (run(low) >= clearanceM) return low;
  // 16 halvings of the logarithm: 0.02 % of the thickness.
  for (let i = 0; i < 16; i++) {
    const middle = Math.sqrt(low * high);
    if (run(middle) < clearanceM) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}
