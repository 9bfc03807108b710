/** From the bench to a question for the service, and from the service's pointers back to fields. @module */
import type { Body, Firing, FitRequest, Glaze, RecipeLine, Ware } from "@ringtrue/sdk";
import { fill } from "../fill.ts";
import { readNumber } from "../shared/read-number.ts";
import { toCelsius, toKelvins, toMm } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import type { Draft, GlazeDraft, Row } from "./draft.ts";

/** Something amiss at one field. */
export interface FieldFault {
  field: string;
  message: string;
  fix?: string;
  /** What it may have been, where there are a few. */
  choices?: string[];
}

/** A question under way. */
export interface Question {
  /** What could be read, each part by itself. */
  parts: { glaze: Glaze | null; body: Body | null; firing: Firing; ware: Ware };
  /** Null where something without which there is no question is missing. */
  request: FitRequest | null;
  missing: "glaze" | "clay" | null;
  faults: FieldFault[];
  /** Names of rows and fields left out. */
  leftOut: string[];
  /** Start of a pointer → field; the longest start that fits counts. */
  places: Map<string, string>;
}

/** Reads numbers off the bench and notes what is amiss. */
class Reader {
  readonly faults: FieldFault[] = [];
  readonly leftOut: string[] = [];
  readonly places = new Map<string, string>();

  number(field: string, text: string, where: string, convert: (value: number) => number = (v) => v) {
    const { value, empty, fix } = readNumber(text);
    if (value !== null) return Number(convert(value).toPrecision(10));
    if (!empty) {
      const said = fill(words.field.notNumber, { where, text });
      const meant = fix === undefined ? "" : ` ${fill(words.field.meant, { fix })}`;
      this.faults.push({ field, message: said + meant, fix });
      // A row says so itself, with its material.
      if (!field.startsWith("row-")) this.leftOut.push(where);
    }
    return undefined;
  }
}

/** The name of a row as a potter says it. */
export function rowName(row: Row, place: number): string {
  return row.material.trim()
    ? fill(words.field.row, { row: place + 1, name: row.material })
    : fill(words.field.rowBare, { row: place + 1 });
}

/**
 * @param skip - rows of the recipe to leave out because the service would not have them
 */
export function buildQuestion(draft: Draft, glaze: GlazeDraft, skip: ReadonlySet<number> = new Set()): Question {
  const reader = new Reader();
  const made = readGlaze(reader, draft, glaze, skip);
  const body = readBody(reader, draft);
  const firing = readFiring(reader, draft);
  const ware = readWare(reader, draft);
  const { faults, leftOut, places } = reader;
  const missing = made ? (body ? null : "clay") : "glaze";
  const request = made && body ? { glaze: made, body, firing, ware } : null;
  return { parts: { glaze: made, body, firing, ware }, request, missing, faults, leftOut, places };
}

function readGlaze(reader: Reader, draft: Draft, glaze: GlazeDraft, skip: ReadonlySet<number>): Glaze | null {
  const { names } = words.field;
  reader.places.set("/glaze", "glaze");
  reader.places.set("/glaze/thicknessMm", "thickness");
  const thicknessMm = reader.number("thickness", glaze.thickness, names.thickness, (v) => toMm(v, draft.units.length));
  const skin = thicknessMm === undefined ? {} : { thicknessMm };
  if (glaze.kind === "recipe") {
    const lines = readRows(reader, glaze.rows, skip);
    return lines.recipe.length > 0 ? { ...lines, ...skin } : null;
  }
  if (glaze.kind === "analysis") {
    const amounts: Record<string, number> = {};
    glaze.oxides.forEach(({ oxide, amount }, i) => {
      const where = fill(words.field.oxide, { row: i + 1, name: oxide });
      const value = reader.number(`oxide-${i}-amount`, amount, where);
      if (value === undefined || !oxide.trim()) return;
      amounts[oxide.trim()] = value;
      reader.places.set(`/glaze/oxides/amounts/${oxide.trim()}`, `oxide-${i}-amount`);
    });
    return Object.keys(amounts).length > 0 ? { oxides: { basis: glaze.basis, amounts }, ...skin } : null;
  }
  const expansion = readExpansion(reader, "", "/glaze/expansion", glaze, draft);
  return expansion ? { expansion, ...skin } : null;
}

