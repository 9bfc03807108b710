/** A shrinkage ready to throw by, however it is known. @module */
import { findBody } from "../body/classes.ts";
import type { Notice } from "../errors.ts";
import { Faults, type LengthUnit } from "../lengths/index.ts";
import { round } from "../quantity.ts";
import { totalShrinkage } from "./definitions.ts";
import { measureShrinkage } from "./measure-shrinkage.ts";
import { DRYING_BY_CLASS, DRYING_SHARE, PIECE_SD, STATED_PLUS_MINUS } from "./practice.ts";
import type { KnownShrinkage, Share, ShrinkageInput, ShrinkageReport } from "./types.ts";

/** Total shrinkage that is remarked on [%]. */
const UNUSUAL = 20;
/** Largest that is believed [%]. */
const MOST = 50;

/**
 * Total and drying shrinkage, across and up, with intervals.
 * @param input - stated per cent, drying and firing, measured bars, or the class of the clay
 * @param unit - unit of bar lengths that name none
 * @returns shares of plastic length [-]
 * @throws ImpossibleValueError with pointers into `input`
 * @example knownShrinkage({ percent: 12, plusMinus: 0.5 }).across // { value: 0.12, low: 0.115, high: 0.125 }
 */
export function knownShrinkage(input: ShrinkageInput, unit?: LengthUnit): KnownShrinkage {
  const faults = new Faults();
  const warnings: Notice[] = [];
  if ("bars" in input) {
    return fromBars(
      measureShrinkage({
        bars: input.bars,
        ...(input.readTo === undefined ? {} : { readTo: input.readTo }),
        ...(unit ? { unit } : {}),
      }),
      faults,
    );
  }
  if ("class" in input) return fromClass(input.class, faults);
  const parted = "firingPercent" in input && input.firingPercent !== undefined;
  if (parted) {
    const { dryingPercent, firingPercent } = input;
    shrinks(dryingPercent, "/dryingPercent", "Drying shrinkage", faults);
    faults.number(firingPercent, "/firingPercent", "Firing shrinkage", { from: -2, to: MOST, unit: "%" });
    if (firingPercent > 0 && firingPercent < 0.3) {
      const message = `Firing shrinkage of ${firingPercent} % is tiny. I took it as written; write ${round(100 * firingPercent, 1)} if it is a share.`;
      warnings.push({ code: "tiny-shrinkage", message, pointer: "/firingPercent" });
    }
  } else shrinks((input as { percent: number }).percent, "/percent", "Shrinkage", faults);
  const { plusMinus, dryingPercent, heightPercent } = input as {
    plusMinus?: number;
    dryingPercent?: number;
    heightPercent?: number;
  };
  const percent = parted
    ? 100 * totalShrinkage(input.dryingPercent / 100, input.firingPercent / 100)
    : (input as { percent: number }).percent;
  if (plusMinus !== undefined)
    faults.number(plusMinus, "/plusMinus", "Give or take", { from: 0, to: 10, unit: "points" });
  if (heightPercent !== undefined) shrinks(heightPercent, "/heightPercent", "Shrinkage of height", faults);
  if (dryingPercent !== undefined && !parted) {
    shrinks(dryingPercent, "/dryingPercent", "Drying shrinkage", faults);
    if (dryingPercent > percent + 2) {
      faults.add(
        "/dryingPercent",
        `Drying takes ${dryingPercent} % and all together only ${percent} %. Were the two swapped?`,
      );
    }
  }
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
  const drying =
    dryingPercent === undefined
      ? dryingOf(percent / 100)
      : share(dryingPercent, Math.min(half, dryingPercent / 5 + 0.2));
  return {
    across: share(percent, half),
    up: share(heightPercent ?? percent, half),
    drying,
    pieceSd: PIECE_SD / 100,
    from: `${round(percent, 2)} % as stated, give or take ${half}`,
    warnings,
    sources: ["astm-c326", "clay-practice", ...(dryingPercent === undefined ? ["shrinkage-ranges"] : [])],
  };
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

function dryingOf(total: number): Share {
  return { value: total * DRYING_SHARE.value, low: total * DRYING_SHARE.low, high: total * DRYING_SHARE.high };
}

function fromBars(report: ShrinkageReport, faults: Faults): KnownShrinkage {
  const { total, drying, byDirection, sources, warnings } = report;
  if (!total) {
    faults.add("/bars", "These bars were measured plastic and dry alone. Sizes need at least one measured fired.");
    faults.throwIfAny();
  }
  const of = (figure: NonNullable<typeof total>): Share => {
    const { value, low, high } = figure.nextPiece;
    return { value: value / 100, low: Math.max(0, low) / 100, high: high / 100 };
  };
  const across = of(total!);
  const height = byDirection.find(({ direction }) => direction === "height")?.total;
  return {
    across,
    up: height ? of(height) : across,
    drying: drying ? of(drying) : dryingOf(across.value),
    pieceSd: total!.spread ? total!.spread.value / 100 : PIECE_SD / 100,
    from: `${round(total!.mean.value, 1)} % from ${total!.bars} ${total!.bars === 1 ? "bar" : "bars"} of yours`,
    warnings,
    sources: drying ? sources : [...sources, "shrinkage-ranges"],
  };
}

function fromClass(id: string, faults: Faults): KnownShrinkage {
  const body = findBody(id);
  const span = body.totalShrinkagePercent;
  if (!span) {
    faults.add("/class", `I have no shrinkage for ${body.name}. Give the per cent on its sheet, or measured bars.`);
    faults.throwIfAny();
  }
  const [low, high] = span!;
  const across = { value: (low + high) / 200, low: low / 100, high: high / 100 };
  const dry = DRYING_BY_CLASS[id];
  const message = `${low} to ${high} % is the range of the class, ${body.name}. Your own clay is one figure in it: measure bars before you throw a set.`;
  return {
    across,
    up: across,
    drying: dry ? { value: (dry[0] + dry[1]) / 200, low: dry[0] / 100, high: dry[1] / 100 } : dryingOf(across.value),
    pieceSd: PIECE_SD / 100,
    from: `${low} to ${high} %, the range of ${body.name}`,
    warnings: [{ code: "shrinkage-by-class", message, pointer: "/class" }],
    sources: [...body.sources, "shrinkage-ranges", "clay-practice"],
  };
}
