/** From what is asked to what a search rests on: the recipe on the bench, and its terms. @module */
import { OXIDE_INDEX, unknownOxide } from "../chemistry/oxides.ts";
import { closest, type Issue, UnknownNameError } from "../errors.ts";
import type { FitReport, FitRequest } from "../fit/types.ts";
import { listMaterials, materialCalled } from "../recipe/materials.ts";
import { type Bench, layOut } from "./bench.ts";
import { USUAL } from "./kinds.ts";
import type { Terms } from "./limits.ts";
import type { RemediesRequest } from "./types.ts";

/** A line may come in, or grow by, so many parts in 100. */
const MOST_IN = 40;

/** The part of the question that a fit takes. */
export function fitOf({ glaze, body, firing, ware, seed }: RemediesRequest): FitRequest {
  return { glaze, body, firing, ware, seed };
}

/** Refuses names that nothing is called by, with every issue. */
export function checkNames({ allow = [], forbid = [], keep = [], parts = {}, seger = {} }: RemediesRequest): void {
  const issues: Issue[] = [];
  const check = (name: string, pointer: string) => {
    if (materialCalled(name)) return;
    const suggestion = closest(
      name,
      listMaterials().map(({ id }) => id),
    );
    const message = `I know no material called ${name.slice(0, 60)}.${suggestion ? ` Did you mean ${suggestion}?` : ""}`;
    issues.push({ pointer, message, ...(suggestion ? { suggestion } : {}) });
  };
  for (const [list, names] of Object.entries({ allow, forbid, keep })) {
    for (const [i, name] of names.entries()) check(name, `/${list}/${i}`);
  }
  for (const [name, { min, max }] of Object.entries(parts)) {
    const pointer = `/parts/${escaped(name)}`;
    check(name, pointer);
    if (min !== undefined && max !== undefined && min > max) {
      issues.push({ pointer, message: `The least (${min}) is more than the most (${max}) of ${name}.` });
    }
  }
  for (const oxide of Object.keys(seger)) {
    if (OXIDE_INDEX.has(oxide)) continue;
    const { message, suggestion } = unknownOxide(oxide, "");
    issues.push({ pointer: `/seger/${escaped(oxide)}`, message, ...(suggestion ? { suggestion } : {}) });
  }
  if (issues.length > 0) throw new UnknownNameError(issues);
}

/** A key as a part of a JSON Pointer (RFC 6901). */
export const escaped = (key: string): string => key.replaceAll("~", "~0").replaceAll("/", "~1");

/** Names as identifiers of built-in materials. */
export const idsOf = (names: readonly string[] = []): string[] => names.map((name) => materialCalled(name)!.id);

/** What a search rests on. */
export interface Asked {
  bench: Bench;
  terms: Terms;
}

/**
 * Sets the recipe out with what may come in, and the terms of any change.
 * @param request - names checked, glaze a recipe
 * @param before - how it stands
 * @returns null where the engine cannot judge the recipe as it stands
 */
export function askedOf(request: RemediesRequest, before: FitReport, target: number, seed: number): Asked | null {
  const forbidden = new Set(idsOf(request.forbid));
  const incoming = new Set(idsOf(request.allow ?? USUAL).filter((id) => !forbidden.has(id)));
  const bench = layOut(fitOf(request), [...incoming], seed);
  const start = bench.at(bench.lines.map((line) => line.now));
  if (!start) return null;
  const { probabilities } = before;
  const kept = new Set(idsOf(request.keep));
  const bounds = new Map(Object.entries(request.parts ?? {}).map(([name, b]) => [materialCalled(name)!.id, b]));
  const span = bench.lines.map(({ id, now }): [number, number] => {
    if (id !== null && kept.has(id)) return [now, now];
    const { min = 0, max = now + MOST_IN } = (id !== null && bounds.get(id)) || {};
    // What is forbidden may leave but not grow; a list of what is allowed says what may grow.
    const grows = id !== null && !forbidden.has(id) && (request.allow === undefined || incoming.has(id));
    return [Math.min(min, now), Math.max(grows ? max : Math.min(max, now), now)];
  });
  const terms: Terms = {
    target,
    direction: probabilities.shivers > probabilities.crazesOnCooling + probabilities.crazesLater ? 1 : -1,
    low: span.map(([low]) => low),
    high: span.map(([, high]) => high),
    request,
    start,
  };
  return { bench, terms };
}
