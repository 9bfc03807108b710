/** Pointers of notices, from the engine's input to the request. @module */
import type { Notice } from "../engine/errors.ts";

/**
 * @param prefix - where the engine's input stands in the request, e.g. `/glaze`
 * @example pointInto("/glaze", { code: "x", message: "…", pointer: "/recipe/0" }).pointer // "/glaze/recipe/0"
 */
export function pointInto(prefix: string, notice: Notice): Notice {
  return notice.pointer === undefined ? notice : { ...notice, pointer: prefix + notice.pointer };
}
