/** Stress through the thickness: glaze, clay, and glaze again. @module */
import type { FitReport, Ware } from "../../fit/types.ts";
import { millimetres, signed } from "../../fit/words.ts";
import { clayFill, crackFill, waveFill } from "../marks/fills.ts";
import { px, Sheet } from "../marks/sheet.ts";
import { textWidth } from "../marks/text-width.ts";
import type { PictureOptions } from "../types.ts";
import { HIGH_MPA, LOW_MPA, type StressScale, stressScale } from "../verdict/scale.ts";
import { drawAxis } from "../verdict/under.ts";
import { type Layer, type Wall, wallOf } from "./layers.ts";

/**
 * The wall cut through, and the stress at each depth on the fixed scale: glaze and clay hold each other in balance, so
 * that a squeezed glaze leaves the clay a little stretched. Level where the wall stays straight, sloping where it bends.
 * @param report - the answer
 * @param options - theme, width [px], `ware` as asked in the fit (wall [mm], which faces are glazed)
 * @returns SVG text with title and description
 * @example stressPicture(checkFit(question), { ware: question.ware })
 */
export function stressPicture(report: FitReport, options: PictureOptions & { ware?: Ware } = {}): string {
  const sheet = new Sheet(options);
  const wall = wallOf(report, options.ware);
  const { narrow, width, size } = sheet;
  const cut = narrow ? 34 : 84;
  const names = narrow ? 0 : Math.max(...wall.layers.map((layer) => textWidth(nameOf(layer), size, true))) + 20;
  const scale = stressScale((narrow ? 4 : 6) + cut + names + 8, width - (narrow ? 4 : 6));
  const head = size + 12;
  sheet.text(scale.left, size, "stress in the wall at 20 °C, MPa", { size, tint: "ink2" });

  const coats = wall.layers.findIndex(({ material }) => material === "clay");
  const skin = Math.max(30, (narrow ? 40 : 46) / coats);
  const clay = narrow ? 92 : 128;
  let y = head;
  for (const layer of wall.layers) {
    const tall = layer.material === "glaze" ? skin : clay;
    drawCut(sheet, layer, y, tall, cut);
    if (!narrow) sheet.text(cut + 22, y + tall / 2 + size * 0.36, nameOf(layer), { size, bold: true });
    drawStress(sheet, layer, scale, y, tall);
    y += tall;
  }
  const zero = scale.x(0);
  sheet.path(`M${px(zero)} ${head - 4}V${px(y + 5)}`, { stroke: "ink", width: 1.5 });
  for (const edge of edgesOf(wall, skin, clay, head)) {
    sheet.path(`M${px(scale.left)} ${edge}H${px(scale.right)}`, { stroke: "rule" });
  }
  const foot = drawAxis(sheet, scale, y, y + 8);
  const notes = [tooThick(wall, skin, clay), bending(wall)].filter((words) => words !== "");
  notes.forEach((words, i) => {
    sheet.text(narrow ? 4 : 6, foot + size + 2 + i * (size + 4), words, { size, tint: "ink2" });
  });
  return sheet.finish(foot + notes.length * (size + 4) + 8, "stress", told(report, wall));
}

function edgesOf({ layers }: Wall, skin: number, clay: number, head: number): number[] {
  let y = head;
  const edges = [y];
  for (const { material } of layers) {
    y += material === "glaze" ? skin : clay;
    edges.push(y);
  }
  return edges;
}

function drawCut(sheet: Sheet, { material }: Layer, y: number, tall: number, width: number): void {
  const left = sheet.narrow ? 4 : 6;
  if (material === "clay") sheet.rect(left, y, width, tall, { fill: clayFill(sheet) });
  else sheet.rect(left + 0.75, y + 0.75, width - 1.5, tall - 1.5, { fill: "glaze", stroke: "ink", width: 1.5 });
}

function nameOf({ material, name, mm }: Layer): string {
  return `${name}, ${material === "glaze" ? millimetres(mm) : `${Number(mm.toFixed(1))}\u00a0mm`}`;
}

