/** The sample that the front page and the greeting show: Thaw on Larch Lane's red stoneware. @module */
import { checkFit } from "../engine/fit/index.ts";
import type { FitReport, Outcome } from "../engine/fit/types.ts";
import { RED_STONEWARE, THAW, THAW_ON_RED_STONEWARE } from "../schemas/larch-lane.ts";
import { plain } from "./say.ts";

/** The sample's answer, worked out now. */
export const sampleReport = (): FitReport => checkFit(THAW_ON_RED_STONEWARE);

/** The recipe in a line. */
export const sampleRecipe = THAW.recipe
  .map(({ material, parts }) => `${material.replaceAll("-", " ")} ${parts}`)
  .join(", ");

const { expansion } = RED_STONEWARE;
const { firing, ware } = THAW_ON_RED_STONEWARE;

/** What it is put on, in a line. */
export const sampleWare =
  `red stoneware whose sheet says ${plain(expansion.value)} ±${plain(expansion.plusMinus)} ×10⁻⁶/K from ` +
  `${expansion.rangeC[0]} to ${expansion.rangeC[1]} °C; fired to ${firing.peakC} °C, cooled at ` +
  `${firing.coolingCPerHour} °C an hour; wall ${ware.wallMm} mm, both faces glazed ${plain(THAW.thicknessMm)} mm thick`;

const WORDS: [Outcome, string][] = [
  ["crazesOnCooling", "crack as the kiln cools"],
  ["crazesLater", "crack in time"],
  ["sound", "hold"],
  ["shivers", "shiver"],
];

/** The twenty equally likely cases in words. */
export function sayCases({ stress: { cases } }: FitReport): string {
  const counted = WORDS.map(
    ([outcome, words]) => [cases.filter((one) => one.outcome === outcome).length, words] as const,
  );
  const told = counted.filter(([count]) => count > 0).map(([count, words]) => `${count} ${words}`);
  return `Of ${cases.length} equally likely cases, ${told.join(", ")}.`;
}

/** The reasons that tell most, leaving out the one that repeats the cases. */
export const tellingReasons = (report: FitReport): string[] =>
  report.reasons
    .filter((reason) => reason.code !== "cases")
    .slice(0, 3)
    .map((reason) => reason.text);
