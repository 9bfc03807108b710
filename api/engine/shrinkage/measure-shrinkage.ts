/** From measured bars to shrinkages that can be thrown by. @module */
import type { Notice } from "../errors.ts";
import { Faults, lengthReader } from "../lengths/index.ts";
import { quantity, round } from "../quantity.ts";
import { absorptionOf } from "./absorption.ts";
import { thrownLength } from "./definitions.ts";
import { shrinkageFigure } from "./figure.ts";
import { BARS_OF_THE_STANDARD, READ_TO_MM } from "./practice.ts";
import { type ReadBar, readBars } from "./read-bars.ts";
import { studentQuantile } from "./student-t.ts";
import type { Direction, ShrinkageFigure, ShrinkageReport, ShrinkageRequest, Shrinkages } from "./types.ts";

/** How near the mean is wanted unless the request says [points]. */
const WITHIN = 0.3;
const DIRECTIONS: readonly Direction[] = ["length", "diameter", "height"];

/**
 * Drying, firing and total shrinkage of measured bars.
 *
 * Drying and total are shares of plastic length, firing of dry length. Bars measured along or across give the top
 * figures; height, where measured, stands apart, because thrown clay shrinks differently upwards.
 * @param request - bars with their lengths in any units [mm, cm, in]
 * @returns means with 90 % intervals [%], spread [points], outliers, bars still wanted, absorption [%]
 * @throws ImpossibleValueError with every bar that cannot be, pointers into `request`
 * Sources: astm-c326, astm-c373, grubbs-1969.
 * @example measureShrinkage({ bars: [{ plastic: 100, dry: 94.2, fired: 87.9 }] }).total?.mean.value // 12.1
 */
export function measureShrinkage(request: ShrinkageRequest): ShrinkageReport {
  const faults = new Faults();
  const warnings: Notice[] = [];
  const read = lengthReader(request.unit, faults);
  const readTo = request.readTo === undefined ? READ_TO_MM : read(request.readTo, "/readTo", "The ruler's division");
  const within = request.withinPercent ?? WITHIN;
  if (request.withinPercent !== undefined) {
    faults.number(within, "/withinPercent", "How near", { from: 0.01, to: 5, unit: "points" });
  }
  const bars = readBars(request.bars, "/bars", read, faults, warnings);
  faults.throwIfAny();
  const flat = bars.filter(({ direction }) => direction !== "height");
  const byDirection = DIRECTIONS.flatMap((direction) => {
    const those = bars.filter((bar) => bar.direction === direction);
    return those.length > 0 ? [{ direction, ...shrinkagesOf(those, readTo, within) }] : [];
  });
  const main = shrinkagesOf(flat.length > 0 ? flat : bars, readTo, within);
  const soaked = bars.flatMap(({ soaked }) => soaked ?? []);
  remark(bars, main, warnings);
  const outliers = [main.drying, main.firing, main.total].some((figure) => figure && figure.outliers.length > 0);
  return {
    headline: headline(main, request.peakC),
    ...main,
    byDirection,
    heightLessWidth: heightLessWidth(bars, readTo),
    absorption: absorptionOf(soaked),
    bars: bars.map(({ name, direction, plasticMm, drying, firing, total, soaked }) => ({
      name,
      direction,
      plasticMm: round(plasticMm, 3),
      dryingPercent: percent(drying),
      firingPercent: percent(firing),
      totalPercent: percent(total),
      absorptionPercent: soaked && round(soaked.absorption, 2),
    })),
    warnings,
    cautions: [],
    sources: [
      "astm-c326",
      ...(soaked.length > 0 ? ["astm-c373", "iso-13006"] : []),
      ...(outliers ? ["grubbs-1969"] : []),
      "clay-practice",
    ],
  };
}

const percent = (share: number | null): number | null => (share === null ? null : round(100 * share, 2));

