/** The words of the cooling picture, each where no line runs. @module */
import type { FitReport } from "../../fit/types.ts";
import { celsius } from "../../fit/words.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import type { Tint } from "../marks/theme.ts";
import { drawCurves } from "./curves.ts";
import type { Frame } from "./frame.ts";
import { type Lengths, lengthAt, type Step } from "./lengths.ts";
import { drawLens, type Gap, placeLens } from "./lens.ts";

/** The shaded range of the set point, and the words beside its ring. */
export function drawSetPoint(sheet: Sheet, frame: Frame, { setPoint }: FitReport): void {
  const { x, y, top, bottom, left, right } = frame;
  const [from, to] = [Math.max(x(setPoint.high), left), Math.min(x(setPoint.low), right)];
  if (to > from) sheet.rect(from, top, to - from, bottom - top, { fill: "ink", opacity: 0.07 });
  const { size } = sheet;
  const words = `9 in 10 between ${Math.round(setPoint.low / 5) * 5} and ${Math.round(setPoint.high / 5) * 5}`;
  const at = Math.min(Math.max(x(setPoint.value) + 13, left + 4), right - textWidth(words, size));
  sheet.text(at, top + size, `${celsius(setPoint.value)}: the skin sets`, { size, bold: true });
  sheet.text(at, top + size * 2 + 3, words, { size, tint: "ink2" });
  sheet.path(`M${px(x(setPoint.value))} ${px(top + 2)}V${px(y(0) - 6)}`, { stroke: "ink" });
}

/** The ring where the lines meet, and leaders from the steps of the clay down to their words. */
export function drawSteps(sheet: Sheet, frame: Frame, lengths: Lengths, steps: readonly Step[]): void {
  const { x, y } = frame;
  const { size } = sheet;
  sheet.circle(x(lengths.setC), y(0), 5.5, { stroke: "ink", width: 2, fill: "sheet" });
  let taken = Number.NEGATIVE_INFINITY;
  for (const { name, c, percent } of steps) {
    const first = sheet.narrow ? `${name} turns` : `${c} °C: ${name} turns,`;
    const shift = `${percent.toFixed(2)}\u00a0%`;
    const soft = sheet.narrow ? "glaze still soft" : "while the glaze is soft";
    const second = c > lengths.setC ? soft : sheet.narrow ? `${shift} at ${c} °C` : `the clay steps in ${shift}`;
    const width = Math.max(textWidth(first, size, true), textWidth(second, size));
    const at = x(c);
    const start = Math.max(frame.left + 4, at - width);
    const top = freeBelow(frame, lengths, start, Math.max(start + width, at), size);
    if (top === undefined || start < taken) continue;
    taken = start + width + 12;
    sheet.path(`M${px(at)} ${px(y(lengthAt(lengths.body, c)) + 4)}V${px(top - 3)}`, { stroke: "ink" });
    sheet.text(start, top + size, first, { size, bold: true });
    sheet.text(start, top + size * 2 + 3, second, { size, tint: "ink2" });
  }
}

/** Highest place for two lines of words under everything drawn between two abscissas; undefined where there is none. */
function freeBelow({ x, y, bottom }: Frame, { glaze, body }: Lengths, from: number, to: number, size: number) {
  let top = 0;
  for (const { c, percent, below } of [...glaze, ...body]) {
    if (x(c) > from - 24 && x(c) < to + 24) top = Math.max(top, y(percent - below));
  }
  // The last line of the picture belongs to the word "cooling".
  return top + size * 3 + 34 > bottom - size ? undefined : top + 26;
}

/** The gap at 20 °C: through the lens, or by a plain bracket where it is wide enough to see. */
export function drawGap(sheet: Sheet, frame: Frame, lengths: Lengths, report: FitReport): void {
  const { x, y, right, top, bottom } = frame;
  const { size } = sheet;
  const gap: Gap = { x: x(20), clay: y(lengths.body[0]!.percent), glaze: y(lengths.glaze[0]!.percent) };
  const tint: Tint = report.verdict === "sound" ? "hold" : report.mismatch.value < 0 ? "pull" : "push";
  const words = `gap at 20 °C: ${Math.abs(report.mismatch.value).toFixed(3)}\u00a0%`;
  const curves = [...lengths.glaze, ...lengths.body];
  const free = (at: number) =>
    Math.min(...curves.filter(({ c }) => Math.abs(x(c) - at) < 24).map(({ percent, above }) => y(percent + above)));
  const head = top + size * 2 + 14;
  const end = right + 8;
  const write = (base: number) => sheet.text(end, base, words, { size, bold: true, tint, anchor: "end", halo: true });

  const lens = placeLens(gap, head + size * 2 + 12, end, sheet.narrow ? 56 : 84, free);
  if (lens) {
    write(head + size);
    const times = `drawn ${lens.power} times as large`;
    sheet.text(end, head + size * 2 + 3, times, { size, tint: "ink2", anchor: "end" });
    drawLens(sheet, lens, gap, tint, (clip, power, dx, dy) =>
      drawCurves(sheet, frame, lengths, { power, dx, dy, clip }),
    );
    return;
  }
  const at = gap.x + (sheet.narrow ? 7 : 10);
  const ends = `M${px(at - 5)} ${px(gap.clay)}h10M${px(at)} ${px(gap.clay)}V${px(gap.glaze)}M${px(at - 5)} ${px(gap.glaze)}h10`;
  sheet.path(ends, { stroke: tint, width: 2 });
  nameLines(sheet, frame, lengths);
  const from = end - textWidth(words, size, true);
  const roof = Math.min(free(from), free((from + end) / 2), free(right));
  const floor = Math.max(...curves.filter(({ c }) => x(c) > from - 24).map((p) => y(p.percent - p.below)));
  if (roof > head + size * 2.6) write(head + size);
  else if (floor + size * 3.4 < bottom) write(bottom - 8);
  else write(between(frame, lengths, from) + size * 0.34);
}

/** Middle of the free room between the two bands, left of the cold end. */
function between({ x, y }: Frame, { glaze, body }: Lengths, from: number): number {
  const near = (curve: Lengths["glaze"]) => curve.filter(({ c }) => x(c) >= from - 24);
  const [upper, lower] = glaze[0]!.percent > body[0]!.percent ? [near(glaze), near(body)] : [near(body), near(glaze)];
  const roof = Math.max(...upper.map(({ percent, below }) => y(percent - below)));
  const floor = Math.min(...lower.map(({ percent, above }) => y(percent + above)));
  return (roof + floor) / 2;
}

/** Names both lines where no lens does: one above the upper, one below the lower. */
function nameLines(sheet: Sheet, { x, y, right }: Frame, { glaze, body }: Lengths): void {
  const { size } = sheet;
  const c = 110;
  const glazeUp = glaze[0]!.percent > body[0]!.percent;
  const [upper, lower] = glazeUp ? [glaze, body] : [body, glaze];
  const [over, under] = glazeUp ? ["glaze", "clay"] : ["clay", "glaze"];
  const reach = Math.min(x(c), right - textWidth(over!, size, true));
  const roof = Math.min(...upper.filter((p) => x(p.c) >= reach - 24).map((p) => y(p.percent + p.above)));
  sheet.text(reach, roof - 7, over!, { size, bold: true, halo: true });
  const width = textWidth(under!, size, true);
  const near = lower.filter((p) => x(p.c) > x(c) - width - 24 && x(p.c) < x(c) + 24);
  const floor = Math.max(...near.map((p) => y(p.percent - p.below)));
  sheet.text(x(c), floor + size + 4, under!, { size, bold: true, anchor: "end", halo: true });
}
