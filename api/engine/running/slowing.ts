/** What slows a run, and by how much. @module */

import { viscosityCurve } from "../glass/index.ts";
import { middle90 } from "../numeric/quantiles.ts";
import { type Quantity, quantity, round, UNITS } from "../quantity.ts";
import { moleFractionsOf, type ReadCoat, withMore } from "./coats.ts";
import type { RunDraws } from "./draws.ts";
import { meltOf } from "./melt.ts";
import { SOLIDS_FIRST } from "./practice.ts";
import { simulateRun, type WallM } from "./simulate.ts";
import type { Timeline } from "./timeline.ts";
import type { Slowing } from "./types.ts";
import { mm } from "./words.ts";

/** How much each lever is moved. */
const THINNER = 0.8;
const COOLER_K = 10;
const ALUMINA_PERCENT = 1;
/** Soaks this near the peak count [K]. */
const NEAR_PEAK_K = 60;

/**
 * Levers in the order of what they do, each moved by a hand's breadth and worked out anew.
 * @param coats - from the clay outwards
 * @param firing - read
 * @param wall - in metres
 * @param run - as it stands [mm]
 */
export function slowingOf(
  coats: readonly ReadCoat[],
  firing: Timeline,
  wall: WallM,
  draws: RunDraws,
  run: Quantity,
): Slowing[] {
  const tried = (
    id: string,
    change: string,
    to: { coats?: readonly ReadCoat[]; firing?: Timeline; hotterK?: number },
  ) => {
    const melt = meltOf(to.coats ?? coats, to.firing ?? firing, SOLIDS_FIRST, draws, to.hotterK ?? 0);
    const { value, low, high } = middle90(simulateRun(melt, wall, draws).advance);
    const after = quantity(value * 1000, low * 1000, high * 1000, UNITS.length);
    const factor = run.value > 0.005 ? round((value * 1000) / run.value, 2) : 1;
    const text =
      run.value > 0.005
        ? `${change}: ${mm(after.value)} in place of ${mm(run.value)}, ${Math.round(100 * factor)} % of it.`
        : `${change}: it hardly runs as it is.`;
    return { id, change, factor, run: after, text };
  };
  const levers = [
    tried("thinner-coat", "A fifth less glaze", { coats: coats.map(thinner) }),
    tried("cooler", `${COOLER_K}\u00a0°C cooler`, { hotterK: -COOLER_K }),
    tried("more-alumina", `${ALUMINA_PERCENT} % more alumina by weight in the fired glaze`, {
      coats: coats.map(stiffer),
    }),
  ];
  const soaks = firing.legs.some((leg) => isSoak(leg, firing.peakC));
  if (soaks) {
    const legs = firing.legs.map((leg) => (isSoak(leg, firing.peakC) ? { ...leg, seconds: leg.seconds / 2 } : leg));
    levers.push(tried("shorter-soak", "Half the soak", { firing: { ...firing, legs } }));
  }
  return levers.sort((a, b) => a.factor - b.factor);
}

function isSoak({ fromC, toC }: { fromC: number; toC: number }, peakC: number): boolean {
  return fromC === toC && toC > peakC - NEAR_PEAK_K;
}

function thinner(coat: ReadCoat): ReadCoat {
  return { ...coat, thicknessMm: coat.thicknessMm * THINNER, plusMinusMm: coat.plusMinusMm * THINNER };
}

/** The coat with more alumina and the rest scaled down: clay in place of some of everything. */
function stiffer(coat: ReadCoat): ReadCoat {
  const weightPercent = withMore(coat.chemistry.fired.weightPercent, "Al2O3", ALUMINA_PERCENT);
  const moleFractions = moleFractionsOf(weightPercent);
  const fired = { ...coat.chemistry.fired, weightPercent };
  return {
    ...coat,
    chemistry: { ...coat.chemistry, fired, moleFractions },
    curve: viscosityCurve(moleFractions),
  };
}