/** What the ruler leaves open in one shrinkage: two readings, each even over one division [points]. */
function readingSd(bars: readonly ReadBar[], readTo: number): number {
  const meanLength = bars.reduce((sum, { plasticMm }) => sum + plasticMm, 0) / bars.length;
  return (100 * readTo * Math.sqrt(2 / 12)) / meanLength;
}

function shrinkagesOf(bars: readonly ReadBar[], readTo: number, within: number): Shrinkages {
  const figure = (key: "drying" | "firing" | "total", basis: ShrinkageFigure["basis"], what: string) => {
    const those = bars.filter((bar) => bar[key] !== null);
    const readings = those.map((bar) => ({ name: bar.name, percent: 100 * bar[key]! }));
    return those.length > 0 ? shrinkageFigure(readings, basis, readingSd(those, readTo), within, what) : null;
  };
  return {
    drying: figure("drying", "plastic length", "Drying shrinkage"),
    firing: figure("firing", "dry length", "Firing shrinkage"),
    total: figure("total", "plastic length", "Total shrinkage"),
  };
}

/** Welch's interval for the difference of two means. */
function heightLessWidth(bars: readonly ReadBar[], readTo: number): ShrinkageReport["heightLessWidth"] {
  const side = (up: boolean) => {
    const those = bars.filter((bar) => (bar.direction === "height") === up && bar.total !== null);
    const n = those.length;
    const mean = those.reduce((sum, bar) => sum + 100 * bar.total!, 0) / n;
    const variance = those.reduce((sum, bar) => sum + (100 * bar.total! - mean) ** 2, 0) / Math.max(1, n - 1);
    return { n, mean, error: n > 0 ? Math.max(variance, readingSd(those, readTo) ** 2) / n : 0 };
  };
  const [up, across] = [side(true), side(false)];
  if (up.n < 2 || across.n < 2) return null;
  const error = up.error + across.error;
  const freedom = error ** 2 / (up.error ** 2 / (up.n - 1) + across.error ** 2 / (across.n - 1));
  const half = studentQuantile(0.95, freedom) * Math.sqrt(error);
  const difference = quantity(
    up.mean - across.mean,
    up.mean - across.mean - half,
    up.mean - across.mean + half,
    "points",
  );
  const sure = difference.low > 0 || difference.high < 0;
  const more = difference.value > 0 ? "more" : "less";
  const message = sure
    ? `Height shrinks ${Math.abs(round(difference.value, 1))} points ${more} than width. Give both when you ask for sizes.`
    : "Height and width shrink alike, as far as these bars can tell.";
  return { difference, message };
}

function remark(bars: readonly ReadBar[], { total }: Shrinkages, warnings: Notice[]): void {
  const names = bars.map(({ name }) => name);
  if (new Set(names).size < names.length) {
    warnings.push({
      code: "same-name",
      message: "Two bars bear one name, so an outlier may be told wrongly.",
      pointer: "/bars",
    });
  }
  if (total?.bars === 1) {
    const message = "One bar shows no spread. I took 0.3 points from piece to piece; measure more to know yours.";
    warnings.push({ code: "single-bar", message, pointer: "/bars" });
  } else if (bars.length < BARS_OF_THE_STANDARD) {
    const message = `ASTM C326 asks for ${BARS_OF_THE_STANDARD} bars; these are ${bars.length}. The interval shows what that costs.`;
    warnings.push({ code: "fewer-than-standard", message, pointer: "/bars" });
  }
}

function headline({ drying, total }: Shrinkages, peakC: number | undefined): string {
  if (!total) return `This clay loses ${round(drying!.mean.value, 1)} % of its length as it dries.`;
  const { value, low, high } = total.mean;
  const fired = peakC === undefined ? "fired" : `fired at ${peakC} °C`;
  return (
    `This clay loses ${round(value, 1)} % from wet to ${fired} (${round(low, 1)} to ${round(high, 1)} %, nine times in ten): ` +
    `throw ${round(thrownLength(100, value / 100), 1)} mm for 100 mm fired.`
  );
}
