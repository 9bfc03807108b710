/** What stands under the clay: lettered pins, the interval of this glaze, the scale and its two promises. @module */
import type { FitReport } from "../../fit/types.ts";
import { signed } from "../../fit/words.ts";
import { arrow } from "../marks/fills.ts";
import { RING_TINT, RINGS } from "../marks/rings.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { shorten, textWidth } from "../marks/text-width.ts";
import type { Trial } from "../types.ts";
import { HIGH_MPA, LOW_MPA, type StressScale } from "./scale.ts";

/** Draws lettered pins. @param y - underside of the clay [px] @returns the height they take [px] */
export function drawTrials(sheet: Sheet, trials: readonly Trial[], scale: StressScale, y: number): number {
  if (trials.length === 0) return 0;
  const side = sheet.narrow ? 19 : 20;
  const pitch = side + 4;
  const pins = [...trials].sort((a, b) => a.stressMPa - b.stressMPa);
  const truth = pins.map(({ stressMPa }) => Math.min(Math.max(scale.x(stressMPa), scale.left), scale.right));
  const places = spread(truth, pitch, scale.left + side / 2, scale.right - side / 2);
  pins.forEach(({ letter, current }, i) => {
    const x = places[i]!;
    sheet.path(`M${px(truth[i]!)} ${y - 6}V${y + 3}L${px(x)} ${y + 9}`, { stroke: "ink", width: 1.5 });
    sheet.rect(x - side / 2, y + 9, side, side, { stroke: "ink", width: 1.5, fill: current ? "ink" : "sheet" });
    const words = shorten(letter, side - 2, sheet.size, true);
    const tint = current ? "paper" : "ink";
    sheet.text(x, y + 9 + side * 0.74, words, { size: sheet.size, bold: true, anchor: "middle", tint });
  });
  return side + 12;
}

/** Pushes neighbours apart to a pitch, within two ends, moving each as little as that takes. */
function spread(places: readonly number[], pitch: number, from: number, to: number): number[] {
  const gap = Math.min(pitch, (to - from) / Math.max(1, places.length - 1));
  const out: number[] = [];
  for (const place of places) out.push(Math.max(place, from, (out.at(-1) ?? Number.NEGATIVE_INFINITY) + gap));
  let limit = to;
  for (let i = out.length - 1; i >= 0; i--, limit -= gap) out[i] = Math.min(out[i]!, limit);
  return out;
}

/** The interval with its mean ring and words. @returns the height it takes [px] */
export function drawInterval(sheet: Sheet, { stress, verdict }: FitReport, scale: StressScale, top: number): number {
  const { left, right } = scale;
  const size = sheet.size;
  const y = top + 17;
  const inside = (mpa: number) => Math.min(Math.max(scale.x(mpa), left), right);
  const [low, mean, high] = [inside(stress.low), inside(stress.value), inside(stress.high)];
  const away = stress.low > HIGH_MPA ? 1 : stress.high < LOW_MPA ? -1 : 0;
  if (away) sheet.path(arrow(away > 0 ? right - 11 : left + 11, y, away, 22), { stroke: "ink", width: 3 });
  else sheet.path(`M${px(low)} ${y}H${px(high)}`, { stroke: "ink", width: 3 });
  const ends = [
    stress.low >= LOW_MPA ? `M${px(low)} ${y - 5}v10` : `M${px(low + 5)} ${y - 5}l-5 5l5 5`,
    stress.high <= HIGH_MPA ? `M${px(high)} ${y - 5}v10` : `M${px(high - 5)} ${y - 5}l5 5l-5 5`,
  ];
  if (!away) sheet.path(ends.join(""), { stroke: "ink", width: 1.5 });
  if (stress.value >= LOW_MPA && stress.value <= HIGH_MPA) {
    const x = Math.min(Math.max(mean, left + 9), right - 9);
    sheet.circle(x, y, 9.5, { fill: "paper" });
    const colour = sheet.theme[RING_TINT[verdict]];
    const place = `translate(${px(x - 9)} ${y - 9}) scale(.18)`;
    sheet.raw(`<path d="${RINGS[verdict]}" fill="none" stroke="${colour}" stroke-width="15" transform="${place}"/>`);
  }
  const bold = `${signed(stress.value)}\u00a0MPa`;
  const rest = `9 in 10 between ${signed(stress.low)} and ${signed(stress.high)}`;
  const width = textWidth(bold, size, true) + 8 + textWidth(rest, size);
  let x = high + (away ? 34 : 12);
  let base = y + 5;
  if (x + width > right) x = low - (away ? 34 : 12) - width;
  if (x < left) {
    x = Math.min(Math.max((low + high - width) / 2, left), right - width);
    base = y + 14 + size;
  }
  sheet.text(x, base, rest, { size, tint: "ink2", lead: bold });
  return base + 8 - top;
}

/** Ticks, numbers, and what each side means. @param y - underside of the clay; `top` where the numbers begin [px] */
export function drawAxis(sheet: Sheet, scale: StressScale, y: number, top: number): number {
  const { left, right } = scale;
  const { size } = sheet;
  const base = top + size;
  const last = `+${HIGH_MPA} MPa`;
  const clear = right - textWidth(last, size) - 10;
  for (let mpa = LOW_MPA; mpa < HIGH_MPA; mpa += sheet.narrow ? 100 : 50) {
    const x = scale.x(mpa);
    sheet.path(`M${px(x)} ${y}v5`, { stroke: "edge" });
    const words = signed(mpa);
    const anchor = mpa === LOW_MPA ? "start" : "middle";
    if (x + textWidth(words, size) / 2 < clear) sheet.text(x, base, words, { size, tint: "ink2", anchor });
  }
  sheet.text(right, base, last, { size, tint: "ink2", anchor: "end" });
  const sides: [string, string][] = [
    ["squeezed: the skin is too big, and may lift off", "pulled: the skin is too small, and may crack"],
    ["squeezed: too big, may lift off", "pulled: too small, may crack"],
    ["squeezed: it may lift", "pulled: it may crack"],
    ["squeezed: may lift", "pulled: may crack"],
  ];
  const fits = ([a, b]: [string, string]) => textWidth(a, size, true) + textWidth(b, size, true) + 46 < right - left;
  const [squeezed, pulled] = sides.find(fits) ?? ["it may lift", "it may crack"];
  const row = base + size + 12;
  sheet.path(arrow(left + 6, row - size * 0.33, -1), { stroke: "push", width: 1.75 });
  sheet.text(left + 17, row, squeezed, { size, bold: true, tint: "push" });
  sheet.path(arrow(right - 6, row - size * 0.33, 1), { stroke: "pull", width: 1.75 });
  sheet.text(right - 17, row, pulled, { size, bold: true, tint: "pull", anchor: "end" });
  return row + 8;
}
