/** The lines and bands of the cooling picture. @module */
import { px, type Sheet } from "../marks/sheet.ts";
import type { Tint } from "../marks/theme.ts";
import type { Frame } from "./frame.ts";
import { type Length, type Lengths, lengthAt } from "./lengths.ts";

/** A magnification and shift of the drawing, for the lens. */
interface View {
  power: number;
  dx: number;
  dy: number;
  /** Points left of this are out of sight [px]. */
  from?: number;
}
const PLAIN: View = { power: 1, dx: 0, dy: 0 };

/** Draws both bands and lines; above the set point the glaze is a wavy line riding the clay. */
export function drawCurves(sheet: Sheet, frame: Frame, lengths: Lengths, view: View = PLAIN): void {
  const set = lengths.body.filter(({ c }) => c <= lengths.setC);
  drawBand(sheet, frame, set, "speck", 0.3, view);
  drawBand(sheet, frame, lengths.glaze, "hold", 0.22, view);
  const thick = view === PLAIN ? 1 : 1.5;
  drawLine(sheet, frame, lengths.body, { stroke: "speck", width: 5 * thick }, view);
  drawLine(sheet, frame, lengths.glaze, { stroke: "ink", width: 2.25 * thick }, view);
  if (view === PLAIN) drawRunny(sheet, frame, lengths);
}

/** Points from the cold end up to the first that is out of sight; curves run from cold to hot. */
function inSight({ x }: Frame, curve: readonly Length[], { power, dx, from }: View): readonly Length[] {
  if (from === undefined) return curve;
  const out = curve.findIndex(({ c }) => x(c) * power + dx < from);
  return out < 0 ? curve : curve.slice(0, out + 1);
}

function place(frame: Frame, { power, dx, dy }: View, c: number, percent: number): string {
  return `${px(frame.x(c) * power + dx)} ${px(frame.y(percent) * power + dy)}`;
}

function drawLine(
  sheet: Sheet,
  frame: Frame,
  curve: readonly Length[],
  pen: { stroke: Tint; width: number },
  view: View,
) {
  const points = inSight(frame, curve, view).map(({ c, percent }) => place(frame, view, c, percent));
  sheet.path(`M${points.join("L")}`, pen);
}

function drawBand(sheet: Sheet, frame: Frame, curve: readonly Length[], fill: Tint, opacity: number, view: View) {
  const seen = inSight(frame, curve, view);
  const upper = seen.map(({ c, percent, above }) => place(frame, view, c, percent + above));
  const lower = seen.map(({ c, percent, below }) => place(frame, view, c, percent - below)).reverse();
  sheet.path(`M${[...upper, ...lower].join("L")}Z`, { fill, opacity });
}

function drawRunny(sheet: Sheet, { x, y }: Frame, { body, setC, hotC }: Lengths): void {
  const points: string[] = [];
  const length = x(setC) - x(hotC);
  for (let i = 0; i * 3 <= length - 6; i++) {
    const at = x(hotC) + i * 3;
    const c = hotC - ((hotC - setC) * i * 3) / length;
    points.push(`${px(at)} ${px(y(lengthAt(body, c)) - 6 + 2.4 * Math.sin(i / 1.15))}`);
  }
  if (points.length > 1) sheet.path(`M${points.join("L")}`, { stroke: "ink", width: 1.75 });
}
