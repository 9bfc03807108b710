/** A blend made ready: corners read once, limits kept. @module */
import { EngineError, ImpossibleValueError, type Issue } from "../errors.ts";
import { type Prepared, prepare } from "../fit/situation.ts";
import type { RecipeLine } from "../recipe/types.ts";
import { simplexSize } from "./lattice.ts";
import type { BlendRequest } from "./types.ts";

/** Points of one blend at most. */
export const MOST_POINTS = 20_000;
const MOST_CORNERS = 6;
const MOST_STEPS = 200;
const STEPS = 10;

/** A blend made ready. */
export interface ReadyBlend {
  names: string[];
  /** Lines of all corners merged, with the parts that each corner takes of it in 100. */
  lines: { line: RecipeLine; parts: number[]; addition: boolean }[];
  shape: "simplex" | "grid";
  steps: number;
  stepsDown: number;
  size: number;
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
 * Reads a request; collects every issue before refusing.
 * @throws EngineError with pointers from the root of the request
 */
export function readBlend(request: BlendRequest): ReadyBlend {
  const { corners, body, firing, ware } = request;
  const steps = request.steps ?? STEPS;
  const shape = request.shape ?? "simplex";
  const stepsDown = request.stepsDown ?? steps;
  const issues = shapeIssues(request, shape, steps, stepsDown);
  const size = shape === "grid" ? (steps + 1) * (stepsDown + 1) : simplexSize(corners.length, steps);
  if (issues.length === 0 && size > MOST_POINTS) {
    issues.push({
      pointer: "/steps",
      message: `${corners.length} corners in ${steps} steps make ${size} points; at most ${MOST_POINTS} are answered. Take fewer steps, or blend part of it.`,
      allowed: [MOST_POINTS],
    });
  }
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
    lines: merge(request),
    shape,
    steps,
    stepsDown,
    size,
    from,
    to: Math.min(size, from + (request.count ?? size)),
    thicknessMm,
    first: read[0]!,
    cautions: [...new Map(read.flatMap(({ cautions }) => cautions).map((one) => [one.code, one])).values()],
    warnings: [...warnings.values()],
    sources: [...new Set(read.flatMap(({ sources }) => sources))],
  };
}

function shapeIssues(request: BlendRequest, shape: string, steps: number, stepsDown: number): Issue[] {
  const issues: Issue[] = [];
  const count = request.corners.length;
  if (count < 2 || count > MOST_CORNERS) {
    issues.push({
      pointer: "/corners",
      message: `A blend has 2 to ${MOST_CORNERS} corners; I read ${count}.`,
      allowed: [2, MOST_CORNERS],
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
  if (request.stepsDown !== undefined && shape !== "grid") {
    issues.push({ pointer: "/stepsDown", message: "Only a grid has a side of its own; leave stepsDown out." });
  } else whole(stepsDown, "/stepsDown");
  return issues;
}

/** One list of lines for all corners; the same material of two corners is weighed once. */
function merge({ corners }: BlendRequest): ReadyBlend["lines"] {
  const merged = new Map<string, ReadyBlend["lines"][number]>();
  corners.forEach(({ glaze: { recipe, additions = [] } }, c) => {
    const total = recipe.reduce((sum, { parts }) => sum + parts, 0);
    const add = (line: RecipeLine, addition: boolean) => {
      const { parts, ...what } = line;
      const key = `${addition} ${JSON.stringify(what)}`;
      const row = merged.get(key) ?? { line, parts: corners.map(() => 0), addition };
      row.parts[c]! += (parts * 100) / total;
      merged.set(key, row);
    };
    for (const line of recipe) add(line, false);
    for (const line of additions) add(line, true);
  });
  return [...merged.values()];
}
