/** Recipes as people paste them. @module */
import { readNumber } from "../shared/read-number.ts";
import { MOST_TRIALS } from "./draft.ts";

export interface PastedRecipe {
  name: string;
  rows: { material: string; parts: string }[];
}

/**
 * Reads lines of material and weight; tab, semicolon or comma between them, or blanks before the last number. Further
 * columns of numbers are further recipes, named by the heading. A decimal comma is read where another mark parts the
 * columns.
 * @returns up to four recipes, and the numbers of the lines that had no weight
 * @example readRecipes("whiting, 20\nsilica, 30").recipes[0].rows.length // 2
 */
export function readRecipes(text: string): { recipes: PastedRecipe[]; left: number[] } {
  const lines = text.split(/\r\n?|\n/).map((line) => line.trim());
  const mark = ["\t", ";", ","].find((one) => lines.some((line) => line.includes(one)));
  const recipes: PastedRecipe[] = [];
  const left: number[] = [];
  let names: string[] | null = null;
  lines.forEach((line, i) => {
    if (line === "") return;
    const [material = "", ...cells] = splitLine(line, mark);
    const weights = cells.map((cell) => readNumber(cell.replace(/%$/, "")).value);
    if (!weights.some((weight) => weight !== null)) {
      if (names === null && recipes.length === 0 && cells.length > 0) names = cells;
      else left.push(i + 1);
      return;
    }
    if (/^total\b/i.test(material)) return;
    weights.slice(0, MOST_TRIALS).forEach((weight, column) => {
      recipes[column] ??= { name: cells.length > 1 ? (names?.[column] ?? "") : "", rows: [] };
      if (weight !== null && weight !== 0) recipes[column]!.rows.push({ material, parts: String(weight) });
    });
  });
  return { recipes: recipes.filter((recipe) => recipe && recipe.rows.length > 0), left };
}

function splitLine(line: string, mark: string | undefined): string[] {
  if (mark && line.includes(mark)) {
    return line.split(mark).map((cell) => cell.trim().replace(/^"(.*)"$/, "$1"));
  }
  const found = /^(.*\S)[ :]+([\d.,]+%?)$/.exec(line);
  return found ? [found[1]!.replace(/:$/, ""), found[2]!] : [line];
}
