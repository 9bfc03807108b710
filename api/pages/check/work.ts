/** The file that a person saves, and the link that a person shares: one documented JSON. @module */
import type { Body, Firing, Glaze, RecipeLine, Ware } from "@ringtrue/sdk";
import { fill } from "../fill.ts";
import { fromCelsius, fromKelvins, fromMm, tidy, type Units } from "../shared/units.ts";
import words from "../words.json" with { type: "json" };
import { type Draft, emptyDraft, emptyGlaze, type GlazeDraft, letterOf, MOST_TRIALS, type Row } from "./draft.ts";
import { buildQuestion } from "./request.ts";

/** Version 1 of the work; its schema is `work.schema.json`. */
export interface Work {
  format: "ringtrue-work";
  version: 1;
  current?: string;
  trials: { letter: string; name?: string; glaze: Glaze }[];
  body?: Body;
  firing?: Firing;
  ware?: Ware;
}

/** Why a file or a link cannot be opened, in a potter's words. */
export class UnreadableWork extends Error {}

/** What is on the bench, as the documented JSON; half-typed numbers are left out. */
export function toWork(draft: Draft): Work {
  const read = draft.trials.map((glaze) => buildQuestion(draft, glaze).parts);
  const { body, firing, ware } = read[0]!;
  const trials = draft.trials.map(({ name }, i) => ({
    letter: letterOf(i),
    ...(name ? { name } : {}),
    glaze: read[i]!.glaze ?? { recipe: [] },
  }));
  const current = letterOf(draft.current);
  return { format: "ringtrue-work", version: 1, current, trials, ...(body ? { body } : {}), firing, ware };
}

/**
 * The bench for a work.
 * @param given - anything that JSON can hold
 * @throws UnreadableWork that says what is amiss
 */
export function fromWork(given: unknown, units: Units): Draft {
  if (!isRecord(given) || given.format !== "ringtrue-work") throw new UnreadableWork(words.file.foreign);
  if (given.version !== 1) throw new UnreadableWork(fill(words.file.newer, { version: String(given.version) }));
  const { trials, body, firing, ware } = given;
  if (!Array.isArray(trials) || trials.length < 1 || trials.length > MOST_TRIALS) throw bad("trials");
  const draft = emptyDraft(units);
  draft.trials = trials.map((trial, i) => {
    if (!isRecord(trial) || !isRecord(trial.glaze)) throw bad(`trials/${i}`);
    const glaze = readGlaze(trial.glaze, units, `trials/${i}/glaze`);
    return { ...glaze, name: typeof trial.name === "string" ? trial.name.slice(0, 100) : "" };
  });
  const letter = typeof given.current === "string" ? given.current : "A";
  draft.current = Math.min(Math.max("ABCD".indexOf(letter), 0), draft.trials.length - 1);
  if (body !== undefined) draft.body = readBody(body, units);
  if (isRecord(firing)) {
    const { peakC, coolingCPerHour } = firing;
    if (typeof peakC === "number") draft.firing.peak = tidy(fromCelsius(peakC, units.temperature), 1);
    if (typeof coolingCPerHour === "number") {
      draft.firing.cooling = tidy(fromKelvins(coolingCPerHour, units.temperature), 1);
    }
  }
  if (isRecord(ware)) {
    const { wallMm, glazed, serviceYears } = ware;
    if (typeof wallMm === "number") draft.ware.wall = tidy(fromMm(wallMm, units.length));
    if (glazed === "one-face" || glazed === "one-face-free") draft.ware.glazed = glazed;
    if (typeof serviceYears === "number") draft.ware.years = tidy(serviceYears);
  }
  return draft;
}

function readGlaze(given: Record<string, unknown>, units: Units, at: string): GlazeDraft {
  const glaze = emptyGlaze();
  if (typeof given.thicknessMm === "number") glaze.thickness = tidy(fromMm(given.thicknessMm, units.length));
  if (Array.isArray(given.recipe)) {
    const lines = (list: unknown[], addition: boolean) => list.map((line, i) => readLine(line, addition, `${at}/${i}`));
    const additions = Array.isArray(given.additions) ? given.additions : [];
    const rows = [...lines(given.recipe, false), ...lines(additions, true)];
    return { ...glaze, kind: "recipe", rows: rows.length > 0 ? rows : glaze.rows };
  }
  if (isRecord(given.oxides) && isRecord(given.oxides.amounts)) {
    const oxides = Object.entries(given.oxides.amounts).map(([oxide, amount]) => ({ oxide, amount: String(amount) }));
    const { basis } = given.oxides;
    if (basis !== "weightPercent" && basis !== "molePercent" && basis !== "moles") throw bad(`${at}/oxides/basis`);
    return { ...glaze, kind: "analysis", oxides, basis };
  }
  if (isRecord(given.expansion)) return { ...glaze, kind: "expansion", ...readExpansion(given.expansion, units, at) };
  throw bad(at);
}

function readLine(line: unknown, addition: boolean, at: string): Row {
  if (!isRecord(line) || typeof line.parts !== "number") throw bad(at);
  const parts = tidy(line.parts);
  if (typeof line.material === "string") return { material: line.material, parts, addition };
  if (!isRecord(line.analysis) && typeof line.formula !== "string") throw bad(at);
  const name = typeof line.name === "string" ? line.name : typeof line.formula === "string" ? line.formula : "?";
  return { material: name, parts, addition, given: line as unknown as RecipeLine };
}

function readBody(given: unknown, units: Units): Draft["body"] {
  if (!isRecord(given)) throw bad("body");
  const body = emptyDraft().body;
  const known = ["class", "expansion"];
  // Curves, phases and measured facts have no fields here: they are kept whole and shown as what they are.
  if (Object.keys(given).some((name) => !known.includes(name))) return { ...body, given: given as unknown as Body };
  if (typeof given.class === "string") body.class = given.class;
  return isRecord(given.expansion) ? { ...body, ...readExpansion(given.expansion, units, "body") } : body;
}

function readExpansion(given: Record<string, unknown>, units: Units, at: string) {
  const { value, plusMinus, rangeC } = given;
  if (typeof value !== "number") throw bad(`${at}/expansion/value`);
  const [from, to] = Array.isArray(rangeC) ? rangeC : [];
  const degrees = (c: unknown) => (typeof c === "number" ? tidy(fromCelsius(c, units.temperature), 1) : "");
  const half = typeof plusMinus === "number" ? tidy(plusMinus) : "";
  return { expansion: tidy(value), plusMinus: half, from: degrees(from), to: degrees(to) };
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const bad = (where: string) => new UnreadableWork(fill(words.file.bad, { where }));

/** A work as the part of an address after `#`. */
export function toFragment(work: Work): string {
  const bytes = new TextEncoder().encode(JSON.stringify(work));
  const base64 = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
  return `#w=${base64.replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "")}`;
}

/** The work in an address, or null where it carries none. @throws when it carries one that cannot be read */
export function fromFragment(hash: string): unknown {
  if (!hash.startsWith("#w=")) return null;
  const base64 = hash.slice(3).replaceAll("-", "+").replaceAll("_", "/");
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
}
