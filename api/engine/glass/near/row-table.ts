/**
 * The measured glasses in compact form.
 *
 * One line a glass, fields joined by commas, numbers in base 36: glass, publication, year − 1850, then for each oxide
 * present a letter (A is the first of MODEL_OXIDES) and its share in 0.01 mol % (silica is the rest), then expansion in
 * 0.01e-6/K, transition in °C, Young's modulus in 0.1 GPa; an empty field was not measured.
 *
 * @module
 */
import { MODEL_OXIDES } from "../oxides.ts";

const N = MODEL_OXIDES.length;

/** One measured glass as it is packed. */
export interface PackedGlass {
  glass: number;
  publication: number;
  year: number;
  /** Mole fractions in the order of MODEL_OXIDES. */
  x: Float64Array;
  /** [1e-6/K] */
  expansion: number | undefined;
  /** [°C] */
  transitionC: number | undefined;
  /** [GPa] */
  youngsGPa: number | undefined;
}

/** Unpacked table: typed arrays, NaN where not measured. */
export interface RowTable {
  count: number;
  glass: Int32Array;
  publication: Int32Array;
  year: Int16Array;
  /** Mole per cent, row by row in the order of MODEL_OXIDES. */
  molePercent: Float32Array;
  expansion: Float32Array;
  transitionC: Float32Array;
  youngsGPa: Float32Array;
}

/** Packs glasses, one line each. */
export function packRows(glasses: readonly PackedGlass[]): string {
  const whole = (value: number | undefined, unit: number) => (value === undefined ? "" : encode(value / unit));
  return glasses
    .map(({ glass, publication, year, x, expansion, transitionC, youngsGPa }) => {
      let oxides = "";
      for (let i = 1; i < N; i++) {
        const share = Math.round(x[i]! * 10_000);
        if (share > 0) oxides += String.fromCharCode(65 + i) + encode(share);
      }
      const values = [whole(expansion, 0.01), whole(transitionC, 1), whole(youngsGPa, 0.1)];
      return [encode(glass), encode(publication), encode(year - 1850), oxides, ...values].join(",");
    })
    .join("\n");
}

/** Unpacks what {@link packRows} packed. */
export function unpackRows(text: string): RowTable {
  const lines = text.split("\n");
  const count = lines.length;
  const table: RowTable = {
    count,
    glass: new Int32Array(count),
    publication: new Int32Array(count),
    year: new Int16Array(count),
    molePercent: new Float32Array(count * N),
    expansion: new Float32Array(count),
    transitionC: new Float32Array(count),
    youngsGPa: new Float32Array(count),
  };
  lines.forEach((line, row) => {
    const [glass = "", publication = "", year = "", oxides = "", expansion, transition, youngs] = line.split(",");
    table.glass[row] = Number.parseInt(glass, 36);
    table.publication[row] = Number.parseInt(publication, 36);
    table.year[row] = 1850 + Number.parseInt(year, 36);
    let silica = 100;
    // Capital letters name oxides, base-36 digits are written small.
    for (const part of oxides.match(/[A-Z][0-9a-z]+/g) ?? []) {
      const share = Number.parseInt(part.slice(1), 36) / 100;
      table.molePercent[row * N + part.charCodeAt(0) - 65] = share;
      silica -= share;
    }
    table.molePercent[row * N] = silica;
    table.expansion[row] = decode(expansion, 0.01);
    table.transitionC[row] = decode(transition, 1);
    table.youngsGPa[row] = decode(youngs, 0.1);
  });
  return table;
}

function encode(value: number): string {
  return Math.round(value).toString(36);
}

function decode(field: string | undefined, unit: number): number {
  return field ? Number.parseInt(field, 36) * unit : Number.NaN;
}
