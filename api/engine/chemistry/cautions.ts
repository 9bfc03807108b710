/** Cautions for a glaze: each once, in the order of the table. @module */
import type { Notice } from "../errors.ts";
import { CAUTIONS } from "../recipe/materials.ts";
import type { Material } from "../recipe/types.ts";
import { OXIDE_INDEX } from "./oxides.ts";

const RULES = CAUTIONS.map((rule) => ({
  ...rule,
  index: rule.oxide ? OXIDE_INDEX.get(rule.oxide)! : -1,
  limit: rule.limitFiredPercent ?? Number.POSITIVE_INFINITY,
  aboutWare: rule.about.includes("ware"),
}));
/** Dusts that say all that the plain one would. */
const DUSTS = new Set(["silica-dust", "needle-dust", "talc-dust", "zircon-dust"]);

/**
 * Cautions that a recipe and its fired glaze call for. The limits stand in the data, `common practice, no source`.
 * @param materials - built-in materials weighed out
 * @param firedPercent - weight per cent of each of `OXIDES` in the fired glaze [wt %]
 * @returns notices, each code once; `leach-test` last when anything may come out of the fired ware
 */
export function glazeCautions(materials: readonly Material[], firedPercent: ArrayLike<number>): Notice[] {
  const codes = new Set<string>();
  for (const material of materials) for (const caution of material.cautions) codes.add(caution.code);
  for (const { code, index, limit } of RULES) if (index >= 0 && firedPercent[index]! >= limit) codes.add(code);
  for (const dust of DUSTS) if (codes.has(dust)) codes.delete("dust");
  if (codes.has("high-copper")) codes.delete("copper");
  const notices: Notice[] = [];
  let ware = false;
  for (const { code, message, aboutWare } of RULES) {
    if (code === "leach-test" ? !ware : !codes.has(code)) continue;
    ware ||= aboutWare;
    notices.push({ code, message });
  }
  return notices;
}
