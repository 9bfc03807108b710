/** Where in a blend it fits: a line's curve, or a triangle or square with contours of soundness. @module */
import { Sheet } from "../pictures/marks/sheet.ts";
import type { PictureOptions } from "../pictures/types.ts";
import type { BlendGap, BlendPoint, BlendReport } from "./types.ts";

/** Chances of staying sound at which contours run; from 16.5 of 20 on, 17 of a fit's twenty cases hold and it says "sound". */
const LEVELS = [0.25, 0.5, 0.825] as const;
/** Longest edge on which every tile is labelled [steps]. */
const LABELLED = 12;

interface Spot {
  x: number;
  y: number;
  sound: number;
  point: BlendPoint;
}

/** Whether a blend can be drawn: a line, a triangle or a square, all its points at hand. */
export function canDraw({ corners, points }: BlendReport, shape: "simplex" | "grid"): boolean {
  return (shape === "grid" || corners.length <= 3) && points.length > 1 && points.length === points[0]!.of;
}

/**
 * Draws a blend.
 * @param report - the whole blend
 * @param shape - how it was asked for
 * @returns SVG: tiles as dots, filled the more the likelier they stay sound; contours where 5, 10 and 17 of 20 do
 */
export function blendPicture(report: BlendReport, shape: "simplex" | "grid", options: PictureOptions = {}): string {
  const sheet = new Sheet(options);
  return shape === "simplex" && report.corners.length === 2 ? line(sheet, report) : plane(sheet, report, shape);
}

const judged = (point: BlendPoint | BlendGap): point is BlendPoint => "verdict" in point;

function line(sheet: Sheet, report: BlendReport): string {
  const { width, size } = sheet;
  const [left, right, top, base] = [size * 4, width - size * 2, size * 2, size * 2 + 220];
  const at = (share: number) => left + share * (right - left);
  const up = (chance: number) => base - chance * (base - top);
  for (const level of [0, 0.25, 0.5, 0.75, 1]) {
    sheet.path(`M${left} ${up(level)}H${right}`, { stroke: "rule" });
    sheet.text(left - 8, up(level) + size / 3, `${level * 20}`, { size, tint: "ink2", anchor: "end" });
  }
  sheet.text(left, top - size * 0.7, "of 20 stay sound", { size, tint: "ink2" });
  const points = report.points.filter(judged);
  const dots = points.map((point) => ({ x: at(point.shares[1]!), y: up(point.probabilities.sound), point }));
  sheet.path(dots.map(({ x, y }, i) => `${i ? "L" : "M"}${x} ${y}`).join(""), { stroke: "hold", width: 2.5 });
  for (const { x, y, point } of dots) {
    if (dots.length <= 41) sheet.circle(x, y, 3.5, { fill: "paper", stroke: "hold", width: 2 });
    if (dots.length <= LABELLED + 1) {
      sheet.text(x, base + size * 1.4, point.label, { size, tint: "ink2", anchor: "middle" });
    }
  }
  sheet.text(left, base + size * 3, report.corners[0]!, { size, bold: true });
  sheet.text(right, base + size * 3, report.corners[1]!, { size, bold: true, anchor: "end" });
  return sheet.finish(base + size * 4, "blend", told(report));
}

