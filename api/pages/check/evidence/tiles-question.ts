/** From tiles as typed to the question for evidence, and from its pointers back to fields. @module */
import type { Body } from "@ringtrue/sdk";
import { fill } from "../../fill.ts";
import { readNumber } from "../../shared/read-number.ts";
import type { service } from "../../shared/service.ts";
import { toKelvins, toMm } from "../../shared/units.ts";
import words from "../../words.json" with { type: "json" };
import type { FieldFault, Question } from "../request.ts";
import { type Fate, isQuench, type TilesDraft } from "./tiles.ts";

type EvidenceRequest = Parameters<typeof service.evidence.learn>[0];
type Tile = NonNullable<EvidenceRequest["tiles"]>[number];
type Seen = Tile["seen"][number];

/** Cracks that came "within months" were not there in the first week [days]. */
const WHOLE_FOR_DAYS = 7;

export interface TilesQuestion {
  request: EvidenceRequest;
  faults: FieldFault[];
  places: Map<string, string>;
}

/** @param bench - what could be read of the bench above */
export function tilesQuestion(draft: TilesDraft, bench: Question["parts"]): TilesQuestion {
  const { evidence, field } = words;
  const faults: FieldFault[] = [];
  const places = new Map<string, string>();
  const { firing, ware } = bench;
  const number = (id: string, label: string, text: string) => {
    const { value, empty, fix } = readNumber(text);
    if (value !== null || (empty && id.endsWith("-coat"))) return value ?? undefined;
    const meant = fix === undefined ? "" : ` ${fill(field.meant, { fix })}`;
    faults.push({ field: id, message: fill(field.notNumber, { where: label, text }) + meant, fix });
    return undefined;
  };
  const tiles = draft.tiles.map((tile, i): Tile => {
    const name = fill(evidence.tile, { n: i + 1 });
    places.set(`/tiles/${i}`, `tile-${i}-clay`);
    places.set(`/tiles/${i}/thicknessMm`, `tile-${i}-coat`);
    places.set(`/tiles/${i}/seen`, isTimed(tile.fate) ? `tile-${i}-number` : `tile-${i}-fate`);
    const body: Body | null = tile.clay === "bench" ? bench.body : { class: tile.clay };
    if (!body) faults.push({ field: `tile-${i}-clay`, message: fill(evidence.noClay, { tile: name }) });
    const coat = number(`tile-${i}-coat`, `${name}, ${evidence.coat}`, tile.coat);
    const timed = isTimed(tile.fate);
    const typed = timed ? number(`tile-${i}-number`, `${name}, ${labelOf(tile.fate)}`, tile.number) : 0;
    const figure = isQuench(tile.fate) ? toKelvins(typed ?? 0, draft.units.temperature) : (typed ?? 0);
    const skin = coat === undefined ? {} : { thicknessMm: Number(toMm(coat, draft.units.length).toPrecision(10)) };
    return {
      name,
      body: body ?? { class: "" },
      firing,
      ware,
      ...skin,
      seen: seenOf(tile.fate, Number(figure.toPrecision(10))),
    };
  });
  const { thicknessMm, ...glaze } = (bench.glaze ?? {}) as { thicknessMm?: number };
  const prior = draft.known === "bench" && bench.glaze ? { glaze: glaze as EvidenceRequest["glaze"] } : {};
  const skin = thicknessMm === undefined ? {} : { thicknessMm };
  const judged = bench.body ? { bodies: [{ name: evidence.yours, body: bench.body, firing, ware, ...skin }] } : {};
  return { request: { ...prior, ...skin, tiles, ...judged }, faults, places };
}

/** Whether a number belongs to what the tile did. */
export const isTimed = (fate: Fate): boolean => fate !== "atOnce" && fate !== "shivered";

export function labelOf(fate: Fate): string {
  const { evidence } = words;
  return isQuench(fate) ? evidence.plunge : fate === "never" ? evidence.lookedAfter : evidence.seenAfter;
}

function seenOf(fate: Fate, figure: number): Seen[] {
  switch (fate) {
    case "atOnce":
      return [{ kind: "crazed", byDays: 0 }];
    case "days":
      return [{ kind: "crazed", byDays: figure, soundAtDays: 0 }];
    case "months":
      return [{ kind: "crazed", byDays: figure, soundAtDays: figure > WHOLE_FOR_DAYS ? WHOLE_FOR_DAYS : 0 }];
    case "never":
      return [{ kind: "not-crazed", afterDays: figure }, { kind: "not-shivered" }];
    case "shivered":
      return [{ kind: "shivered" }];
    default:
      return [{ kind: "quench", differenceK: figure, cracked: fate === "quenchCracked" }];
  }
}
