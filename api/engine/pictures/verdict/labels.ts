/** Words for the thresholds, set at staggered heights so that none meets another, a line or the hill. @module */
import type { FitReport } from "../../fit/types.ts";
import { inWords, signed } from "../../fit/words.ts";
import { arrow } from "../marks/fills.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import type { Tint } from "../marks/theme.ts";
import type { Columns } from "./bins.ts";
import type { StressScale } from "./scale.ts";

interface Threshold {
  mpa: number;
  /** Where its line stands [px]; the end of the scale where it lies beyond. */
  x: number;
  beyond: -1 | 0 | 1;
  words: [string, string];
  tint: Tint;
  width: number;
}

interface Placed extends Threshold {
  side: -1 | 1;
  /** Steps above the ground, 0 is lowest. */
  tier: number;
  /** What its words cover [px]. */
  from: number;
  to: number;
  /** How much it is disliked. */
  cost: number;
}

/** What the labels must keep clear of: the least height above the clay that is free between two places [px]. */
export type Skyline = (from: number, to: number) => number;

const GAP = 7;

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

function span({ x, width, beyond }: Threshold, side: -1 | 1): [number, number] {
  const gap = beyond ? 0 : GAP;
  return side > 0 ? [x + gap, x + gap + width] : [x - gap - width, x - gap];
}

/**
 * Branch and bound over the lowest places of each label. Few places nearly always do; if not, more are tried.
 * @returns a place for every label
 */
function bestOf(all: Threshold[], scale: StressScale, skyline: Skyline, step: number, tall: number): Placed[] {
  const every = all.map((threshold, i) => placesOf(threshold, i, scale, skyline, step));
  for (const many of [5, 9, 20]) {
    const found = search(
      every.map((places) => places.slice(0, many)),
      step,
      tall,
    );
    if (found) return found;
  }
  return [];
}

function search(choices: Placed[][], step: number, tall: number): Placed[] | undefined {
  // Least that the labels from i on can cost.
  const rest = choices.map((_, i) => choices.slice(i).reduce((sum, [first]) => sum + (first?.cost ?? 0), 0));
  let best: Placed[] | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  const placed: Placed[] = [];
  const visit = (i: number, cost: number) => {
    if (cost + (rest[i] ?? 0) >= bestCost) return;
    if (i === choices.length) {
      best = [...placed];
      bestCost = cost;
      return;
    }
    for (const option of choices[i]!) {
      if (placed.some((other) => meets(other, option, step, tall))) continue;
      // Neighbours at one height read as one sentence: stagger them.
      const level = placed.some((other) => other.tier === option.tier && near(other, option)) ? 1.5 : 0;
      placed.push(option);
      visit(i + 1, cost + option.cost + level);
      placed.pop();
    }
  };
  visit(0, 0);
  return best;
}

function placesOf(threshold: Threshold, i: number, scale: StressScale, skyline: Skyline, step: number): Placed[] {
  const sides: (-1 | 1)[] = threshold.beyond ? [threshold.beyond < 0 ? 1 : -1] : [1, -1];
  const places: Placed[] = [];
  for (const side of sides) {
    const [from, to] = span(threshold, side);
    if (from < scale.left - 1 || to > scale.right + 1) continue;
    const lowest = Math.max(0, Math.ceil(skyline(from - 4, to + 4) / step));
    for (let tier = lowest; tier < lowest + 10; tier++) {
      // Lowest first; words to the right of their line, but "in time" to the left of its own, away from "at once".
      const cost = tier + (side === (i === 2 ? -1 : 1) ? 0 : 0.4);
      places.push({ ...threshold, side, tier, from, to, cost });
    }
  }
  return places.sort((a, b) => a.cost - b.cost);
}

function near(a: Placed, b: Placed): boolean {
  return a.from < b.to + 48 && b.from < a.to + 48;
}

/** Whether two labels, or one's line and the other's words, share a place. */
function meets(a: Placed, b: Placed, step: number, tall: number): boolean {
  const apart = Math.abs(a.tier - b.tier) * step;
  if (apart < tall + 2 && a.from < b.to + 8 && b.from < a.to + 8) return true;
  return crosses(a, b, step, tall) || crosses(b, a, step, tall);
}

/** Whether the line of one runs through the words of the other. */
function crosses(line: Placed, other: Placed, step: number, tall: number): boolean {
  if (line.beyond || line.x <= other.from - 3 || line.x >= other.to + 3) return false;
  return line.tier * step + tall > other.tier * step;
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
