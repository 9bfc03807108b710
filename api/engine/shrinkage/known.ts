/** A shrinkage ready to throw by, however it is known. @module */
import { findBody } from "../body/classes.ts";
import { Faults, type LengthUnit } from "../lengths/index.ts";
import { round } from "../quantity.ts";
import { measureShrinkage } from "./measure-shrinkage.ts";
import { DRYING_BY_CLASS, PIECE_SD } from "./practice.ts";
import { statedShrinkage, usualDrying } from "./stated.ts";
import type { KnownShrinkage, Share, ShrinkageInput, ShrinkageReport } from "./types.ts";

/**
 * Total and drying shrinkage, across and up, with intervals.
 * @param input - stated per cent, drying and firing, measured bars, or the class of the clay
 * @param unit - unit of bar lengths that name none
 * @returns shares of plastic length [-]
 * @throws ImpossibleValueError with pointers into `input`
 * @example knownShrinkage({ percent: 12, plusMinus: 0.5 }).across // { value: 0.12, low: 0.115, high: 0.125 }
 */
export function knownShrinkage(input: ShrinkageInput, unit?: LengthUnit): KnownShrinkage {
  if ("class" in input) return fromClass(input.class);
  return "bars" in input ? fromBars(measureShrinkage({ ...input, unit })) : statedShrinkage(input);
}

function fromBars(report: ShrinkageReport): KnownShrinkage {
  const { total, drying, byDirection, sources, warnings } = report;
  const faults = new Faults();
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
    drying: drying ? of(drying) : usualDrying(across.value),
    pieceSd: total!.spread ? total!.spread.value / 100 : PIECE_SD / 100,
    from: `${round(total!.mean.value, 1)} % from ${total!.bars} ${total!.bars === 1 ? "bar" : "bars"} of yours`,
    warnings,
    sources: drying ? sources : [...sources, "shrinkage-ranges"],
  };
}

function fromClass(id: string): KnownShrinkage {
  const body = findBody(id);
  const faults = new Faults();
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
    drying: dry ? { value: (dry[0] + dry[1]) / 200, low: dry[0] / 100, high: dry[1] / 100 } : usualDrying(across.value),
    pieceSd: PIECE_SD / 100,
    from: `${low} to ${high} %, the range of ${body.name}`,
    warnings: [{ code: "shrinkage-by-class", message, pointer: "/class" }],
    sources: [...body.sources, "shrinkage-ranges", "clay-practice"],
  };
}
