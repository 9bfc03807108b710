/** The pull: where this glaze sits between lifting and cracking. @module */
import type { FitReport } from "../../fit/types.ts";
import { signed } from "../../fit/words.ts";
import { clayFill } from "../marks/fills.ts";
import { Sheet } from "../marks/sheet.ts";
import type { PictureOptions, Trial } from "../types.ts";
import { aimBracket } from "./aim.ts";
import { binCases } from "./bins.ts";
import { crowdHeight, crowdOf, drawCrowd } from "./cases.ts";
import { placeLabels } from "./labels.ts";
import { aimOf, linesOf, stressScale } from "./scale.ts";
import { drawSkin } from "./skin.ts";
import { drawAxis, drawInterval, drawTrials } from "./under.ts";

/**
 * The scale of stress from squeezed (left) to pulled (right), always −200 to +80 MPa. The strip is the glaze itself as it
 * would look at each stress; the hill is how likely each stress is, the rings its twenty equal slices; thresholds are
 * those of this thickness; the bracket is the stress that clears both risks.
 * @param report - the answer to a fit
 * @param options - theme, width [px], trials as lettered pins [MPa]
 * @returns SVG text with title and description
 * @example verdictPicture(checkFit(question), { theme: "dark", width: 350 })
 */
export function verdictPicture(
  report: FitReport,
  options: PictureOptions & { trials?: readonly Trial[] } = {},
): string {
  const sheet = new Sheet(options);
  const { narrow, width, size } = sheet;
  const margin = narrow ? 4 : 6;
  const scale = stressScale(margin, width - margin);
  const lines = linesOf(report);
  const drawn = Object.values(report.thresholds).map(({ value }) => value);
  const skin = narrow ? 14 : 20;
  const clay = narrow ? 28 : 40;
  const tallest = narrow ? 84 : 132;
  const crowd = crowdOf(report, binCases(report.stress.cases, drawn, scale, narrow ? 10.5 : 21, tallest));
  const aim = aimBracket(sheet, report, crowd, scale);

  const labels = placeLabels(
    sheet,
    report,
    scale,
    (from, to) => {
      const crowded = crowdHeight(crowd, scale, from, to);
      const aimed = aim && aim.from < to && aim.to > from ? aim.high + size * 2 : 0;
      return Math.max(crowded > 0 ? crowded + 10 : 0, aimed, 14);
    },
    crowd.beyond,
  );
  const rise = Math.max(labels.rise, crowd.rise + 8, (aim?.high ?? 0) + size + 12);
  const ground = Math.ceil(rise + 6);
  // Lifting glaze stands up from the clay: rings and hill give way to it.
  const lip = crowdHeight(crowd, scale, scale.left, scale.x(lines.lift)) > 6 ? skin * 0.85 : 3;
  const under = Math.ceil(ground + lip + skin);
  const foot = under + clay;

  sheet.rect(scale.left, under, scale.right - scale.left, clay, { fill: clayFill(sheet) });
  drawSkin(sheet, scale, lines, under, skin);
  drawCrowd(sheet, crowd, scale, lines, ground);
  aim?.draw(ground);
  labels.draw(ground, foot);
  const pins = drawTrials(sheet, options.trials ?? [], scale, foot);
  const interval = drawInterval(sheet, report, scale, foot + pins + 4);
  const height = drawAxis(sheet, scale, foot, foot + pins + interval + 6);
  return sheet.finish(height, "verdict", told(report, options.trials ?? [], sheet));
}

function told(report: FitReport, trials: readonly Trial[], sheet: Sheet): { title: string; description: string } {
  const { stress, thresholds, headline } = report;
  const count = (outcome: string) => stress.cases.filter((each) => each.outcome === outcome).length;
  const aim = aimOf(report);
  const pins = trials.map(({ letter, stressMPa }) => `${letter} ${signed(stressMPa)}`);
  const description = [
    `Stress in the glaze at ${sheet.exactly(20)}, drawn from −200 megapascal, squeezed, on the left, to +80, pulled, on the right.`,
    `This glaze: ${signed(stress.value)} MPa, 9 in 10 between ${signed(stress.low)} and ${signed(stress.high)}.`,
    `It can crack in time above ${signed(thresholds.mayCrackInTime.value)} and cracks as it cools above ${signed(thresholds.cracksOnCooling.value)};`,
    `edges may lift below ${signed(thresholds.edgesMayLift.value)} and flakes come off below ${signed(thresholds.flakesComeOff.value)}.`,
    aim ? `Aim for ${signed(aim[0])} to ${signed(aim[1])}.` : "At this thickness no stress is clear of both risks.",
    `Of 20 equally likely cases ${count("crazesOnCooling")} crack as the kiln cools, ${count("crazesLater")} in time, ${count("sound")} hold and ${count("shivers")} shiver.`,
    ...(pins.length > 0 ? [`Trials: ${pins.join(", ")} MPa.`] : []),
  ].join(" ");
  return { title: headline, description };
}
