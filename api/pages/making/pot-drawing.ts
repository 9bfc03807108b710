/** The pot: cut through on the left, from outside on the right; dashed as thrown, solid as fired; one scale. @module */
import { px } from "../../engine/pictures/marks/sheet.ts";
import type { Form } from "./draft.ts";

/** Sizes in one unit, any. */
export interface Pot {
  form: Form;
  height: number;
  rim: number;
  belly: number;
  foot: number;
  wall: number;
  /** Thrown size over fired size [-]. */
  grown: number;
}

interface Words {
  title: string;
  throwTall: string;
  firedTall: string;
  dashed: string;
  solid: string;
  cut: string;
  outside: string;
}

/** Thickness of the floor, in walls (common practice, no source). */
export const FLOOR = 1.2;

const clean = (text: string) => text.replace(/[&<>"]/g, "");

/** Half widths at heights from the foot up. */
function outline({ form, height, rim, belly, foot }: Pot): [number, number][] {
  if (form === "cylinder")
    return [
      [rim / 2, 0],
      [rim / 2, height],
    ];
  const steps = 24;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    if (form === "bowl")
      return [foot / 2 + ((rim - foot) / 2) * Math.sin((t * Math.PI) / 2), t * height] as [number, number];
    // Through foot, belly at 0.55 and rim.
    const m = 0.55;
    const value =
      foot * (((t - m) * (t - 1)) / m) + belly * ((t * (t - 1)) / (m * (m - 1))) + rim * ((t * (t - m)) / (1 - m));
    return [value / 2, t * height] as [number, number];
  });
}

/** @param width - drawn for [px] */
export function potDrawing(pot: Pot, words: Words, width: number): string {
  const narrow = width < 500;
  const [top, low] = [28, narrow ? 330 : 380];
  const widest = Math.max(pot.rim, pot.form === "jar" || pot.form === "pot" ? pot.belly : 0, pot.foot) * pot.grown;
  const scale = Math.min(
    (low - top - 30) / (pot.height * pot.grown * (pot.form === "jar" ? 1.2 : 1)),
    (width * (narrow ? 0.52 : 0.42)) / widest,
  );
  const middle = width / 2;
  const points = outline(pot);
  const x = (half: number, side: 1 | -1) => px(middle + side * half * scale);
  const y = (up: number) => px(low - up * scale);
  const side = (grow: number, way: 1 | -1) =>
    points.map(([half, up]) => `${x(half * grow, way)} ${y(up * grow)}`).join("L");
  const g = pot.grown;
  const dashed = ([-1, 1] as const).map(
    (way) =>
      `<path class="ink" stroke-width="1.5" stroke-dasharray="6 5" d="M${middle} ${y(0)}H${x(points[0]![0] * g, way)}L${side(g, way)}"/>`,
  );
  const floor = pot.wall * FLOOR;
  const inner = points
    .filter(([, up]) => up >= floor)
    .map(([half, up]) => `${x(Math.max(half - pot.wall, 0), -1)} ${y(up)}`);
  const cut = `<path class="cut" d="M${middle} ${y(0)}L${side(1, -1)}L${inner.reverse().join("L")}V${y(floor)}H${middle}Z"/>`;
  const outside = `<path class="ink sheet" stroke-width="2" d="M${middle} ${y(0)}H${x(points[0]![0], 1)}L${side(1, 1)}H${middle}Z"/>`;
  const lid = pot.form === "jar" ? lidOf(pot, x, y, middle) : "";
  const bar = (at: number, tall: number) =>
    `<path class="ink" stroke-width="1.5" d="M${at - 5} ${y(0)}h10M${at - 5} ${y(tall)}h10M${at} ${y(0)}V${y(tall)}"/>`;
  const peak = px(Math.min(y(pot.height * g), y(pot.height * (pot.form === "jar" ? 1.22 : 1))) - 12);
  const [left, right] = narrow
    ? [16, width - 16]
    : [px(middle - (widest * scale) / 2 - 50), px(middle + (widest * scale) / 2 + 50)];
  const text = (tx: number, ty: number, anchor: string, words_: string, cls = "") =>
    `<text class="${cls}" x="${tx}" y="${ty}" text-anchor="${anchor}">${clean(words_)}</text>`;
  const half = y(pot.height * 0.5);
  const labels = narrow
    ? text(6, 14, "start", words.throwTall, "strong") +
      text(width - 6, 14, "end", words.firedTall, "strong") +
      text(6, low + 42, "start", words.dashed) +
      text(width - 6, low + 42, "end", words.solid)
    : text(left - 12, half, "end", words.throwTall, "strong") +
      text(left - 12, half + 20, "end", words.dashed) +
      text(right + 12, half, "start", words.firedTall, "strong") +
      text(right + 12, half + 20, "start", words.solid);
  const under = text(middle - 8, low + 22, "end", words.cut) + text(middle + 8, low + 22, "start", words.outside);
  return `<svg class="pot" viewBox="0 0 ${width} ${low + 52}" role="img" aria-label="${clean(words.title)}">${dashed.join("")}${cut}${outside}${lid}<path class="ink" stroke-width="1" d="M${middle} ${peak}V${low + 8}"/>${bar(left, pot.height * g)}${bar(right, pot.height)}${labels}${under}</svg>`;
}

function lidOf(pot: Pot, x: (half: number, side: 1 | -1) => number, y: (up: number) => number, middle: number): string {
  const rim = pot.rim / 2;
  const rise = pot.height * 0.13;
  const knob = pot.rim * 0.09;
  const half = (way: 1 | -1) =>
    `M${x(rim, way)} ${y(pot.height)}L${x(rim, way)} ${y(pot.height + rise * 0.2)}Q${x(rim * 0.6, way)} ${y(pot.height + rise)} ${x(knob * 0.7, way)} ${y(pot.height + rise)}L${x(knob, way)} ${y(pot.height + rise * 1.7)}H${middle}V${y(pot.height)}Z`;
  return `<path class="cut" d="${half(-1)}"/><path class="ink sheet" stroke-width="2" d="${half(1)}"/>`;
}
