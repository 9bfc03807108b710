/** How far a glaze runs: the wall before and after, and viscosity along the firing. @module */
import type { RunningReport } from "../../running/types.ts";
import { Sheet } from "../marks/sheet.ts";
import type { PictureOptions } from "../types.ts";
import { drawMelt } from "./melt-chart.ts";
import { drawWalls } from "./walls.ts";

/**
 * The lower edge of the coat before and after the firing, to scale where a coat can be seen so, with the interval of its
 * run; beside it the viscosity along the firing with its 90 % band.
 * @param report - the answer
 * @param options - theme, width [px]
 * @returns SVG text with title and description
 * @example runningPicture(estimateRunning(question))
 */
export function runningPicture(report: RunningReport, options: PictureOptions = {}): string {
  const sheet = new Sheet(options);
  const { width, narrow } = sheet;
  const edge = narrow ? 4 : 6;
  const tall = { 980: 320, 720: 280, 350: 240 }[width];
  if (narrow) {
    const end = drawWalls(sheet, report, { left: edge, top: 0, width: width - 2 * edge, tall });
    const last = drawMelt(sheet, report, { left: edge, top: end + 18, width: width - 2 * edge, tall });
    return sheet.finish(last + 4, "running", told(report, sheet));
  }
  const share = Math.round(width * 0.4);
  const ends = [
    drawWalls(sheet, report, { left: edge, top: 0, width: share - 20, tall }),
    drawMelt(sheet, report, { left: share + 10, top: 0, width: width - share - 10 - edge, tall }),
  ];
  return sheet.finish(Math.max(...ends) + 4, "running", told(report, sheet));
}

function told(
  { headline, run, roll, thickness, wall, viscosityAtPeak, firing, refiring }: RunningReport,
  sheet: Sheet,
) {
  const description = [
    `A coat of ${thickness.value} mm on a wall sloping ${wall.slopeDeg}°, before and after the firing: its lower edge runs ${run.value} mm, 9 in 10 between ${run.low} and ${run.high} mm, behind a roll ${roll.value} mm thick.`,
    `Peak ${sheet.exactly(firing.peak.value)}, where the logarithm of the viscosity in pascal seconds is ${viscosityAtPeak.value}, 9 in 10 between ${viscosityAtPeak.low} and ${viscosityAtPeak.high}.`,
    `Runny enough to flow for ${firing.meltMinutes.value} minutes.`,
    `After a second firing the edge stands ${refiring.run.value} mm below where it was put.`,
  ].join(" ");
  return { title: sheet.lengths(headline), description: sheet.lengths(description) };
}
