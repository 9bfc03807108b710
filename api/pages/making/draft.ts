/** What stands on the Making bench, and the questions it makes. @module */
import type { DrawRulerData, PlanBatchData, WorkOutSizesData } from "@ringtrue/sdk";
import { THAW } from "../../schemas/larch-lane.ts";
import { currentGlaze } from "../check/draft.ts";
import { buildQuestion, type FieldFault } from "../check/request.ts";
import { readKept } from "../check/store.ts";
import { fill } from "../fill.ts";
import { readNumber } from "../shared/read-number.ts";
import words from "../words.json" with { type: "json" };
import { FLOOR } from "./pot-drawing.ts";

export type Form = keyof typeof words.making.forms;

/** Lengths as typed: a number is in `unit`, and text such as `3 1/2 in` is read by the service. */
export interface MakingDraft {
  unit: "mm" | "in";
  form: Form;
  height: string;
  rim: string;
  belly: string;
  foot: string;
  wall: string;
  pieces: string;
  percent: string;
  plusMinus: string;
  drying: string;
  seat: string;
  play: string;
  glazeOnSeat: string;
  dry: string;
  gravity: string;
}

/** The jar of Larch Lane. */
export const JAR_DRAFT: MakingDraft = {
  unit: "mm",
  form: "jar",
  height: "100",
  rim: "93",
  belly: "110",
  foot: "72",
  wall: "5",
  pieces: "6",
  percent: "12",
  plusMinus: "0.5",
  drying: "6",
  seat: "84",
  play: "0.8",
  glazeOnSeat: "0",
  dry: "2000",
  gravity: "1.45",
};

const KEY = "ringtrue-making";
export function keptDraft(): MakingDraft {
  try {
    return { ...JAR_DRAFT, ...(JSON.parse(localStorage.getItem(KEY) ?? "{}") as Partial<MakingDraft>) };
  } catch {
    return { ...JAR_DRAFT };
  }
}
export const keepDraft = (draft: MakingDraft) => localStorage.setItem(KEY, JSON.stringify(draft));

/** Words with a figure, its comma turned into the point that the service reads. */
const pointed = (text: string) => text.trim().replace(/(\d),(\d)/, "$1.$2");
/** A length for the service: a number where one was typed, otherwise the words, which it reads or refuses. */
const length = (text: string) => readNumber(text).value ?? pointed(text);
const number = (text: string) => readNumber(text).value ?? undefined;

/** A weight for the service: a number is in grams, and words such as `2,5 kg` it reads or refuses. */
const weight = (text: string) => {
  const grams = readNumber(text).value;
  return grams === null ? pointed(text) : `${grams} g`;
};

/** Fields of plain numbers, each with whether there is no answer without it. */
const NUMBERS = [
  ["percent", true],
  ["plusMinus", false],
  ["drying", false],
  ["pieces", false],
  ["gravity", false],
] as const;

/** What cannot be read or is missing. Nothing is put in its place: an answer would then be one to another question. */
export function unread(draft: MakingDraft): FieldFault[] {
  const faults = NUMBERS.flatMap(([field, needed]): FieldFault[] => {
    const { value, empty, fix } = readNumber(draft[field]);
    if (value !== null || (empty && !needed)) return [];
    const where = words.making.fieldNames[field];
    if (empty) return [{ field, message: fill(words.field.missing, { where }) }];
    const meant = fix === undefined ? "" : ` ${fill(words.field.meant, { fix })}`;
    return [{ field, message: fill(words.field.notNumber, { where, text: draft[field] }) + meant, fix }];
  });
  const where = words.making.fieldNames.dry;
  return draft.dry.trim() === ""
    ? [...faults, { field: "dry", message: fill(words.field.missing, { where }) }]
    : faults;
}

/** A bar as measured wet, dry and fired, all in one unit. */
export interface Bar {
  plastic: number;
  dry: number;
  fired: number;
}

/**
 * Bars, one a line; lines with fewer than three lengths are passed over. Semicolons, tabs or blanks part the lengths, and
 * a comma within one is then a decimal comma; a line with commas alone has three lengths.
 * @returns null where a length cannot be read
 * @example readBars("100,5; 94; 88") // [{ plastic: 100.5, dry: 94, fired: 88 }]
 */
export function readBars(text: string): Bar[] | null {
  const bars: Bar[] = [];
  for (const line of text.split("\n").map((one) => one.trim())) {
    const between = /[;\t]/.test(line) ? /[;\t]+/ : /\s/.test(line) ? /,?\s+/ : /,/;
    const cells = line.split(between).filter((cell) => cell.trim() !== "");
    if (cells.length < 3) continue;
    const [plastic, dry, fired] = cells.map((cell) => readNumber(cell).value) as (number | null)[];
    if (plastic == null || dry == null || fired == null || (between.source === "," && cells.length > 3)) return null;
    bars.push({ plastic, dry, fired });
  }
  return bars;
}

