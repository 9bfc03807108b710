/** A stack of coats in one firing, made ready to run. @module */
import { type ViscosityCurve, viscosityCurve } from "../glass/index.ts";
import { mixture, type ReadCoat } from "./coats.ts";
import { between, type RunDraws } from "./draws.ts";
import { joinWork, meltWork, workAt } from "./melt-work.ts";
import { JUMP_NM, type Span } from "./practice.ts";
import { recipeSdOf, togetherMm } from "./read-request.ts";
import type { Melt } from "./simulate.ts";
import { flowShares, mixedShare, mixingLength } from "./stack.ts";
import type { Timeline } from "./timeline.ts";

/** A stack and what it does. */
export interface ReadyMelt extends Melt {
  /** Viscosity of all coats melted into one. */
  curve: ViscosityCurve;
  /** Mixing length, one element a draw [m]; undefined for a single coat. */
  mixing: Float64Array | undefined;
}

/**
 * Works out the melt of a stack.
 * @param coats - from the clay outwards
 * @param firing - read
 * @param solids - share of solids that is likely
 * @param hotterK - the whole kiln hotter by this [K]
 */
export function meltOf(
  coats: readonly ReadCoat[],
  firing: Timeline,
  solids: Span,
  draws: RunDraws,
  hotterK = 0,
): ReadyMelt {
  const single = coats.length === 1;
  const curve = single ? coats[0]!.curve : viscosityCurve(mixture(coats).moleFractions);
  const mixed = meltWork(curve, firing.legs, hotterK);
  const separate = single
    ? mixed
    : joinWork(
        coats.map((coat) => meltWork(coat.curve, firing.legs, hotterK)),
        flowShares(coats.map(({ thicknessMm }) => thicknessMm)),
      );
  const { thicknessMm, plusMinusMm } = togetherMm(coats);
  const thicknesses = coats.map(({ thicknessMm }) => thicknessMm / 1000);
  const { low, high } = JUMP_NM;
  const mixing = single
    ? undefined
    : draws.even.jump.map((u, i) => {
        const jumpM = Math.exp(between({ low: Math.log(low), high: Math.log(high) }, u)) * 1e-9;
        return mixingLength(10 ** workAt(mixed, draws.viscosity[i]!), firing.peakC, jumpM);
      });
  return {
    curve,
    mixing,
    mixed,
    separate,
    mixedShare: (i) => (mixing ? mixedShare(mixing[i]!, thicknesses) : 1),
    thicknessM: thicknessMm / 1000,
    plusMinusM: plusMinusMm / 1000,
    densityKgPerM3: coats.reduce((sum, c) => sum + c.densityKgPerM3 * c.thicknessMm, 0) / thicknessMm,
    plusMinusK: firing.plusMinusK,
    recipeSd: recipeSdOf(coats, firing.peakC),
    solids,
  };
}
