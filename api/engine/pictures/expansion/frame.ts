/** Scales and axes of the cooling picture. @module */

import { fromCelsius, toCelsius } from "../../degrees.ts";
import { signed } from "../../fit/words.ts";
import { arrow } from "../marks/fills.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import { niceStep } from "../marks/ticks.ts";
import type { Lengths } from "./lengths.ts";

/** Where things go [px]. */
export interface Frame {
  left: number;
  right: number;
  top: number;
  bottom: number;
  height: number;
  hotC: number;
  /** Ends of the length scale [%]. */
  low: number;
  high: number;
  x: (c: number) => number;
  y: (percent: number) => number;
}

/** Shortest length scale [%], so that a glaze and clay that hardly shrink do not look wild. */
const LEAST_SPAN = 0.12;

export function frameOf(sheet: Sheet, lengths: Lengths): Frame {
  const all = [...lengths.glaze, ...lengths.body];
  const cold = all.filter(({ c }) => c <= lengths.setC);
  const tall = { 980: 400, 720: 350, 350: 300 }[sheet.width];
  const least = Math.min(...all.map(({ percent, below }) => percent - below), 0);
  const hottest = Math.max(...all.map(({ percent, above }) => percent + above), 0);
  const longest = Math.min(least, hottest - LEAST_SPAN);
  const low = longest - (hottest - longest) * 0.06;
  // Two lines of words stand above the lines from the set point on.
  const room = (sheet.size * 2 + 14) / tall;
  const crest = Math.max(...cold.map(({ percent, above }) => percent + above), 0);
  const high = Math.max(hottest + 0.012, (crest - room * low) / (1 - room));
  const left = sheet.narrow ? 48 : 54;
  const right = sheet.width - (sheet.narrow ? 18 : 26);
  const top = sheet.size * 2 + 8;
  const bottom = top + tall;
  return {
    left,
    right,
    top,
    bottom,
    height: bottom + sheet.size * 2 + 6,
    hotC: lengths.hotC,
    low,
    high,
    x: (c) => left + ((lengths.hotC - c) / (lengths.hotC - 20)) * (right - left),
    y: (percent) => top + ((high - percent) / (high - low)) * (bottom - top),
  };
}

export function drawFrame(sheet: Sheet, frame: Frame): void {
  const { left, right, bottom, low, high, x, y, hotC } = frame;
  const { size } = sheet;
  sheet.text(sheet.narrow ? 4 : 6, size, "length, %, counted from where the glaze sets", { size, tint: "ink2" });
  const step = niceStep(high - low, 6);
  const decimals = Math.max(1, Math.ceil(-Math.log10(step) - 1e-9));
  for (let i = Math.ceil(low / step); i * step <= high; i++) {
    const at = y(i * step);
    sheet.path(`M${left} ${px(at)}H${px(right)}`, { stroke: "rule" });
    sheet.text(left - 8, at + size * 0.34, i === 0 ? "0" : signed(i * step, decimals), {
      size,
      tint: "ink2",
      anchor: "end",
    });
  }
  const base = bottom + size + 8;
  const cold = sheet.exactly(20);
  const stop = right + 12 - textWidth(cold, size) - 12;
  let clear = 0;
  const { temperature } = sheet;
  const every = (sheet.narrow ? 200 : 100) * (temperature === "F" ? 2 : 1);
  const [hot, least] = [hotC, 20].map((c) => fromCelsius(c, temperature)) as [number, number];
  for (let degrees = Math.floor(hot / every) * every; degrees > least; degrees -= every) {
    const c = toCelsius(degrees, temperature);
    const words = clear === 0 ? `${degrees} °${temperature}` : String(degrees);
    const half = textWidth(words, size) / 2;
    const at = x(c);
    if (at - half < clear || at + half > stop) continue;
    sheet.path(`M${px(at)} ${bottom}v6`, { stroke: "edge" });
    sheet.text(at, base, words, { size, tint: "ink2", anchor: "middle" });
    clear = at + half + 12;
  }
  sheet.path(`M${px(x(20))} ${bottom}v6`, { stroke: "edge" });
  sheet.text(right + 12, base, cold, { size, tint: "ink2", anchor: "end" });
  const words = "cooling";
  const from = left + 4;
  sheet.text(from, bottom - 8, words, { size, tint: "ink2" });
  sheet.path(arrow(from + textWidth(words, size) + 10, bottom - 8 - size * 0.33, 1), { stroke: "ink2", width: 1.5 });
}
