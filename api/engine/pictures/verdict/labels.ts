/** Words for the thresholds, set at staggered heights so that none meets another, a line or the hill. @module */
import type { FitReport } from "../../fit/types.ts";
import { inWords, signed } from "../../fit/words.ts";
import { arrow } from "../marks/fills.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import type { Tint } from "../marks/theme.ts";
import type { Columns } from "./bins.ts";
import { bestOf, type Placed, type Skyline, type Threshold } from "./label-places.ts";
import type { StressScale } from "./scale.ts";

/**
 * Finds a side and a height for every label, and draws labels and lines.
 * @param ground - top of the strip [px, from the top of an unshifted picture]
 * @param foot - where the lines end [px]
 * @returns how far the highest label rises above the ground [px]
 */
export function placeLabels(
  sheet: Sheet,
  report: FitReport,
  scale: StressScale,
  skyline: Skyline,
  beyond: Columns["beyond"],
) {
  const step = sheet.narrow ? 20 : 22;
  const tall = sheet.size * 2 + 8;
  const all = [...thresholdsOf(sheet, report, scale), ...furthestOf(sheet, beyond, scale)];
  const best = bestOf(all, scale, skyline, step, tall);
  const rise = Math.max(0, ...best.map(({ tier }) => tier * step + tall));
  const draw = (ground: number, foot: number) => {
    for (const label of best) drawLabel(sheet, label, ground - label.tier * step - tall, foot);
  };
  return { rise, draw };
}

function thresholdsOf(sheet: Sheet, { thresholds }: FitReport, scale: StressScale): Threshold[] {
  const words = sheet.narrow
    ? { flakes: "flakes", lift: "edges lift", later: "in time", once: "cracks" }
    : {
        flakes: "flakes come off",
        lift: "edges may start to lift",
        later: "may crack in time",
        once: "cracks as it cools",
      };
  const rows: [number, string, Tint][] = [
    [thresholds.flakesComeOff.value, words.flakes, "push"],
    [thresholds.edgesMayLift.value, words.lift, "push"],
    [thresholds.mayCrackInTime.value, words.later, "pull"],
    [thresholds.cracksOnCooling.value, words.once, "pull"],
  ];
  return rows.map(([mpa, meaning, tint]) => {
    const at = scale.x(mpa);
    const beyond = at < scale.left ? -1 : at > scale.right ? 1 : 0;
    const width = Math.max(
      textWidth(signed(mpa), sheet.size, true) + (beyond ? 16 : 0),
      textWidth(meaning, sheet.size),
    );
    const x = beyond ? (beyond < 0 ? scale.left : scale.right) : at;
    return { mpa, x, beyond, words: [signed(mpa), meaning], tint, width };
  });
}

/** Words for the cases that lie beyond the ends of the scale. */
function furthestOf(sheet: Sheet, { left, right }: Columns["beyond"], scale: StressScale): Threshold[] {
  const ends: [-1 | 1, number, typeof left][] = [
    [-1, scale.left, left],
    [1, scale.right, right],
  ];
  return ends
    .filter(([, , cases]) => cases.length > 0)
    .map(([beyond, x, cases]) => {
      const mpa = cases.reduce((a, b) => (Math.abs(b.stressMPa) > Math.abs(a.stressMPa) ? b : a)).stressMPa;
      const words: [string, string] = [signed(mpa), `${inWords(cases.length)} beyond`];
      const width = Math.max(textWidth(words[0], sheet.size, true) + 16, textWidth(words[1], sheet.size));
      return { mpa, x, beyond, words, tint: "ink", width };
    });
}

function drawLabel(sheet: Sheet, label: Placed, top: number, foot: number): void {
  const { x, side, words, tint, beyond, from, to } = label;
  const { size } = sheet;
  const anchor = side > 0 ? "start" : "end";
  const at = side > 0 ? from : to;
  if (beyond) sheet.path(arrow(at + side * 6, top + size * 0.65, beyond), { stroke: tint, width: 1.5 });
  else sheet.path(`M${px(x)} ${px(top)}V${px(foot)}`, { stroke: "ink", width: 1.25 });
  sheet.text(at + (beyond ? side * 16 : 0), top + size, words[0], { size, bold: true, tint, anchor });
  sheet.text(at, top + size * 2 + 3, words[1], { size, tint: "ink2", anchor });
}