function readRows(reader: Reader, rows: Row[], skip: ReadonlySet<number>) {
  const recipe: RecipeLine[] = [];
  const additions: RecipeLine[] = [];
  rows.forEach((row, i) => {
    const where = rowName(row, i);
    const parts = reader.number(`row-${i}-parts`, row.parts, where);
    const material = row.material.trim();
    if (!material && row.parts.trim() === "") return;
    if (parts === undefined || !material || skip.has(i)) {
      reader.leftOut.push(where);
      return;
    }
    const list = row.addition ? additions : recipe;
    const at = `/glaze/${row.addition ? "additions" : "recipe"}/${list.length}`;
    reader.places.set(at, `row-${i}-material`);
    reader.places.set(`${at}/parts`, `row-${i}-parts`);
    list.push(row.given ? { ...row.given, parts } : { material, parts });
  });
  return additions.length > 0 ? { recipe, additions } : { recipe };
}

interface ExpansionFields {
  expansion: string;
  plusMinus: string;
  from: string;
  to: string;
}

function readExpansion(reader: Reader, prefix: "" | "body-", at: string, fields: ExpansionFields, { units }: Draft) {
  const { names } = words.field;
  const read = (field: keyof ExpansionFields, pointer: string, convert?: (v: number) => number) => {
    reader.places.set(pointer, prefix + field);
    return reader.number(prefix + field, fields[field], names[`${prefix}${field}` as keyof typeof names], convert);
  };
  const celsius = (v: number) => Math.round(toCelsius(v, units.temperature) * 10) / 10;
  const value = read("expansion", at);
  const plusMinus = read("plusMinus", `${at}/plusMinus`);
  const from = read("from", `${at}/rangeC/0`, celsius);
  const to = read("to", `${at}/rangeC/1`, celsius);
  reader.places.set(`${at}/value`, `${prefix}expansion`);
  reader.places.set(`${at}/rangeC`, `${prefix}to`);
  if (value === undefined) return undefined;
  const range = to === undefined ? {} : { rangeC: [from ?? 20, to] as [number, number] };
  return { value, ...range, ...(plusMinus === undefined ? {} : { plusMinus }) };
}

function readBody(reader: Reader, draft: Draft): Body | null {
  const { body } = draft;
  reader.places.set("/body", "body-class");
  if (body.given) return body.given;
  const expansion = readExpansion(reader, "body-", "/body/expansion", body, draft);
  if (expansion) return body.class ? { class: body.class, expansion } : { expansion };
  return body.class ? { class: body.class } : null;
}

function readFiring(reader: Reader, { firing, units }: Draft): Firing {
  const { names } = words.field;
  reader.places.set("/firing", "peak");
  reader.places.set("/firing/coolingCPerHour", "cooling");
  const peakC = reader.number("peak", firing.peak, names.peak, (v) => Math.round(toCelsius(v, units.temperature)));
  const rate = (v: number) => toKelvins(v, units.temperature);
  const coolingCPerHour = reader.number("cooling", firing.cooling, names.cooling, rate);
  return { ...(peakC === undefined ? {} : { peakC }), ...(coolingCPerHour === undefined ? {} : { coolingCPerHour }) };
}

function readWare(reader: Reader, { ware, units }: Draft): Ware {
  const { names } = words.field;
  reader.places.set("/ware", "wall");
  reader.places.set("/ware/serviceYears", "years");
  const wallMm = reader.number("wall", ware.wall, names.wall, (v) => toMm(v, units.length));
  const serviceYears = reader.number("years", ware.years, names.years);
  return {
    ...(wallMm === undefined ? {} : { wallMm }),
    glazed: ware.glazed,
    ...(serviceYears === undefined ? {} : { serviceYears }),
  };
}

/** The field that a pointer of the service means. @example fieldAt(places, "/glaze/recipe/2/parts") // "row-2-parts" */
export function fieldAt(places: ReadonlyMap<string, string>, pointer: string): string {
  for (let at = pointer; at !== ""; at = at.slice(0, at.lastIndexOf("/"))) {
    const field = places.get(at);
    if (field) return field;
  }
  return "other";
}
