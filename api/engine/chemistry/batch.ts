/** From a Seger formula back to a batch of given materials. @module */
import type { RecipeLine } from "../recipe/types.ts";
import { Findings } from "./findings.ts";
import { nonNegativeFit } from "./non-negative-fit.ts";
import { OXIDE_INDEX, OXIDE_MASS, OXIDES } from "./oxides.ts";
import { leaveTracesOut, readRecipe } from "./read-recipe.ts";
import { fromSeger } from "./seger.ts";
import type { OxideRecord } from "./types.ts";

/** A recipe line without its parts, as `batchFromSeger` fills them in. */
export type Ingredient = RecipeLine extends infer Line
  ? Line extends RecipeLine
    ? Omit<Line, "parts">
    : never
  : never;

/** A batch found for a formula. */
export interface SegerBatch {
  /** Parts of each ingredient: grams for one gram-mole of the formula as given [g]; 0 where one is not needed. */
  lines: { label: string; parts: number; percent: number }[];
  /** Moles wanted less moles supplied, oxide by oxide [mol]: nothing but dust where the materials can make it. */
  missing: OxideRecord;
}

/** Difference in moles below which an oxide counts as met [mol]. */
const MET = 1e-9;

/**
 * Batch of given materials that comes nearest to a Seger formula, in least squares on moles, no amount below 0.
 * Where the materials can make the formula exactly it is met exactly, as the stepwise method of the textbooks meets it.
 *
 * @param moles - the formula, oxide → moles [mol]
 * @param ingredients - materials by id, analysis or formula
 * @returns parts of each ingredient, and what is missing
 * @throws ImpossibleValueError or UnknownNameError for formula or ingredients that cannot be read
 * Source: stoichiometry; checked against the worked batch of binns-1910.
 * @example batchFromSeger({ CaO: 1, SiO2: 1 }, [{ formula: "CaCO3" }, { formula: "SiO2" }]) // 100.09 g and 60.08 g
 */
export function batchFromSeger(
  moles: Readonly<Record<string, number>>,
  ingredients: readonly Ingredient[],
): SegerBatch {
  const findings = new Findings();
  findings.gather(() => fromSeger(moles));
  const lines = findings.gather(() =>
    readRecipe({ recipe: ingredients.map((line) => ({ ...line, parts: 1 }) as RecipeLine) }, []),
  );
  findings.throwIfAny();
  const target = new Array<number>(OXIDES.length).fill(0);
  for (const [oxide, amount] of Object.entries(moles)) target[OXIDE_INDEX.get(oxide)!] = amount;
  const columns = lines!.map(({ yielded, countedParts }) => {
    const column = new Array<number>(OXIDES.length).fill(0);
    for (const [k, i] of yielded.oxides.entries()) column[i] = (countedParts * yielded.grams[k]!) / OXIDE_MASS[i]!;
    return column;
  });
  const { value } = nonNegativeFit(columns, target);
  // As little of what is not counted as in any other glaze.
  leaveTracesOut(
    lines!.map((line, j) => ({ ...line, parts: value[j]!, countedParts: value[j]! * line.countedParts })),
    [],
  );
  const total = value.reduce((sum, parts) => sum + parts, 0);
  const missing: OxideRecord = {};
  for (const [i, oxide] of OXIDES.entries()) {
    const left = target[i]! - columns.reduce((sum, column, j) => sum + column[i]! * value[j]!, 0);
    if (Math.abs(left) > MET) missing[oxide] = left;
  }
  return {
    lines: lines!.map(({ label }, j) => ({
      label,
      parts: value[j]!,
      percent: total > 0 ? (100 * value[j]!) / total : 0,
    })),
    missing,
  };
}