function plane(sheet: Sheet, report: BlendReport, shape: "simplex" | "grid"): string {
  const { width, size } = sheet;
  const margin = size * 3;
  const side = Math.min(width - margin * 2, 620);
  const left = (width - side) / 2;
  const height = shape === "grid" ? side : (side * Math.sqrt(3)) / 2;
  const place = (shares: readonly number[]): [number, number] =>
    shape === "grid"
      ? [left + side * (shares[1]! + shares[3]!), margin + height * (shares[2]! + shares[3]!)]
      : [left + side * (shares[0]! / 2 + shares[2]!), margin + height * (1 - shares[0]!)];
  const spots = new Map<string, Spot>();
  const step = stepsOf(report, shape);
  for (const point of report.points) {
    if (!judged(point)) continue;
    const [x, y] = place(point.shares);
    spots.set(keyOf(point.shares, shape, step), { x, y, sound: point.probabilities.sound, point });
  }
  const outline =
    shape === "grid"
      ? [
          [1, 0, 0, 0],
          [0, 1, 0, 0],
          [0, 0, 0, 1],
          [0, 0, 1, 0],
        ]
      : [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ];
  const edge = outline.map((shares, i) => `${i ? "L" : "M"}${place(shares).join(" ")}`).join("");
  sheet.path(`${edge}Z`, { stroke: "edge", fill: "sheet", width: 1.5 });
  const triangles = trianglesOf(spots, shape, step);
  // The fields where most stay sound, the surer the stronger.
  LEVELS.forEach((level, k) => {
    const fields = triangles.map((corners) => fieldAbove(corners, level)).join("");
    sheet.path(fields, { fill: "glaze", opacity: 0.35 + 0.25 * k });
  });
  LEVELS.forEach((level, k) => {
    const contour = triangles.map((corners) => contourIn(corners, level)).join("");
    sheet.path(contour, { stroke: "hold", width: 1 + k, ...(k === 2 ? {} : { dash: k === 1 ? "8 4" : "2 4" }) });
  });
  const many = Math.max(...step) > LABELLED * 2;
  for (const { x, y, point } of many ? [] : spots.values()) {
    sheet.circle(x, y, 4, { stroke: "ink2", fill: point.verdict === "sound" ? "ink2" : "paper" });
    if (Math.max(...step) <= LABELLED)
      sheet.text(x, y - 7, point.label, { size: size * 0.8, tint: "ink2", anchor: "middle", halo: true });
  }
  report.corners.forEach((name, c) => {
    const [x, y] = place(report.corners.map((_, k) => (k === c ? 1 : 0)));
    const below = shape === "grid" ? c >= 2 : c >= 1;
    const anchor = shape === "grid" ? (c % 2 ? "end" : "start") : (["middle", "start", "end"] as const)[c]!;
    sheet.text(x, below ? y + size * 1.7 : y - size * 1.4, name, { size, bold: true, anchor });
  });
  const foot = margin + height + size * 3.4;
  sheet.text(left, foot, "Contours: 5 of 20 stay sound (dots), 10 (dashes), 17 (full line). Filled dot: sound.", {
    size,
    tint: "ink2",
  });
  return sheet.finish(foot + size, "blend", told(report));
}

type Three = readonly [Spot, Spot, Spot];

/** Steps along each side. */
function stepsOf({ points }: BlendReport, shape: "simplex" | "grid"): [number, number] {
  const across = new Set(points.map(({ shares: s }) => Math.round((shape === "grid" ? s[1]! + s[3]! : s[0]!) * 1e5)));
  const down = new Set(points.map(({ shares: s }) => Math.round((shape === "grid" ? s[2]! + s[3]! : s[0]!) * 1e5)));
  return [across.size - 1, down.size - 1];
}

function keyOf(shares: readonly number[], shape: "simplex" | "grid", [across, down]: [number, number]): string {
  return shape === "grid"
    ? `${Math.round((shares[1]! + shares[3]!) * across)} ${Math.round((shares[2]! + shares[3]!) * down)}`
    : `${Math.round(shares[1]! * across)} ${Math.round(shares[2]! * across)}`;
}

/** The small triangles between neighbouring points; none where one of them is missing. */
function trianglesOf(
  spots: ReadonlyMap<string, Spot>,
  shape: "simplex" | "grid",
  [across, down]: [number, number],
): Three[] {
  const out: Three[] = [];
  const add = (...keys: [string, string, string]) => {
    const [a, b, c] = keys.map((key) => spots.get(key));
    if (a && b && c) out.push([a, b, c]);
  };
  for (let i = 0; i < across; i++) {
    for (let j = 0; j < (shape === "grid" ? down : across); j++) {
      add(`${i} ${j}`, `${i + 1} ${j}`, `${i} ${j + 1}`);
      add(`${i + 1} ${j}`, `${i + 1} ${j + 1}`, `${i} ${j + 1}`);
    }
  }
  return out;
}

/** Where a level crosses the sides of a triangle, the chance taken as even slopes between its corners. */
function crossings(corners: Three, level: number): [number, number][] {
  const out: [number, number][] = [];
  for (let k = 0; k < 3; k++) {
    const a = corners[k]!;
    const b = corners[(k + 1) % 3]!;
    if (a.sound >= level === b.sound >= level) continue;
    const t = (level - a.sound) / (b.sound - a.sound);
    out.push([a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)]);
  }
  return out;
}

function contourIn(corners: Three, level: number): string {
  const [a, b] = crossings(corners, level);
  return a && b ? `M${a.join(" ")}L${b.join(" ")}` : "";
}

function fieldAbove(corners: Three, level: number): string {
  const around: [number, number][] = [];
  for (let k = 0; k < 3; k++) {
    const a = corners[k]!;
    const b = corners[(k + 1) % 3]!;
    if (a.sound >= level) around.push([a.x, a.y]);
    if (a.sound >= level !== b.sound >= level) {
      const t = (level - a.sound) / (b.sound - a.sound);
      around.push([a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)]);
    }
  }
  return around.length < 3 ? "" : `${around.map((xy, i) => `${i ? "L" : "M"}${xy.join(" ")}`).join("")}Z`;
}

function told({ headline, corners }: BlendReport): { title: string; description: string } {
  return {
    title: headline,
    description: `Chance of staying sound over a blend of ${corners.join(", ")}, worked out tile by tile.`,
  };
}
