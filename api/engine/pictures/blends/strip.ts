/** A blend of more corners than a plane has: all its mixtures in heaps along the stress, and the likeliest to hold. @module */
import { sharesInWords } from "../../blends/headline.ts";
import { casesHolding } from "../../blends/holding.ts";
import { chances, signed } from "../../fit/words.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { shorten, textWidth, wrap } from "../marks/text-width.ts";
import { HIGH_MPA, LOW_MPA, stressScale } from "../verdict/scale.ts";
import { drawAxis } from "../verdict/under.ts";
import { type BlendToDraw, isJudged, type Judged } from "./mixtures.ts";
import { drawNotes } from "./notes.ts";
import type { Drawn, TilePlace } from "./places.ts";
import { drawRings, drawTally, ORDER, type RingAt } from "./verdict-rings.ts";

/** Heaps along the scale, each 20 MPa wide, and rings in the highest of them. */
const HEAPS = 14;
const MOST_RINGS = 8;
const PITCH = 17;
const RING = 14;
/** Rows of mixtures likeliest to stay sound. */
const MOST_ROWS = 8;
/** Longest label that is not cut, and widest row: an eye has to find its way across [px]. */
const LABEL = 110;
const WIDEST = 640;

export function drawStrip(sheet: Sheet, blend: BlendToDraw): Drawn {
  const { width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  const judged = blend.points.filter(isJudged);
  const scale = stressScale(margin, width - margin);
  const heaps = heapsOf(judged, HEAPS);
  const each = Math.max(1, Math.ceil(Math.max(...heaps.map((heap) => heap.length)) / MOST_RINGS));
  const columns = heaps.map((heap) => ringsFor(heap, each));
  const foot = 6 + Math.max(3, ...columns.map((column) => column.length)) * PITCH + 4;
  for (const mpa of [-100, 0]) sheet.path(`M${px(scale.x(mpa))} 6V${foot}`, { stroke: mpa ? "rule" : "edge" });
  sheet.path(`M${px(scale.left)} ${foot}H${px(scale.right)}`, { stroke: "ink", width: 1.5 });
  const wide = (scale.right - scale.left) / heaps.length;
  const rings = columns.flatMap((column, k) =>
    column.map((state, n): RingAt => ({ x: scale.left + (k + 0.5) * wide, y: foot - (n + 0.5) * PITCH - 2, state })),
  );
  drawRings(sheet, rings, Math.min(RING, wide - 2));
  const axis = drawAxis(sheet, scale, foot, foot + 6);
  const count = `Each ring is ${each === 1 ? "one mixture" : `${each} mixtures or fewer`}, over its stress.`;
  const told = drawNotes(sheet, [count], drawTally(sheet, blend.points, axis + 4));
  return drawLikeliest(sheet, blend, likeliest(judged), told + 6);
}

/** Mixtures by their stress, from most squeezed to most pulled; those beyond the scale at its ends. */
function heapsOf(judged: readonly Judged[], many: number): Judged[][] {
  const heaps: Judged[][] = Array.from({ length: many }, () => []);
  for (const mixture of judged) {
    const share = (mixture.stress.value - LOW_MPA) / (HIGH_MPA - LOW_MPA);
    heaps[Math.min(Math.max(Math.floor(share * many), 0), many - 1)]!.push(mixture);
  }
  return heaps;
}

/** Rings for a heap, the most squeezed lowest; a verdict that is there at all gets one. */
function ringsFor(heap: readonly Judged[], each: number): Judged["verdict"][] {
  return [...ORDER].reverse().flatMap((state) => {
    const count = heap.filter(({ verdict }) => verdict === state).length;
    return Array<Judged["verdict"]>(Math.ceil(count / each)).fill(state as Judged["verdict"]);
  });
}

/** Longest name in a list of what is in a tile [letters]. */
const NAME = 24;
const shortNames = (corners: readonly string[]) =>
  corners.map((name) =>
    [...name].length > NAME
      ? `${[...name]
          .slice(0, NAME - 1)
          .join("")
          .trimEnd()}…`
      : name,
  );

const likeliest = (judged: readonly Judged[]) =>
  [...judged].sort((a, b) => b.probabilities.sound - a.probabilities.sound).slice(0, MOST_ROWS);

/** A row for each: its ring and label, what is in it, its chance. */
function drawLikeliest(sheet: Sheet, { corners }: BlendToDraw, rows: readonly Judged[], top: number): Drawn {
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  if (rows.length === 0) return { height: top, places: [] };
  const right = Math.min(width, WIDEST) - margin;
  const names = shortNames(corners);
  sheet.text(margin, top + size, narrow ? "Likeliest to hold" : "Likeliest to stay sound", { size, bold: true });
  const chance = Math.max(...rows.map((row) => textWidth(chanceOf(row), size)));
  const rings: RingAt[] = [];
  const places: TilePlace[] = [];
  let base = top + size;
  for (const row of rows) {
    base += size + 13;
    const above = base - size - 4;
    rings.push({ x: margin + 8, y: base - size * 0.36, state: row.verdict });
    const label = shorten(row.label, LABEL, size, true);
    const from = margin + 24;
    const room = right - chance - 14 - from;
    const words = sharesInWords(names, row.shares);
    sheet.text(right, base, chanceOf(row), { size, tint: "ink2", anchor: "end" });
    const beside = room - textWidth(label, size, true) - 8;
    if (narrow || textWidth(words, size) > beside) {
      sheet.text(from, base, label, { size, bold: true });
      for (const line of wrap(words, right - from, size).slice(0, 2)) {
        base += size + 3;
        sheet.text(from, base, line, { size, tint: "ink2" });
      }
    } else sheet.text(from, base, words, { size, tint: "ink2", lead: label });
    places.push({ label: row.label, left: 2, top: above, width: right - 1, height: base + 7 - above });
  }
  drawRings(sheet, rings, 16);
  return { height: base + 12, places };
}

const chanceOf = ({ probabilities }: Judged) => chances(casesHolding(probabilities));

/** The likeliest with their figures, for the description. */
export function stripInWords({ corners, points }: BlendToDraw): string {
  const names = shortNames(corners);
  const rows = likeliest(points.filter(isJudged)).map((row) => {
    const { value, low, high } = row.stress;
    const stress = `${signed(value)} MPa, 9 in 10 between ${signed(low)} and ${signed(high)}`;
    return `${row.label}, ${sharesInWords(names, row.shares)}: ${chanceOf(row)}, stress ${stress}`;
  });
  const likely = rows.length > 0 ? ` Likeliest to stay sound: ${rows.join("; ")}.` : "";
  return `Every mixture as a ring over its stress; squeezed on the left, pulled on the right.${likely}`;
}
