/**
 * Who shares which uncertain input. All tiles of a glaze share its set point and stiffness, all tiles of a clay share
 * that clay's expansion, and every tile has a thickness of its own. The thousand draws of the fit are kept, and the
 * columns of a clay or a tile are shuffled among them, so that what is not shared is independent.
 *
 * @module
 */
import { DRAWS, type Draws, INPUTS, type Input } from "../fit/draws.ts";
import { seededRandom } from "../numeric/lattice.ts";

/** Inputs that belong to the clay, or to how this glaze meets it. */
const OF_BODY: ReadonlySet<Input> = new Set<Input>([
  "bodyMean",
  "bodyQuartz",
  "bodyRise",
  "bodyCristobalite",
  "bodyStiffness",
  "moisture",
  "onWare",
  "interface",
  "rupture",
]);
/** Inputs that differ from tile to tile. */
const OF_TILE: ReadonlySet<Input> = new Set<Input>(["thickness"]);

/**
 * Deviates for one tile.
 * @param draws - deviates of the fit
 * @param seed - seed of the request
 * @param bodyKey - text that tells clays apart; equal texts share their clay
 * @param tileKey - text that tells tiles apart
 * @example tileDraws(drawsFor(1), 1, "red", "a").normal.bodyMean.length // 1024
 */
export function tileDraws(draws: Draws, seed: number, bodyKey: string, tileKey: string): Draws {
  const byBody = shuffled(seed, `body ${bodyKey}`);
  const byTile = shuffled(seed, `tile ${tileKey}`);
  const orderOf = (input: Input) => (OF_BODY.has(input) ? byBody : OF_TILE.has(input) ? byTile : null);
  const dealt = (columns: Draws["even"]): Draws["even"] => {
    const out = { ...columns };
    for (const input of INPUTS) {
      const order = orderOf(input);
      if (order) out[input] = take(columns[input], order);
    }
    return out;
  };
  return {
    even: dealt(draws.even),
    normal: dealt(draws.normal),
    // The shaped inputs are the glaze's own and shared by all.
    shaped: draws.shaped,
    interfaceToughness: take(draws.interfaceToughness, byBody),
  };
}

function take(column: Float64Array, order: Uint16Array): Float64Array {
  return Float64Array.from(order, (i) => column[i]!);
}

/** A shuffle that depends on seed and text alone. */
function shuffled(seed: number, text: string): Uint16Array {
  const random = seededRandom(hash(text) ^ Math.imul(seed, 0x9e3779b1));
  const order = Uint16Array.from({ length: DRAWS }, (_, i) => i);
  for (let i = DRAWS - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    const other = order[j]!;
    order[j] = order[i]!;
    order[i] = other;
  }
  return order;
}

/** 32-bit FNV-1a. */
function hash(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h >>> 0;
}

/** A value as text, the same whatever order its fields came in. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const fields = Object.entries(value).filter(([, v]) => v !== undefined);
  fields.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([k, v]) => `${JSON.stringify(k)}:${canonical(v)}`).join(",")}}`;
}
