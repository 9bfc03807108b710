/**
 * Names of materials and classes that nobody knows. The engine looks them up once the rest can be read; where something
 * else stands in the way they are looked up here, so that all is told at once.
 *
 * @module
 */
import { findBody } from "../engine/body/classes.ts";
import { EngineError } from "../engine/errors.ts";
import { findMaterial } from "../engine/recipe/materials.ts";
import { toPointer } from "./pointer.ts";
import type { Issue } from "./problem.ts";

/** Fields that hold such a name, wherever they stand. */
const LOOK_UP: Readonly<Record<string, (name: string, pointer: string) => unknown>> = {
  material: findMaterial,
  class: findBody,
};

/**
 * @param value - a request, no deeper than requests may be
 * @param most - when to stop [-]
 * @returns an issue for each name, with the nearest known one
 */
export function unknownNames(value: unknown, most: number): Issue[] {
  const found: Issue[] = [];
  const walk = (here: unknown, path: PropertyKey[]): void => {
    if (typeof here !== "object" || here === null) return;
    for (const [key, inner] of Object.entries(here)) {
      if (found.length >= most) return;
      const at = [...path, key];
      if (Object.hasOwn(LOOK_UP, key) && typeof inner === "string" && inner !== "") {
        found.push(...issuesOf(() => LOOK_UP[key]!(inner, toPointer(at))));
      } else walk(inner, at);
    }
  };
  walk(value, []);
  return found;
}

function issuesOf(look: () => unknown): readonly Issue[] {
  try {
    look();
    return [];
  } catch (error) {
    if (error instanceof EngineError) return error.issues;
    throw error;
  }
}