function drawStress(sheet: Sheet, layer: Layer, scale: StressScale, y: number, tall: number): void {
  const { size } = sheet;
  const inside = (mpa: number) => Math.min(Math.max(scale.x(mpa), scale.left), scale.right);
  const zero = scale.x(0);
  const [outer, inner] = [inside(layer.outer), inside(layer.inner)];
  const mean = (layer.outer + layer.inner) / 2;
  const tint = mean > 0 ? "pull" : "push";
  for (const { sign, top, bottom, start, end } of partsOf(layer, y + 1, y + tall - 1)) {
    const shape = `M${px(zero)} ${px(top)}H${px(inside(start))}L${px(inside(end))} ${px(bottom)}H${px(zero)}Z`;
    const fill = sign > 0 ? crackFill(sheet) : waveFill(sheet);
    sheet.path(shape, { fill, stroke: sign > 0 ? "pull" : "push", width: 1.5 });
  }
  const middle = y + tall / 2;
  let [from, to] = [Math.min(outer, inner, zero), Math.max(outer, inner, zero)];
  if (layer.likely) {
    const [low, high] = layer.likely;
    const bar = `M${px(inside(low))} ${middle}H${px(inside(high))}`;
    sheet.path(bar, { stroke: "paper", width: 7 });
    sheet.path(bar, { stroke: "ink", width: 2 });
    // An arrowhead where the interval runs on beyond the scale.
    const ends = [
      low >= LOW_MPA ? `M${px(inside(low))} ${middle - 5}v10` : `M${px(scale.left + 5)} ${middle - 5}l-5 5l5 5`,
      high <= HIGH_MPA ? `M${px(inside(high))} ${middle - 5}v10` : `M${px(scale.right - 5)} ${middle - 5}l5 5l-5 5`,
    ];
    sheet.path(ends.join(""), { stroke: "ink", width: 1.5 });
    from = Math.min(from, inside(low));
    to = Math.max(to, inside(high));
  }
  const slopes = Math.abs(layer.outer - layer.inner) >= 1;
  const words = slopes ? `${signed(layer.outer)} to ${signed(layer.inner)} MPa` : `${signed(layer.outer)} MPa`;
  const [barFrom, barTo] = [Math.min(outer, inner, zero), Math.max(outer, inner, zero)];
  // Beside the interval if there is room, else beside the bar, above the interval.
  const places: [number, "start" | "end", number][] = [
    [to + 9, "start", middle + size * 0.36],
    [from - 9, "end", middle + size * 0.36],
    [barTo + 9, "start", y + size + 2],
    [barFrom - 9, "end", y + size + 2],
  ];
  const length = textWidth(words, size, true);
  const fits = ([at, anchor]: (typeof places)[number]) =>
    anchor === "start" ? at + length <= scale.right : at - length >= scale.left;
  const [at, anchor, base] = places.find(fits) ?? [scale.right, "end", y + size + 2];
  sheet.text(at, base, words, { size, bold: true, tint, anchor, halo: true });
}

/** A layer's profile, parted where it changes sign, so that each part carries the fill of its side. */
function partsOf({ outer, inner }: Layer, top: number, bottom: number) {
  if (outer * inner >= 0) return [{ sign: outer + inner, top, bottom, start: outer, end: inner }];
  const turn = top + ((bottom - top) * outer) / (outer - inner);
  return [
    { sign: outer, top, bottom: turn, start: outer, end: 0 },
    { sign: inner, top: turn, bottom, start: 0, end: inner },
  ];
}

function tooThick({ layers }: Wall, skin: number, clay: number): string {
  const body = layers.find(({ material }) => material === "clay");
  const glaze = layers.filter(({ material }) => material === "glaze");
  if (!body || glaze.length === 0) return "";
  const perMm = clay / body.mm;
  const times = glaze.map(({ mm }) => skin / mm / perMm);
  const [least, most] = [Math.min(...times), Math.max(...times)];
  const figure = (n: number) => (n >= 10 ? Math.round(n) : Number(n.toFixed(1)));
  if (least > 0.95 && most < 1.05) return "Drawn to scale.";
  if (figure(least) !== figure(most)) return "Not drawn to scale.";
  return most > 1 ? `Glaze drawn ${figure(most)} times too thick.` : `Clay drawn ${figure(1 / most)} times too thick.`;
}

function bending({ bends }: Wall): string {
  return bends ? `The glazed face turns ${bends}.` : "";
}

function told({ stress, body }: FitReport, wall: Wall): { title: string; description: string } {
  const [glaze, clay] = [wall.layers[0]!, wall.layers.find(({ material }) => material === "clay")!];
  const pulled = stress.value > 0;
  const level = Math.abs(stress.value) < 1;
  const title = level
    ? "Cold, glaze and clay hardly pull on each other."
    : `Cold, the glaze is ${pulled ? "stretched" : "squeezed"} at ${signed(stress.value)}\u00a0MPa and the clay ${pulled ? "squeezed" : "stretched"} in return.`;
  const faces = {
    "both-faces": "glazed on both faces",
    "one-face": "glazed on one face, closed so that it cannot bend",
    "one-face-free": "glazed on one face, free to bend",
  };
  const description = [
    `Stress through a wall ${faces[wall.glazed]}, from −200 megapascal, squeezed, on the left, to +80, pulled, on the right.`,
    `${glaze.name === "glaze" ? "Glaze" : "Outer coat"} ${millimetres(glaze.mm)}: ${signed(glaze.outer)} MPa at its surface, ${signed(glaze.inner)} at its inner side; glaze as a whole ${signed(stress.value)}, 9 in 10 between ${signed(stress.low)} and ${signed(stress.high)}.`,
    `Clay ${Number(clay.mm.toFixed(1))} mm: ${signed(clay.outer, 1)} MPa beside the glaze, ${signed(clay.inner, 1)} at its far side; ${wall.glazed === "one-face-free" ? "beside the glaze" : "mean"} 9 in 10 between ${signed(body.stress.low, 1)} and ${signed(body.stress.high, 1)}.`,
    bending(wall),
  ].join(" ");
  return { title, description: description.trim() };
}
