/** A blend as a table that any spreadsheet opens (RFC 4180). @module */
import type { BlendGap, BlendPoint } from "./types.ts";

const HEADINGS = [
  "index",
  "label",
  "verdict",
  "sound [-]",
  "crazes on cooling [-]",
  "crazes later [-]",
  "shivers [-]",
  "expansion 20-300 °C [1e-6/K]",
  "low",
  "high",
  "stress [MPa; tension +]",
  "low",
  "high",
];

/** The first row. */
export function csvHeading(corners: readonly string[]): string {
  return row([
    ...HEADINGS.slice(0, 2),
    ...corners.map((name) => `${name} [%]`),
    ...HEADINGS.slice(2),
    "recipe",
    "problem",
  ]);
}

/** One point. */
export function csvRow(point: BlendPoint | BlendGap): string {
  const shares = point.shares.map((share) => Math.round(share * 1e4) / 100);
  if (!("verdict" in point)) {
    return row([point.index, point.label, ...shares, ...Array(HEADINGS.length - 2).fill(""), "", point.problem]);
  }
  const { probabilities: p, expansion: e, stress: s } = point;
  const name = (line: BlendPoint["recipe"][number]) =>
    "material" in line ? line.material : (line.name ?? ("formula" in line ? line.formula : "own material"));
  const recipe = [...point.recipe, ...point.additions].map((line) => `${name(line)} ${line.parts}`).join("; ");
  return row([
    point.index,
    point.label,
    ...shares,
    point.verdict,
    p.sound,
    p.crazesOnCooling,
    p.crazesLater,
    p.shivers,
    e.value,
    e.low,
    e.high,
    s.value,
    s.low,
    s.high,
    recipe,
    "",
  ]);
}

function row(cells: readonly (string | number)[]): string {
  return `${cells.map(cell).join(",")}\r\n`;
}

/** Quoted where it has to be; a text that a spreadsheet would take for a formula is kept a text. */
function cell(value: string | number): string {
  if (typeof value === "number") return String(value);
  const text = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
