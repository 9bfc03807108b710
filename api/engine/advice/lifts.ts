/** Every limit of a question, in words, and the question without it. @module */
import { round } from "../quantity.ts";
import { KINDS } from "./kinds.ts";
import { LOG_VISCOSITY, limitsOf, TENSION_PERCENT } from "./limits.ts";
import { type Asked, escaped } from "./question.ts";
import type { Block, Bounds, RemediesRequest } from "./types.ts";

/** One limit. */
export interface Lift extends Pick<Block, "limit" | "pointer"> {
  /** What was asked, in a sentence. */
  said: string;
  /** The question without it. */
  off: (request: RemediesRequest) => RemediesRequest;
}

/** As good as no limit: a million times, and a melt without surface tension. */
const ANY_LOG = 6;
const ANY_PERCENT = 100;

/** Limits that a question sets, or that are set where it is silent. */
export function liftsOf(request: RemediesRequest, asked: Asked): Lift[] {
  const { seger = {}, silicaToAlumina, parts = {}, keep = [], allow, forbid = [] } = request;
  const lifts = meltLifts(request, asked);
  const { seger: formula } = asked.terms.start.chemistry;
  const now = (value: number | undefined | null) => (value == null ? "" : `; it is ${round(value, 2)} now`);
  for (const [oxide, bounds] of Object.entries(seger)) {
    lifts.push({
      limit: `${oxide} in the Seger formula`,
      pointer: `/seger/${escaped(oxide)}`,
      said: `${oxide} in the Seger formula was to stay ${range(bounds, "mol")}${now(formula?.moles[oxide] ?? 0)}.`,
      off: (from) => ({ ...from, seger: less(from.seger, oxide) }),
    });
  }
  if (silicaToAlumina) {
    lifts.push({
      limit: "silica to alumina",
      pointer: "/silicaToAlumina",
      said: `Silica to alumina was to stay ${range(silicaToAlumina, "to 1")}${now(formula?.silicaToAlumina)}.`,
      off: ({ silicaToAlumina: _, ...rest }) => rest,
    });
  }
  for (const [name, bounds] of Object.entries(parts)) {
    lifts.push({
      limit: "parts",
      pointer: `/parts/${escaped(name)}`,
      said: sentence(`${plain(name)} was to stay ${range(bounds, "parts in 100")}.`),
      off: (from) => ({ ...from, parts: less(from.parts, name) }),
    });
  }
  if (keep.length > 0) {
    const said = `${listed(keep)} ${keep.length > 1 ? "were to stay as they are" : "was to stay as it is"}.`;
    lifts.push({ limit: "kept", pointer: "/keep", said: sentence(said), off: ({ keep: _, ...rest }) => rest });
  }
  if (allow) {
    const said = `${allow.length > 0 ? `Nothing but ${listed(allow)}` : "Nothing"} may come in or become more.`;
    lifts.push({ limit: "materials", pointer: "/allow", said, off: ({ allow: _, ...rest }) => rest });
  }
  if (forbid.length > 0) {
    const said = sentence(`${listed(forbid)} may not come in or become more.`);
    lifts.push({ limit: "materials", pointer: "/forbid", said, off: ({ forbid: _, ...rest }) => rest });
  }
  return lifts;
}

function meltLifts({ melt = {} }: RemediesRequest, { bench, terms }: Asked): Lift[] {
  const log = melt.logViscosity ?? LOG_VISCOSITY;
  const percent = melt.surfaceTensionPercent ?? TENSION_PERCENT;
  const limited = limitsOf(KINDS.at(-1)!, terms).map(({ name }) => name);
  const lifts: Lift[] = [
    {
      limit: "melt",
      pointer: "/melt/logViscosity",
      said: `The melt was to stay as runny as it is: no more than ${round(10 ** log, 1)} times stiffer or thinner at ${Math.round(bench.peakC)}\u00a0°C.`,
      off: (from) => ({ ...from, melt: { ...from.melt, logViscosity: ANY_LOG } }),
    },
    {
      limit: "surface tension",
      pointer: "/melt/surfaceTensionPercent",
      said: `Its surface tension was to stay within ${percent}\u00a0% of what it is, lest it crawl or run.`,
      off: (from) => ({ ...from, melt: { ...from.melt, surfaceTensionPercent: ANY_PERCENT } }),
    },
  ];
  return lifts.filter(({ limit }) => limited.includes(limit));
}

function less<T>(all: Readonly<Record<string, T>> = {}, key: string): Record<string, T> {
  return Object.fromEntries(Object.entries(all).filter(([name]) => name !== key));
}

const plain = (name: string) => name.replaceAll("-", " ");
const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function listed(names: readonly string[]): string {
  const all = names.map(plain);
  return all.length < 2 ? all.join("") : `${all.slice(0, -1).join(", ")} and ${all.at(-1)}`;
}

function range({ min, max }: Bounds, unit: string): string {
  if (min === undefined) return `at ${max} ${unit} or less`;
  if (max === undefined) return `at ${min} ${unit} or more`;
  return `between ${min} and ${max} ${unit}`;
}
