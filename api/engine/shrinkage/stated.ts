/** Shrinkages as stated: in total, or in two steps. @module */
import type { Notice } from "../errors.ts";
import { Faults } from "../lengths/index.ts";
import { round } from "../quantity.ts";
import { totalShrinkage } from "./definitions.ts";
import { DRYING_SHARE, PIECE_SD, STATED_PLUS_MINUS } from "./practice.ts";
import type { KnownShrinkage, Share, StatedShrinkage, StepwiseShrinkage } from "./types.ts";

/** Total shrinkage that is remarked on [%]. */
const UNUSUAL = 20;
/** Largest that is believed [%]. */
const MOST = 50;
/** Firing shrinkage below which a share may have been written for a per cent [%]; low fires do shrink so little. */
const TINY = 0.3;

/**
 * Reads a stated shrinkage.
 * @returns shares of plastic length [-]; drying is taken from common practice where it is not stated
 * @throws ImpossibleValueError with pointers into `input`
 */
export function statedShrinkage(input: StatedShrinkage | StepwiseShrinkage): KnownShrinkage {
  const faults = new Faults();
  const warnings: Notice[] = [];
  const { plusMinus, heightPercent, dryingPercent } = input;
  const percent = "percent" in input ? readTotal(input, faults) : readSteps(input, faults, warnings);
  if (plusMinus !== undefined) {
    faults.number(plusMinus, "/plusMinus", "Give or take", { from: 0, to: 10, unit: "points" });
  }
  if (heightPercent !== undefined) shrinks(heightPercent, "/heightPercent", "Shrinkage of height", faults);
  faults.throwIfAny();
  if (plusMinus === undefined) {
    const message = `No give or take was stated for the shrinkage. I took ±${STATED_PLUS_MINUS} point; measured bars would tell.`;
    warnings.push({ code: "tolerance-assumed", message });
  }
  if (percent > UNUSUAL) {
    const message = `${round(percent, 1)} % is a great deal of shrinkage. Only very fine or very wet clays reach it.`;
    warnings.push({ code: "large-shrinkage", message });
  }
  const half = plusMinus ?? STATED_PLUS_MINUS;
  return {
    across: share(percent, half),
    up: share(heightPercent ?? percent, half),
    // Drying is known no worse than in proportion to the whole.
    drying:
      dryingPercent === undefined
        ? usualDrying(percent / 100)
        : share(dryingPercent, Math.min(half, dryingPercent / 5 + 0.2)),
    pieceSd: PIECE_SD / 100,
    from: `${round(percent, 2)} % as stated, give or take ${half}`,
    warnings,
    sources: ["astm-c326", "clay-practice", ...(dryingPercent === undefined ? ["shrinkage-ranges"] : [])],
  };
}

/** Drying's usual part of a total [-]. */
export function usualDrying(total: number): Share {
  return { value: total * DRYING_SHARE.value, low: total * DRYING_SHARE.low, high: total * DRYING_SHARE.high };
}

function readTotal({ percent, dryingPercent }: StatedShrinkage, faults: Faults): number {
  shrinks(percent, "/percent", "Shrinkage", faults);
  if (dryingPercent === undefined) return percent;
  shrinks(dryingPercent, "/dryingPercent", "Drying shrinkage", faults);
  // Two points of growth in the kiln are still believed.
  if (dryingPercent > percent + 2) {
    const message = `Drying takes ${dryingPercent} % and all together only ${percent} %. Were the two swapped?`;
    faults.add("/dryingPercent", message);
  }
  return percent;
}

function readSteps({ dryingPercent, firingPercent }: StepwiseShrinkage, faults: Faults, warnings: Notice[]): number {
  shrinks(dryingPercent, "/dryingPercent", "Drying shrinkage", faults);
  faults.number(firingPercent, "/firingPercent", "Firing shrinkage", { from: -2, to: MOST, unit: "%" });
  if (firingPercent > 0 && firingPercent < TINY) {
    const message = `Firing shrinkage of ${firingPercent} % is tiny. I took it as written; write ${round(100 * firingPercent, 1)} if it is a share.`;
    warnings.push({ code: "tiny-shrinkage", message, pointer: "/firingPercent" });
  }
  return 100 * totalShrinkage(dryingPercent / 100, firingPercent / 100);
}

/** Keeps an issue where a shrinkage cannot be; asks where a fraction was probably written for a per cent. */
function shrinks(percent: number, pointer: string, what: string, faults: Faults): void {
  if (percent > 0 && percent < 1) {
    const meant = round(100 * percent, 3);
    const message = `${what} of ${percent} % is hardly any. Did you mean ${meant} %? Write ${meant}: this field is in per cent.`;
    faults.add(pointer, message, { suggestion: String(meant), allowed: [`0, or 1 to ${MOST} %`] });
  } else if (percent >= 100) {
    const message = `${what} of ${percent} % would leave nothing of the pot. Clays lose 5 to 18 %.`;
    faults.add(pointer, message, { allowed: [`0, or 1 to ${MOST} %`] });
  } else if (percent < 0) {
    faults.add(pointer, `${what} of ${percent} %: clay does not grow from wet to fired. Leave the minus out.`);
  } else faults.number(percent, pointer, what, { from: 0, to: MOST, unit: "%" });
}

const share = (percent: number, half: number): Share => ({
  value: percent / 100,
  low: Math.max(0, percent - half) / 100,
  high: (percent + half) / 100,
});
