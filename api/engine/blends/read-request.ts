/** A blend made ready: corners read once, limits kept. @module */
import { EngineError, ImpossibleValueError, type Issue } from "../errors.ts";
import { type Prepared, prepare } from "../fit/situation.ts";
import type { RecipeLine } from "../recipe/types.ts";
import { gridSize, type Lattice, latticeOf, type Shape, simplexSize } from "./lattice.ts";
import type { BlendRequest } from "./types.ts";

/** Points of one blend at most. */
export const MOST_POINTS = 20_000;
/** Points that an answer in one piece holds; more are streamed. */
export const MOST_AT_ONCE = 2500;
const MOST_STEPS = 200;
const STEPS = 10;

/** A blend made ready. */
export interface ReadyBlend {
  names: string[];
  /** Lines of all corners merged: the same material of two corners is weighed once. */
  lines: { line: RecipeLine; addition: boolean }[];
  /** For each corner, which of those lines it takes and how many parts of it in 100. */
  takes: { at: number; parts: number }[][];
  lattice: Lattice;
  from: number;
  to: number;
  thicknessMm: number | undefined;
  /** The first corner on the clay: clay, firing and ware are the same for all. */
  first: Prepared;
  cautions: Prepared["cautions"];
  warnings: Prepared["warnings"];
  sources: string[];
}

/**
 * Steps along an edge where none are asked for: ten, as for a grid's four corners, or as many as an answer in one piece
 * holds.
 * @example stepsOf(3) // 10
 * @example stepsOf(12) // 4
 */
export function stepsOf(corners: number): number {
  return mostSteps(corners, STEPS, MOST_AT_ONCE);
}

/** Most steps that keep a blend within so many points; one at least. */
function mostSteps(corners: number, most: number, points: number): number {
  let steps = most;
  while (steps > 1 && simplexSize(corners, steps) > points) steps--;
  return steps;
}

/**
 * Reads a request; collects every issue before refusing.
 * @throws EngineError with pointers from the root of the request
 */
export function readBlend(request: BlendRequest): ReadyBlend {
  const { corners, body, firing, ware } = request;
  const shape = request.shape ?? "simplex";
  const steps = request.steps ?? stepsOf(corners.length);
  const stepsDown = request.stepsDown ?? steps;
  const issues = [...shapeIssues(request, shape, steps), ...corners.flatMap(additionIssues)];
  const size = shape === "grid" ? gridSize(steps, stepsDown) : simplexSize(corners.length, steps);
  if (issues.length === 0 && size > MOST_POINTS) throw tooMany(corners.length, shape, steps, size);
  const from = request.from ?? 0;
  if (issues.length === 0 && from >= size) {
    issues.push({
      pointer: "/from",
      message: `The blend has ${size} points, numbered from 0; there is none at ${from}.`,
    });
  }
  const thicknessMm = request.thicknessMm ?? corners[0]?.glaze.thicknessMm;
  const read = corners.flatMap(({ glaze }, c) => {
    try {
      return [prepare({ glaze: { ...glaze, thicknessMm }, body, firing, ware })];
    } catch (error) {
      if (!(error instanceof EngineError)) throw error;
      for (const issue of error.issues) {
        const pointer = issue.pointer.startsWith("/glaze") ? `/corners/${c}${issue.pointer}` : issue.pointer;
        if (!issues.some((told) => told.pointer === pointer && told.message === issue.message))
          issues.push({ ...issue, pointer });
      }
      return [];
    }
  });
  if (issues.length > 0) throw new ImpossibleValueError(issues);
  const warnings = new Map<string, Prepared["warnings"][number]>();
  read.forEach((prepared, c) => {
    for (const notice of prepared.warnings) {
      const pointer = notice.pointer?.startsWith("/glaze") ? `/corners/${c}${notice.pointer}` : notice.pointer;
      if (!warnings.has(notice.message)) warnings.set(notice.message, { ...notice, ...(pointer ? { pointer } : {}) });
    }
  });
  return {
    names: corners.map(({ name }, c) => name ?? `corner ${c + 1}`),
    ...merge(request),
    lattice: latticeOf(corners.length, shape, steps, stepsDown),
    from,
    to: Math.min(size, from + (request.count ?? size)),
    thicknessMm,
    first: read[0]!,
    cautions: [...new Map(read.flatMap(({ cautions }) => cautions).map((one) => [one.code, one])).values()],
    warnings: [...warnings.values()],
    sources: [...new Set(read.flatMap(({ sources }) => sources))],
  };
}

