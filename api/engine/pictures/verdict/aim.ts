/** The aim: a bracket over the stress that clears both risks. @module */
import type { FitReport } from "../../fit/types.ts";
import { signed } from "../../fit/words.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import { type Crowd, crowdHeight } from "./cases.ts";
import { aimOf, linesOf, type StressScale } from "./scale.ts";

/** The bracket as placed: what it covers, and how high above the ground it stands [px]. */
export interface Aim {
  from: number;
  to: number;
  high: number;
  draw: (ground: number) => void;
}

/** Places the bracket above whatever stands in its range, its words between the two lines it keeps clear of. */
export function aimBracket(sheet: Sheet, report: FitReport, crowd: Crowd, scale: StressScale): Aim | undefined {
  const aim = aimOf(report);
  if (!aim || aim[1] < scale.at(scale.left) + 8 || aim[0] > scale.at(scale.right) - 8) return undefined;
  const [a, b] = [Math.max(scale.x(aim[0]), scale.left + 1), Math.min(scale.x(aim[1]), scale.right - 1)];
  const { size } = sheet;
  const lines = linesOf(report);
  const left = Math.max(scale.left, scale.x(lines.lift) + 5);
  const right = Math.min(scale.right, scale.x(lines.later) - 5);
  const range = `${signed(aim[0])} to ${signed(aim[1])}`;
  const width = (words: string) => textWidth(words, size, true);
  const words = [`aim here: ${range}`, range, "aim"].find((each) => width(each) <= right - left) ?? "";
  const half = width(words) / 2;
  const middle = Math.min(Math.max((a + b) / 2, left + half), right - half);
  const [from, to] = [Math.min(a, middle - half), Math.max(b, middle + half)];
  const high = Math.max(8, crowdHeight(crowd, scale, from, to) + 8);
  const draw = (ground: number) => {
    const y = ground - high;
    // An end that lies beyond the scale stays open.
    const start = aim[0] < scale.at(scale.left) ? `M${px(a)} ${px(y - 2)}` : `M${px(a)} ${px(y + 5)}v-7`;
    const end = aim[1] > scale.at(scale.right) ? "" : "v7";
    sheet.path(`${start}H${px(b)}${end}`, { stroke: "hold", width: 2 });
    if (words) sheet.text(middle, y - 9, words, { size, bold: true, tint: "hold", anchor: "middle" });
  };
  return { from, to, high, draw };
}
