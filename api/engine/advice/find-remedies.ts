/** The question: what would make it fit? @module */
import { OXIDE_INDEX, unknownOxide } from "../chemistry/oxides.ts";
import { closest, type Issue, type Notice, UnknownNameError } from "../errors.ts";
import { checkFit } from "../fit/index.ts";
import type { FitReport, FitRequest } from "../fit/types.ts";
import { expansion } from "../fit/words.ts";
import { listMaterials, materialCalled } from "../recipe/materials.ts";
import { DATA_VERSION, DEFAULT_SEED, ENGINE_VERSION } from "../version.ts";
import { type Bench, layOut, type State } from "./bench.ts";
import { KINDS, USUAL } from "./kinds.ts";
import { type Found, leastChange } from "./least-change.ts";
import type { Terms } from "./limits.ts";
import { otherWays } from "./other-ways.ts";
import { recipeRemedy } from "./recipe-remedy.ts";
import type { LinearSolver } from "./solver.ts";
import type { Block, RemediesReport, RemediesRequest, Remedy } from "./types.ts";
import { chanceWords, standingOf } from "./words.ts";

/** Chance from which a fit says "sound": 17 of 20. */
const TARGET = 0.85;
/** A line may come in, or grow by, so many parts in 100. */
const MOST_IN = 40;
/** Two answers whose parts differ by less in sum are one [parts in 100]. */
const ALIKE = 1;
/** A recipe that does not reach is told where it keeps this many more sound [-]. */
const WORTH_TELLING = 0.02;

/**
 * Finds least changes that make a glaze fit, of as many kinds as there are.
 *
 * Recipes are searched by linear programmes on the linearised model and verified by the full one (see `leastChange`);
 * the melt's viscosity at the peak and its surface tension stay within tolerance, colourants keep their share.
 * Thickness, cooling and clay are tried outright.
 * @param request - the misfit with its limits
 * @param solve - solver of linear programmes, see `loadHighs`
 * @returns remedies, those that reach the target first, by parts moved; or what stands in the way
 * @throws EngineError with every issue, pointers from the root of the request
 * @remarks Nothing reaching the target is an answer, not an error.
 */
export function findRemedies(request: RemediesRequest, solve: LinearSolver): RemediesReport {
  const fit = fitOf(request);
  checkNames(request);
  const seed = request.seed ?? DEFAULT_SEED;
  const target = request.target ?? TARGET;
  const before = checkFit(fit);
  const warnings: Notice[] = [...before.warnings];
  const fits = before.probabilities.sound >= target;
  const recipes = fits ? [] : recipeRemedies(request, fit, before, target, seed, solve, warnings);
  const remedies = [...recipes, ...(fits ? [] : otherWays(request, fit, before, target))].sort(
    (a, b) => Number(b.reaches) - Number(a.reaches) || order(a) - order(b),
  );
  const reaching = remedies.filter(({ reaches }) => reaches);
  return {
    headline: headline(before, target, fits, remedies),
    target,
    before: standingOf(before),
    remedies,
    blocked: fits || reaching.length > 0 ? [] : blocksOf(remedies, before),
    engine: { version: ENGINE_VERSION, dataVersion: DATA_VERSION, seed },
    warnings,
    cautions: before.cautions,
    sources: [...new Set([...before.sources, "common-practice"])].sort(),
  };
}

/** Reaching recipes by parts moved, then what leaves the recipe alone; those that fall short by how far they get. */
function order({ reaches, recipe, partsMoved, after }: Remedy): number {
  if (!reaches) return -after.probabilities.sound;
  return recipe ? partsMoved : 1000 - after.probabilities.sound;
}

function fitOf({ glaze, body, firing, ware, seed }: RemediesRequest): FitRequest {
  return { glaze, body, firing, ware, seed };
}

function checkNames({ allow = [], forbid = [], keep = [], parts = {}, seger = {} }: RemediesRequest): void {
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
    const pointer = `/parts/${name.replaceAll("~", "~0").replaceAll("/", "~1")}`;
    check(name, pointer);
    if (min !== undefined && max !== undefined && min > max) {
      issues.push({ pointer, message: `The least (${min}) is more than the most (${max}) of ${name}.` });
    }
  }
  for (const oxide of Object.keys(seger)) {
    if (OXIDE_INDEX.has(oxide)) continue;
    const { message, suggestion } = unknownOxide(oxide, "");
    const pointer = `/seger/${oxide.replaceAll("~", "~0").replaceAll("/", "~1")}`;
    issues.push({ pointer, message, ...(suggestion ? { suggestion } : {}) });
  }
  if (issues.length > 0) throw new UnknownNameError(issues);
}

