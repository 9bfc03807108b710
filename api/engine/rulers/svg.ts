/** A sheet as SVG at true scale. @module */
import { round } from "../quantity.ts";
import type { Label, SheetDrawing, Stroke } from "./drawing.ts";

/** Decimals of a millimetre kept [-]. */
const DECIMALS = 3;
const n = (mm: number) => String(round(mm, DECIMALS));

/**
 * SVG whose width and height are in millimetres and whose user unit is one of them.
 * @returns a whole document; text is escaped
 */
export function toSvg(sheet: SheetDrawing): string {
  const { widthMm, heightMm, title, strokes, labels } = sheet;
  const paths = new Map<string, string[]>();
  for (const stroke of strokes) {
    const look = `stroke-width="${n(stroke.width)}"${stroke.dashed ? ' stroke-dasharray="2 1.5"' : ""}`;
    const same = paths.get(look);
    if (same) same.push(pathOf(stroke));
    else paths.set(look, [pathOf(stroke)]);
  }
  const size = `width="${n(widthMm)}mm" height="${n(heightMm)}mm" viewBox="0 0 ${n(widthMm)} ${n(heightMm)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img">`,
    `<title>${escapeXml(title)}</title>`,
    `<rect width="${n(widthMm)}" height="${n(heightMm)}" fill="#fff"/>`,
    `<g fill="none" stroke="#000">`,
    ...[...paths].map(([look, d]) => `<path ${look} d="${d.join("")}"/>`),
    "</g>",
    `<g fill="#000" font-family="Helvetica, Arial, sans-serif">`,
    ...labels.map(textOf),
    "</g>",
    "</svg>",
    "",
  ].join("\n");
}

function pathOf({ points, closed }: Stroke): string {
  const [first, ...rest] = points.map(([x, y]) => `${n(x)} ${n(y)}`);
  return `M${first}${rest.map((point) => `L${point}`).join("")}${closed ? "Z" : ""}`;
}

function textOf({ text, x, y, size, anchor = "start", bold }: Label): string {
  const weight = bold ? ' font-weight="700"' : "";
  const side = anchor === "start" ? "" : ` text-anchor="${anchor}"`;
  return `<text x="${n(x)}" y="${n(y)}" font-size="${n(size)}"${weight}${side}>${escapeXml(text)}</text>`;
}

function escapeXml(text: string): string {
  // Characters that no XML document may hold are dropped, the rest are named.
  return text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, "")
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;");
}
