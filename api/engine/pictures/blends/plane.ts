/** A triangle or square of mixtures: fields where most stay sound, and on them the ring of each. @module */
import { casesHolding } from "../../blends/holding.ts";
import { chances } from "../../fit/words.ts";
import { px, type Sheet } from "../marks/sheet.ts";
import { shorten, textWidth, wrap } from "../marks/text-width.ts";
import {
  type BlendShape,
  type BlendToDraw,
  isJudged,
  type Judged,
  type Mixture,
  sidesOf,
  thinned,
  whereIs,
} from "./mixtures.ts";
import { drawNotes, leftOut } from "./notes.ts";
import type { Drawn } from "./places.ts";
import { drawFields, drawKey, fieldsOf } from "./soundness.ts";
import { drawLabels, drawRings, drawTally, stateOf } from "./verdict-rings.ts";

/** Steps that find room along a side, by the room there is. */
const MOST_STEPS = { simplex: { wide: 20, narrow: 12 }, grid: { wide: 16, narrow: 12 } };
/** Widest side of the drawing [px]. */
const WIDEST = 600;

interface Frame {
  left: number;
  top: number;
  wide: number;
  tall: number;
}

export function drawPlane(sheet: Sheet, blend: BlendToDraw, shape: BlendShape): Drawn {
  const { size, width, narrow } = sheet;
  const margin = narrow ? 4 : 6;
  const points = thinned(blend.points, shape, MOST_STEPS[shape][narrow ? "narrow" : "wide"]);
  const [across, down] = sidesOf(points, shape);
  const room = Math.min(width - 2 * margin - 40, WIDEST);
  const wide = room;
  const tall = shape === "grid" ? Math.min(room, (room / across) * down) : (room * Math.sqrt(3)) / 2;
  const pitch = Math.min(wide / across, tall / down);
  const ring = Math.min(30, pitch * 0.72);
  const labelled = pitch >= ring + size + 5 && points.every(({ label }) => textWidth(label, size) < wide / across - 6);
  const under = labelled ? size + 3 : 0;
  const names = namesOf(sheet, blend.corners, shape, (width - wide) / 2 - ring / 2);
  const above = ring / 2 + 8;
  const frame = { left: (width - wide) / 2, top: names.above + above, wide, tall };
  const foot = frame.top + tall + above + under;
  const at = (shares: readonly number[]): [number, number] => {
    const [u, v] = whereIs(shares, shape);
    return [frame.left + u * wide, frame.top + v * tall];
  };

  const fields = fieldsOf(points, shape, at);
  drawFields(sheet, fields);
  drawEdge(sheet, shape, frame);
  const rings = points.map((mixture) => {
    const [x, y] = at(mixture.shares);
    return { x, y, state: stateOf(mixture), words: mixture.label };
  });
  drawRings(sheet, rings, ring);
  const labels = rings.map(({ x, y, words }) => ({ x, y: y + ring / 2 + size - 1, words }));
  drawLabels(sheet, labelled ? labels : []);
  const best = bestOf(points);
  const places = rings.map(({ x, y, words: label }) => {
    const half = Math.max(ring, labelled ? textWidth(label, size) : 0) / 2 + 3;
    return { label, left: x - half, top: y - ring / 2 - 3, width: half * 2, height: ring + under + 6 };
  });
  const box = best && places[points.indexOf(best)];
  if (box) sheet.rect(box.left, box.top, box.width, box.height, { stroke: "ink", width: 1.5 });
  drawNames(sheet, names, frame.top - above, foot);
  const y = drawTally(sheet, blend.points, foot + names.below + 6);
  const tint = fields.each.length > 0 ? "The fuller the tint, the likelier to stay sound." : undefined;
  const notes = [tint, boxed(blend, points, best), fields.left, leftOut(blend, points)];
  return { height: drawNotes(sheet, notes, drawKey(sheet, fields, y)), places };
}

function drawEdge(sheet: Sheet, shape: BlendShape, { left, top, wide, tall }: Frame): void {
  const [right, foot] = [left + wide, top + tall];
  const outline =
    shape === "grid"
      ? `M${px(left)} ${px(top)}H${px(right)}V${px(foot)}H${px(left)}Z`
      : `M${px(left + wide / 2)} ${px(top)}L${px(right)} ${px(foot)}H${px(left)}Z`;
  sheet.path(outline, { stroke: "edge", width: 1.5 });
}

interface Names {
  each: { lines: string[]; x: number; anchor: "start" | "middle" | "end"; below: boolean }[];
  /** Height of those above and below [px]. */
  above: number;
  below: number;
}

/** Names in one line or two, each at its corner. @param edge - where the outermost rings begin [px] */
function namesOf(sheet: Sheet, corners: readonly string[], shape: BlendShape, edge: number): Names {
  const { size, width, narrow } = sheet;
  const side = Math.max(edge, narrow ? 4 : 6);
  const each = corners.map((name, c) => {
    const below = shape === "grid" ? c >= 2 : c >= 1;
    const right = shape === "grid" ? c % 2 === 1 : c === 2;
    const anchor = shape === "simplex" && c === 0 ? ("middle" as const) : right ? ("end" as const) : ("start" as const);
    const x = { start: side, middle: width / 2, end: width - side }[anchor];
    const limit = anchor === "middle" ? width - 2 * side : width / 2 - side - 8;
    const [first = "", ...rest] = wrap(name, limit, size, true);
    const lines = rest.length > 0 ? [first, shorten(rest.join(" "), limit, size, true)] : [first];
    return { lines, x, anchor, below };
  });
  const room = (below: boolean) =>
    Math.max(...each.filter((name) => name.below === below).map(({ lines }) => lines.length)) * (size + 2) + 4;
  return { each, above: room(false), below: room(true) };
}

/** @param top - where the upper names end; `foot` where the lower begin [px] */
function drawNames(sheet: Sheet, { each }: Names, top: number, foot: number): void {
  const { size } = sheet;
  const leading = size + 2;
  for (const { lines, x, anchor, below } of each) {
    const base = below ? foot + size : top - 4 - (lines.length - 1) * leading;
    for (const [i, line] of lines.entries()) sheet.text(x, base + i * leading, line, { size, bold: true, anchor });
  }
}

/** The mixture likeliest to stay sound, where any has a chance. */
function bestOf(points: BlendToDraw["points"]): Judged | undefined {
  const judged = points.filter(isJudged);
  const best = judged.reduce<Judged | undefined>(
    (a, b) => (a && a.probabilities.sound >= b.probabilities.sound ? a : b),
    undefined,
  );
  return best && best.probabilities.sound >= 0.025 ? best : undefined;
}

function boxed(blend: BlendToDraw, drawn: readonly Mixture[], best: Judged | undefined): string | undefined {
  if (!best) return undefined;
  const chance = chances(casesHolding(best.probabilities));
  const among = drawn.length < blend.points.length ? " of those drawn" : "";
  return `Boxed: ${best.label}, the likeliest${among} to stay sound, ${chance}.`;
}