/** Most that additions may weigh for one part of the recipe [-]: the answer tells them for 100 parts of it. */
const MOST_ADDED = 1000;

/** Refuses additions beside which the recipe itself is nothing. */
function additionIssues({ glaze }: BlendRequest["corners"][number], c: number): Issue[] {
  const total = (lines: readonly RecipeLine[] = []) => lines.reduce((sum, { parts }) => sum + parts, 0);
  const times = total(glaze.additions) / total(glaze.recipe);
  if (!(times > MOST_ADDED)) return [];
  const message = `The additions weigh ${Math.round(times)} times the recipe that they are added to; I mix up to ${MOST_ADDED} times. Write what the glaze is mostly made of as its recipe.`;
  return [{ pointer: `/corners/${c}/glaze/additions`, message, allowed: [0, MOST_ADDED] }];
}

/** Points are what is counted, never corners: what to change depends on what was asked. */
function tooMany(corners: number, shape: Shape, steps: number, size: number): ImpossibleValueError {
  const many = size > 1e9 ? "more than a thousand million" : size;
  const made = shape === "grid" ? "These steps across and down" : `${corners} corners in ${inSteps(steps)}`;
  const asked = `${made} make ${many} points; I answer ${MOST_POINTS} at most.`;
  if (corners > MOST_POINTS) {
    return new ImpossibleValueError([
      { pointer: "/corners", message: `${asked} Leave corners out.`, allowed: [2, MOST_POINTS] },
    ]);
  }
  const most = mostSteps(corners, steps, MOST_POINTS);
  const remedy =
    shape === "grid" ? "Take fewer steps." : `Take at most ${inSteps(most)}, or leave out the corners you can spare.`;
  const allowed = shape === "grid" ? [MOST_POINTS] : [1, most];
  return new ImpossibleValueError([{ pointer: "/steps", message: `${asked} ${remedy}`, allowed }]);
}

const inSteps = (steps: number) => `${steps} step${steps === 1 ? "" : "s"}`;

function shapeIssues(request: BlendRequest, shape: Shape, steps: number): Issue[] {
  const issues: Issue[] = [];
  const count = request.corners.length;
  if (count < 2) {
    issues.push({
      pointer: "/corners",
      message: `A blend has two corners or more; I read ${count}.`,
      allowed: [2],
    });
  } else if (shape === "grid" && count !== 4) {
    issues.push({ pointer: "/corners", message: `A grid has 4 corners; I read ${count}.`, allowed: [4] });
  }
  const whole = (value: number, pointer: string) => {
    if (Number.isInteger(value) && value >= 1 && value <= MOST_STEPS) return;
    issues.push({
      pointer,
      message: `Steps are whole, from 1 to ${MOST_STEPS}; I read ${value}.`,
      allowed: [1, MOST_STEPS],
    });
  };
  whole(steps, "/steps");
  if (request.stepsDown === undefined) return issues;
  if (shape === "grid") whole(request.stepsDown, "/stepsDown");
  else issues.push({ pointer: "/stepsDown", message: "Only a grid has a side of its own; leave its steps down out." });
  return issues;
}

/** One list of lines for all corners, and what each corner takes of it. */
function merge({ corners }: BlendRequest): Pick<ReadyBlend, "lines" | "takes"> {
  const lines: ReadyBlend["lines"] = [];
  const places = new Map<string, number>();
  const takes = corners.map(({ glaze: { recipe, additions = [] } }) => {
    const total = recipe.reduce((sum, { parts }) => sum + parts, 0);
    const taken = new Map<number, number>();
    const add = (line: RecipeLine, addition: boolean) => {
      const { parts, ...what } = line;
      const key = `${addition} ${JSON.stringify(what)}`;
      const at = places.get(key) ?? lines.push({ line, addition }) - 1;
      places.set(key, at);
      taken.set(at, (taken.get(at) ?? 0) + (parts * 100) / total);
    };
    for (const line of recipe) add(line, false);
    for (const line of additions) add(line, true);
    return [...taken].map(([at, parts]) => ({ at, parts }));
  });
  return { lines, takes };
}