function recipeRemedies(
  request: RemediesRequest,
  fit: FitRequest,
  before: FitReport,
  target: number,
  seed: number,
  solve: LinearSolver,
  warnings: Notice[],
): Remedy[] {
  if (!("recipe" in fit.glaze)) {
    warnings.push({
      code: "recipe-unknown",
      message:
        "Without a recipe I can only speak of thickness, cooling and clay. Give the recipe, and I can change it.",
      pointer: "/glaze",
    });
    return [];
  }
  const ids = (names: readonly string[]) => names.map((name) => materialCalled(name)!.id);
  const forbidden = new Set(ids(request.forbid ?? []));
  const incoming = ids(request.allow ?? USUAL).filter((id) => !forbidden.has(id));
  const bench = layOut(fit, [...new Set(incoming)], seed);
  const now = bench.lines.map((line) => line.now);
  const start = bench.at(now);
  if (!start) return [];
  const terms = termsOf(request, bench, before, target, start, forbidden, new Set(incoming));
  const found: { kind: (typeof KINDS)[number]; found: Found }[] = [];
  for (const kind of KINDS) {
    const one = leastChange(bench, kind, terms, solve);
    if (!one || (!one.reaches && one.state.sound < start.sound + WORTH_TELLING)) continue;
    const same = found.find(({ found: other }) => difference(other.x, one.x) < ALIKE && other.reaches === one.reaches);
    if (!same) found.push({ kind, found: one });
  }
  return found.map(({ kind, found: one }) => recipeRemedy(bench, kind, terms, one, before));
}

const difference = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, parts, j) => sum + Math.abs(parts - b[j]!), 0);

function termsOf(
  request: RemediesRequest,
  bench: Bench,
  before: FitReport,
  target: number,
  start: State,
  forbidden: ReadonlySet<string>,
  incoming: ReadonlySet<string>,
): Terms {
  const { probabilities } = before;
  const kept = new Set((request.keep ?? []).map((name) => materialCalled(name)!.id));
  const bounds = new Map(Object.entries(request.parts ?? {}).map(([name, b]) => [materialCalled(name)!.id, b]));
  const span = bench.lines.map(({ id, now }): [number, number] => {
    if (id !== null && kept.has(id)) return [now, now];
    const { min = 0, max = now + MOST_IN } = (id !== null && bounds.get(id)) || {};
    // What is forbidden may leave but not grow; a list of what is allowed says what may grow.
    const grows = id !== null && !forbidden.has(id) && (request.allow === undefined || incoming.has(id));
    return [Math.min(min, now), Math.max(grows ? max : Math.min(max, now), now)];
  });
  return {
    target,
    direction: probabilities.shivers > probabilities.crazesOnCooling + probabilities.crazesLater ? 1 : -1,
    low: span.map(([low]) => low),
    high: span.map(([, high]) => high),
    request,
    start,
  };
}

function headline(before: FitReport, target: number, fits: boolean, remedies: readonly Remedy[]): string {
  const now = chanceWords(before.probabilities.sound);
  if (fits) return `It fits as it is: it stays sound ${now}, and ${chanceWords(target)} was wanted.`;
  const reaching = remedies.filter(({ reaches }) => reaches);
  if (reaching.length === 0) {
    const [best] = remedies;
    const most = best
      ? ` The most I found is ${chanceWords(best.after.probabilities.sound)}, by ${best.title}.`
      : " I found nothing that helps.";
    return `Nothing within these limits brings it from ${now} sound to ${chanceWords(target)}.${most}`;
  }
  const [least] = reaching;
  return `It stays sound ${now} as it is. ${reaching.length === 1 ? "One way brings" : `${reaching.length} ways bring`} it to ${chanceWords(target)} or better; the least: ${least!.text}`;
}

/** What stands in the way of everything. */
function blocksOf(remedies: readonly Remedy[], before: FitReport): Block[] {
  const seen = new Map<string, Block>();
  for (const { blocks, recipe } of remedies)
    for (const block of recipe ? blocks : []) if (!seen.has(block.limit)) seen.set(block.limit, block);
  const { low, high } = before.body.expansion;
  if (before.drivers[0]?.input === "body-expansion") {
    seen.set("doubt", {
      limit: "doubt",
      text: `The doubt about the clay (${expansion(low)} to ${expansion(high)}) is wider than what stays sound between crazing and shivering. Its own measured expansion would help more than any recipe.`,
    });
  }
  return [...seen.values()];
}
