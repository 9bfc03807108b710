/** Cooling: how glaze and clay shrink from the set point to the bench. @module */
import type { FitReport } from "../../fit/types.ts";
import { signed } from "../../fit/words.ts";
import { Sheet } from "../marks/sheet.ts";
import type { PictureOptions } from "../types.ts";
import { Clearing } from "./clearing.ts";
import { drawCurves } from "./curves.ts";
import { drawFrame, frameOf } from "./frame.ts";
import { lengthsOf, stepsOf } from "./lengths.ts";
import { drawGap, drawSetPoint, drawSteps } from "./words.ts";

/**
 * Length of glaze and clay against temperature, hot left, cold right, counted from the set point, where the two lines
 * meet in a ring; above it the glaze is runny and rides the clay. Bands hold 9 in 10. Quartz and cristobalite steps carry
 * a leader; a lens shows the gap at 20 °C.
 * @param report - an answer with `curves`
 * @param options - theme, width [px]
 * @returns SVG text with title and description; without curves, a picture that says they are missing
 * @example expansionPicture(checkFit({ ...question, include: ["curves"] }))
 */
export function expansionPicture(report: FitReport, options: PictureOptions = {}): string {
  const sheet = new Sheet(options);
  const lengths = lengthsOf(report);
  if (!lengths) {
    const title = "The cooling curves were not asked for.";
    const description = "Ask for them with include: curves.";
    // Standing alone, the picture has its title above it already.
    sheet.text(6, 24, sheet.headed ? description : title, { size: sheet.size });
    return sheet.finish(40, "expansion", { title, description });
  }
  const frame = frameOf(sheet, lengths);
  drawFrame(sheet, frame);
  const clearing = new Clearing(frame, lengths);
  const { bottom, left } = frame;
  clearing.take({ left, right: left + 84, top: bottom - 8 - sheet.size, bottom });
  drawSetPoint(sheet, frame, report, clearing);
  drawCurves(sheet, frame, lengths);
  drawSteps(sheet, frame, lengths, stepsOf(report), clearing);
  drawGap(sheet, frame, lengths, report, clearing);
  return sheet.finish(frame.height, "expansion", told(report, sheet));
}

function told(report: FitReport, sheet: Sheet): { title: string; description: string } {
  const { mismatch, setPoint, glaze, body } = report;
  const gap = Math.abs(mismatch.value).toFixed(3);
  const title =
    Math.abs(mismatch.value) < 0.0005
      ? "Cold, glaze and clay come out the same length."
      : mismatch.value < 0
        ? `From where it sets, the glaze shrinks ${gap} % more than the clay will let it.`
        : `From where it sets, the clay shrinks ${gap} % more than the glaze and squeezes it.`;
  const steps = stepsOf(report).map(
    ({ name, c, percent }) => `Near ${sheet.exactly(c)} ${name} turns and the clay steps in ${percent.toFixed(2)} %.`,
  );
  const description = [
    "Length in per cent, counted from where the glaze sets, against temperature; hot on the left, cold on the right.",
    `The glaze sets near ${sheet.nearly(setPoint.value)}, 9 in 10 between ${sheet.nearly(setPoint.low)} and ${sheet.nearly(setPoint.high)}.`,
    `From there to ${sheet.exactly(20)} the glaze's mean expansion is ${glaze.expansionToSetPoint.value.toFixed(2)} ×10⁻⁶/K, the clay's ${body.expansionToSetPoint.value.toFixed(2)} ×10⁻⁶/K.`,
    `Clay's shrinkage less the glaze's: ${signed(mismatch.value, 3)} %, 9 in 10 between ${signed(mismatch.low, 3)} and ${signed(mismatch.high, 3)} %.`,
    ...steps,
  ].join(" ");
  return { title, description };
}
