/** The strip of glaze on its clay, drawn as it would look at each stress. @module */
import { px, type Sheet } from "../marks/sheet.ts";
import type { Lines, StressScale } from "./scale.ts";

/** Unevenness of the pieces, so that cracks do not look like ticks. */
const UNEVEN = [0.2, -0.25, 0.1, 0.3, -0.15, -0.3, 0.25, 0];
const TILT = [0.95, 0.6, 0.8, 0.66];

/**
 * Draws the strip: flakes clear of the clay, then rucked, whole, cracked wide apart, cracked close.
 * @param y - underside of the glaze [px]; `height` its thickness as drawn [px]
 */
export function drawSkin(sheet: Sheet, scale: StressScale, lines: Lines, y: number, height: number): void {
  const { left, right } = scale;
  const [flakes, lift, later, once] = [lines.flakes, lines.lift, lines.later, lines.once].map((mpa) =>
    Math.min(Math.max(scale.x(mpa), left), right),
  ) as [number, number, number, number];
  const middle = y - height / 2;
  const piece = height * 0.62;
  let d = later > lift ? `M${px(lift)} ${middle}H${px(later)}` : "";
  d += cracked(later, once, piece * 2, 1.3, middle);
  d += cracked(once, right, piece, 2.4, middle);
  d += rucked(flakes, lift, height, y);
  // The stroke is the glaze: ink outside, glaze inside, so that every piece is outlined.
  sheet.path(d, { stroke: "ink", width: height });
  sheet.path(d, { stroke: "glaze", width: height - 3 });
  const loose = flaked(left, flakes, height, y);
  sheet.path(loose, { stroke: "ink", width: height * 0.72 });
  sheet.path(loose, { stroke: "glaze", width: height * 0.72 - 3 });
}

function cracked(from: number, to: number, piece: number, gap: number, middle: number): string {
  let d = "";
  let at = from;
  for (let i = 0; at < to - 1; i++) {
    let end = Math.min(to, at + piece * (1 + 0.35 * UNEVEN[i % UNEVEN.length]!));
    if (to - end < piece * 0.4) end = to;
    d += `M${px(at + gap / 2)} ${middle}H${px(end - gap / 2)}`;
    at = end;
  }
  return d;
}

/** Waves that stand higher the nearer they are to flaking. */
function rucked(from: number, to: number, height: number, y: number): string {
  const room = to - from;
  if (room < 2) return "";
  // Too little room for a wave.
  if (room < height) return `M${px(from)} ${y - height / 2}H${px(to)}`;
  const many = Math.max(1, Math.round(room / (height * 1.5)));
  const length = room / many;
  let d = "";
  for (let i = 0; i < many; i++) {
    const end = to - i * length;
    const rise = Math.min(height * 0.8, 3 + (height * 0.7 * (i + 1)) / many);
    const base = y - height / 2;
    d += `M${px(end)} ${base}Q${px(end - length / 2)} ${px(base - rise * 2)} ${px(end - length)} ${base}`;
  }
  return d;
}

/** Flakes: one end on the clay, the other curled clear of it. */
function flaked(from: number, to: number, height: number, y: number): string {
  const room = to - from;
  if (room < height * 0.6) return "";
  const many = Math.max(1, Math.round(room / (height * 1.6)));
  const length = room / many;
  const foot = y - height * 0.36;
  let d = "";
  for (let i = 0; i < many; i++) {
    const end = to - i * length - 1.5;
    const start = end - length + height * 0.32;
    const tilt = height * TILT[i % TILT.length]!;
    d += `M${px(start)} ${px(foot - tilt)}Q${px((start + end) / 2)} ${px(foot - tilt * 0.1)} ${px(end)} ${px(foot)}`;
  }
  return d;
}