function shrinkage({ percent, plusMinus, drying }: MakingDraft) {
  return {
    percent: number(percent) ?? Number.NaN,
    ...(number(plusMinus) === undefined ? {} : { plusMinus: number(plusMinus)! }),
    ...(number(drying) === undefined ? {} : { dryingPercent: number(drying)! }),
  };
}

/** Which sizes a form has. */
export const PARTS: Readonly<Record<Form, readonly ("height" | "rim" | "belly" | "foot" | "wall")[]>> = {
  jar: ["height", "rim", "belly", "foot", "wall"],
  pot: ["height", "rim", "belly", "foot", "wall"],
  bowl: ["height", "rim", "foot", "wall"],
  cylinder: ["height", "rim", "wall"],
};

export function sizesQuestion(draft: MakingDraft): WorkOutSizesData["body"] {
  const given = PARTS[draft.form].filter((part) => draft[part].trim() !== "");
  const fired = Object.fromEntries(given.map((part) => [part, length(draft[part])]));
  const pieces = number(draft.pieces);
  const all = PARTS[draft.form].every((part) => readNumber(draft[part]).value !== null);
  const at = (across: string, up: number) => ({ across: length(across), up });
  const tall = readNumber(draft.height).value ?? 0;
  const floor = (readNumber(draft.wall).value ?? 0) * FLOOR;
  const shared = { dimensions: "outside" as const, wall: length(draft.wall), floor };
  const outline =
    draft.form === "cylinder"
      ? { form: "straight" as const, diameter: length(draft.rim), height: length(draft.height), ...shared }
      : draft.form === "bowl"
        ? {
            form: "tapered" as const,
            foot: length(draft.foot),
            rim: length(draft.rim),
            height: length(draft.height),
            ...shared,
          }
        : {
            form: "points" as const,
            points: [at(draft.foot, 0), at(draft.belly, tall * 0.55), at(draft.rim, tall)],
            ...shared,
          };
  const gallery = draft.form === "jar" && draft.seat.trim() !== "" ? { gallery: length(draft.seat) } : {};
  return {
    unit: draft.unit,
    answerIn: draft.unit,
    shrinkage: shrinkage(draft),
    fired: { ...fired, ...gallery },
    ...(pieces === undefined || pieces === 1 ? {} : { set: { pieces } }),
    ...(draft.form === "jar" && draft.seat.trim() !== ""
      ? {
          lid: {
            seat: length(draft.seat),
            stage: "fired" as const,
            clearance: length(draft.play),
            ...(draft.glazeOnSeat.trim() === "" ? {} : { glaze: length(draft.glazeOnSeat) }),
            firedTogether: true,
          },
        }
      : {}),
    ...(all ? { profile: outline } : {}),
  };
}

export function rulerQuestion(draft: MakingDraft): DrawRulerData["body"] {
  const { percent, plusMinus } = shrinkage(draft);
  const given = plusMinus === undefined ? { percent } : { percent, plusMinus };
  const ruler = { length: draft.unit === "in" ? "6 in" : "150 mm" };
  return { unit: draft.unit, shrinkage: given, draw: { ruler }, page: "A4" };
}

/** The batch of the recipe on the Check page, or of Thaw where nothing is kept; null where it is no recipe. */
export function batchQuestion(draft: MakingDraft): PlanBatchData["body"] | null {
  const kept = readKept()?.draft;
  const glaze = kept ? buildQuestion(kept, currentGlaze(kept)).parts.glaze : { recipe: THAW.recipe };
  const name = kept ? currentGlaze(kept).name || words.check.unnamed : words.sample.glaze;
  if (!glaze || !("recipe" in glaze)) return null;
  const { thicknessMm: _, ...made } = glaze as { thicknessMm?: number } & typeof glaze;
  const gravity = number(draft.gravity);
  return {
    name,
    glaze: made,
    amount: { dry: weight(draft.dry) },
    ...(gravity === undefined ? {} : { specificGravity: gravity }),
  };
}

/** Pointers of the service → fields of this bench. */
export const PLACES: ReadonlyMap<string, string> = new Map([
  ["/fired/height", "height"],
  ["/fired/rim", "rim"],
  ["/fired/belly", "belly"],
  ["/fired/foot", "foot"],
  ["/fired/wall", "wall"],
  ["/fired/gallery", "seat"],
  ["/profile/wall", "wall"],
  ["/profile", "height"],
  ["/shrinkage/percent", "percent"],
  ["/shrinkage/plusMinus", "plusMinus"],
  ["/shrinkage/dryingPercent", "drying"],
  ["/set", "pieces"],
  ["/lid/seat", "seat"],
  ["/lid/clearance", "play"],
  ["/lid/glaze", "glazeOnSeat"],
  ["/lid", "seat"],
  ["/amount", "dry"],
  ["/specificGravity", "gravity"],
]);
