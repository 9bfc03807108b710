/** Reads the lines of a recipe into yields, gathering every fault on the way. @module */
import type { Notice } from "../errors.ts";
import { findMaterial } from "../recipe/materials.ts";
import type { Material, Recipe, RecipeLine } from "../recipe/types.ts";
import { yieldOfAnalysis } from "./analysis.ts";
import { Findings } from "./findings.ts";
import { yieldOfMaterial } from "./material-yields.ts";
import { type Yield, yieldOfFormula } from "./yield.ts";

/** Most lines read, additions included [-]. */
export const MAX_LINES = 100;
/** Parts of one line above which a slip of the pen is likelier than a recipe [parts]. */
const HUGE_PARTS = 100_000;
/** Largest parts of one line that sums still carry exactly enough [parts]. */
const MAX_PARTS = 1e12;
/** Totals of analyses that are answered with a warning [wt %]: `common practice, no source`. */
const USUAL_TOTAL = { from: 95, to: 101.5 };
/** Loss taken for granted where none is stated, above which that is said [wt %]. */
const QUIET_ASSUMED_LOSS = 1;

/** One line, read. */
export interface ReadLine {
  label: string;
  material: Material | null;
  parts: number;
  addition: boolean;
  yielded: Yield;
}

/**
 * Reads a recipe.
 * @param recipe - lines and additions
 * @param warnings - receives remarks on unusual lines
 * @returns the lines that weigh something or are at least well formed, in the order given
 * @throws ImpossibleValueError or UnknownNameError with every fault found
 */
export function readRecipe(recipe: Recipe, warnings: Notice[]): ReadLine[] {
  const findings = new Findings();
  const main = listOf(recipe.recipe, "/recipe", findings);
  const additions = recipe.additions === undefined ? [] : listOf(recipe.additions, "/additions", findings);
  if (main.length + additions.length > MAX_LINES) {
    const message = `This recipe has ${main.length + additions.length} lines; up to ${MAX_LINES} are read, additions included.`;
    findings.impossible.push({ pointer: "/recipe", message, allowed: [MAX_LINES] });
    findings.throwIfAny();
  }
  const lines: ReadLine[] = [];
  for (const [list, root, addition] of [
    [main, "/recipe", false],
    [additions, "/additions", true],
  ] as const) {
    for (let i = 0; i < list.length; i++) {
      const line = readLine(list[i]!, `${root}/${i}`, addition, findings, warnings);
      if (line) lines.push(line);
    }
  }
  findings.throwIfAny();
  if (!(lines.reduce((total, line) => total + line.parts, 0) > 0)) {
    const message = main.length === 0 ? "The recipe is empty." : "The parts of this recipe add up to 0.";
    findings.impossible.push({
      pointer: "/recipe",
      message: `${message} Give at least one material with parts above 0.`,
    });
    findings.throwIfAny();
  }
  return lines;
}

function listOf(value: unknown, pointer: string, findings: Findings): readonly RecipeLine[] {
  if (Array.isArray(value)) return value;
  findings.impossible.push({ pointer, message: "A recipe is a list of lines, each with a material and its parts." });
  return [];
}

function readLine(
  line: RecipeLine,
  pointer: string,
  addition: boolean,
  findings: Findings,
  warnings: Notice[],
): ReadLine | undefined {
  const given = (["material", "analysis", "formula"] as const).filter(
    (way) => line?.[way as keyof RecipeLine] !== undefined,
  );
  if (given.length !== 1) {
    const found = given.length === 0 ? "none of them" : given.join(" and ");
    const message = `A line names a material, or carries an analysis, or a formula: exactly one. This one has ${found}.`;
    findings.impossible.push({ pointer, message, allowed: ["material", "analysis", "formula"] });
  }
  const weighs = findings.amount(line?.parts, `${pointer}/parts`, "Parts");
  if (weighs && line.parts > MAX_PARTS) {
    findings.impossible.push({
      pointer: `${pointer}/parts`,
      message: "No bench weighs so many parts.",
      allowed: [MAX_PARTS],
    });
  }
  if (given.length !== 1) return undefined;
  const read = findings.gather(() => readWay(line, pointer, warnings));
  if (!read || !weighs) return undefined;
  if (line.parts > HUGE_PARTS) {
    const message = `${line.parts} parts of ${read.label} is a great deal; check the figure.`;
    warnings.push({ code: "huge-parts", message, pointer: `${pointer}/parts` });
  }
  if (read.yielded.lost > 0.7) {
    const message = `${read.label} loses ${(100 * read.yielded.lost).toFixed(0)} % of its weight in the kiln, so little of it stays in the glaze.`;
    warnings.push({ code: "high-loss", message, pointer });
  }
  if (read.yielded.fluorine > 0) {
    const message = `The fluorine of ${read.label} is counted as leaving in the kiln; part of it may stay in the glaze.`;
    warnings.push({ code: "fluorine-leaves", message, pointer });
  }
  return { ...read, parts: line.parts, addition };
}

function readWay(
  line: RecipeLine,
  pointer: string,
  warnings: Notice[],
): { label: string; material: Material | null; yielded: Yield } {
  if ("material" in line && line.material !== undefined) {
    const material = findMaterial(line.material, `${pointer}/material`);
    return { label: material.id, material, yielded: yieldOfMaterial(material) };
  }
  const name =
    "name" in line && typeof line.name === "string" && line.name !== "" ? line.name.slice(0, 100) : undefined;
  if ("formula" in line && line.formula !== undefined) {
    return { label: name ?? line.formula, material: null, yielded: yieldOfFormula(line.formula, `${pointer}/formula`) };
  }
  const analysis = "analysis" in line ? line.analysis : undefined;
  const at = `${pointer}/analysis`;
  const { yielded, totalPercent, assumedLossPercent } = yieldOfAnalysis(analysis ?? { weightPercent: {} }, at);
  const label = name ?? "own analysis";
  if (assumedLossPercent > QUIET_ASSUMED_LOSS) {
    const message = `The analysis of ${label} states no loss on ignition; the ${assumedLossPercent.toFixed(1)} % missing from 100 is taken as loss.`;
    warnings.push({ code: "loss-assumed", message, pointer: at });
  } else if (assumedLossPercent === 0 && (totalPercent < USUAL_TOTAL.from || totalPercent > USUAL_TOTAL.to)) {
    const message = `The analysis of ${label} adds up to ${totalPercent.toFixed(1)} %; it has been brought to 100, but check the figures.`;
    warnings.push({ code: "analysis-total", message, pointer: at });
  }
  return { label, material: null, yielded };
}
