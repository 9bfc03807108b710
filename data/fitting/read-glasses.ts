/** Reads the measured glasses and says which lie in the domains of glazes. @module */
import { readFileSync } from "node:fs";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";

/** One measured glass. */
export interface GlassRow {
  glass: number;
  publication: number;
  year: number;
  /** Mole fractions in the order of MODEL_OXIDES. */
  x: Float64Array;
  /** Column name → measured value; absent where not measured. */
  measured: Readonly<Record<string, number>>;
}

/** Reads data/glasses/glasses.csv, in file order. */
export function readGlasses(): GlassRow[] {
  const [header = "", ...lines] = readFileSync(new URL("../glasses/glasses.csv", import.meta.url), "utf8")
    .trim()
    .split("\n");
  const names = header.trim().split(",");
  const oxideColumns = MODEL_OXIDES.map((oxide) => names.indexOf(oxide));
  if (oxideColumns.includes(-1)) throw new Error("glasses.csv lacks an oxide column");
  const firstProperty = 3 + MODEL_OXIDES.length;
  return lines.map((line) => {
    const cells = line.trim().split(",");
    const x = Float64Array.from(oxideColumns, (c) => Number(cells[c]));
    const total = x.reduce((a, b) => a + b, 0);
    const measured: Record<string, number> = {};
    for (let c = firstProperty; c < names.length; c++) if (cells[c]) measured[names[c]!] = Number(cells[c]);
    return {
      glass: Number(cells[0]),
      publication: Number(cells[1]),
      year: Number(cells[2]),
      x: x.map((v) => v / total),
      measured,
    };
  });
}
