/** Tiles as typed, and how they are kept in the browser. @module */
import { readNumber } from "../../shared/read-number.ts";
import { fromKelvins, fromMm, METRIC, tidy, toKelvins, toMm, type Units } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };

export type Fate = keyof typeof words.evidence.fates;

/** One tile as typed. */
export interface TileDraft {
  /** A class of clay, or `bench` for the clay above. */
  clay: string;
  coat: string;
  fate: Fate;
  /** Days, or degrees of a quench. */
  number: string;
}

export interface TilesDraft {
  units: Units;
  known: "bench" | "jar";
  tiles: TileDraft[];
  /** Marks of glazes that came from tiles. */
  used: string[];
}

export const MOST_TILES = 30;
const KEY = "ringtrue-tiles";

/** What is typed beside a fate before anybody has typed: days, or degrees between oven and water [K]. */
const USUAL: Readonly<Record<Fate, number | null>> = {
  atOnce: null,
  days: 7,
  months: 90,
  never: 90,
  shivered: null,
  quenchCracked: 130,
  quenchHeld: 130,
};

export const isQuench = (fate: Fate): boolean => fate === "quenchCracked" || fate === "quenchHeld";

/** @example usualNumber("quenchHeld", { temperature: "F", length: "mm" }) // "234" */
export function usualNumber(fate: Fate, { temperature }: Units): string {
  const usual = USUAL[fate];
  if (usual === null) return "";
  return isQuench(fate) ? tidy(fromKelvins(usual, temperature), 0) : String(usual);
}

export const newTile = (coat: string, units: Units): TileDraft => ({
  clay: "bench",
  coat,
  fate: "never",
  number: usualNumber("never", units),
});

/** Writes typed figures in other units; what is no number stays as typed. */
export function turnTiles(draft: TilesDraft, next: Units): void {
  const { units: old } = draft;
  const turn = (text: string, to: (value: number) => number, decimals: number) => {
    const { value } = readNumber(text);
    return value === null ? text : tidy(to(value), decimals);
  };
  for (const tile of draft.tiles) {
    if (old.length !== next.length) {
      tile.coat = turn(tile.coat, (v) => fromMm(toMm(v, old.length), next.length), next.length === "in" ? 4 : 2);
    }
    if (isQuench(tile.fate) && old.temperature !== next.temperature) {
      tile.number = turn(tile.number, (v) => fromKelvins(toKelvins(v, old.temperature), next.temperature), 0);
    }
  }
  draft.units = { ...next };
}

/** Keeps the tiles for the next visit; a full or closed store loses nothing on the page. */
export function keepTiles(draft: TilesDraft): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(draft));
  } catch {}
}

/** The tiles of the last visit, as far as they can be read. */
export function keptTiles(): TilesDraft {
  const empty: TilesDraft = { units: { ...METRIC }, known: "bench", tiles: [], used: [] };
  try {
    const { units, known, tiles, used } = JSON.parse(localStorage.getItem(KEY) ?? "{}") as Partial<TilesDraft>;
    if (!Array.isArray(tiles)) return empty;
    return {
      units: { temperature: units?.temperature === "F" ? "F" : "C", length: units?.length === "in" ? "in" : "mm" },
      known: known === "jar" ? "jar" : "bench",
      used: Array.isArray(used) ? used.map(String) : [],
      tiles: tiles
        .filter(({ fate }) => fate in USUAL)
        .slice(0, MOST_TILES)
        .map(({ clay, coat, fate, number }) => ({
          clay: String(clay),
          coat: String(coat),
          fate,
          number: String(number),
        })),
    };
  } catch {
    return empty;
  }
}
