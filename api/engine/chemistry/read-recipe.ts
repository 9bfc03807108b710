/** Reads the lines of a recipe into yields, gathering every fault on the way. @module */
import type { Notice } from "../errors.ts";
import { findMaterial, materialCalled } from "../recipe/materials.ts";
import type { Analysis, Material, Recipe, RecipeLine } from "../recipe/types.ts";
import { yieldOfAnalysis } from "./analysis.ts";
import { Findings } from "./findings.ts";
import { yieldOfMaterial } from "./material-yields.ts";
import { type LeftOut, leaveOut, type Trace } from "./traces.ts";
import { type Yield, yieldOfFormula } from "./yield.ts";

/** Most lines read, additions included [-]. */
export const MAX_LINES = 100;
/** Parts of one line above which a slip of the pen is likelier than a recipe [parts]. */
const HUGE_PARTS = 100_000;
/** Totals of analyses that are answered with a warning [wt %]: `common practice, no source`. */
const USUAL_TOTAL = { from: 95, to: 101.5 };
/** Share lost above which that is said [g/g]. */
const HIGH_LOSS = 0.7;
/** Loss taken for granted where none is stated, above which that is said [wt %]. */
const QUIET_ASSUMED_LOSS = 1;
const WAYS = ["material", "analysis", "formula"] as const;

/** One line, read. */
export interface ReadLine {
  label: string;
  material: Material | null;
  parts: number;
  addition: boolean;
  /** Parts of what is counted: all but the oxides that are not. */
  countedParts: number;
  yielded: Yield;
  /** What is not counted, by grams in one gram as dried. */
  traces: readonly Trace[];
}

/** A line before its parts are known. */
type ReadWay = Pick<ReadLine, "label" | "material" | "yielded" | "traces"> & { counted: number };

/**
 * Leaves the traces of a recipe's lines out of the glaze, or refuses them (traces.ts).
 * @param lines - as read
 * @param warnings - receives remarks
 * @returns what was left out
 * @throws UnknownNameError where they are too much
 */
export function leaveTracesOut(lines: readonly ReadLine[], warnings: Notice[]): LeftOut[] {
  const traces = lines.flatMap(({ parts, traces: own }) =>
    parts > 0 ? own.map((trace) => ({ ...trace, grams: parts * trace.grams })) : [],
  );
  if (traces.length === 0) return [];
  const findings = new Findings();
  const fired = lines.reduce(
    (sum, { countedParts, yielded }) => yielded.grams.reduce((glass, gram) => glass + countedParts * gram, sum),
    0,
  );
  const leftOut = leaveOut(traces, fired, findings, warnings);
  findings.throwIfAny();
  return leftOut;
}

/**
 * Reads a recipe. Traces of oxides that are not counted stand beside the lines; {@link leaveTracesOut} judges them.
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
      const given = list[i]!;
      const line = readPlain(given, addition) ?? readLine(given, `${root}/${i}`, addition, findings, warnings);
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
  const given = WAYS.filter((way) => (line as Record<string, unknown> | null)?.[way] !== undefined);
  if (given.length !== 1) {
    const found = given.length === 0 ? "none of them" : given.join(" and ");
    const message = `A line names a material, or carries an analysis, or a formula: exactly one. This one has ${found}.`;
    findings.impossible.push({ pointer, message, allowed: [...WAYS] });
  }
  const weighs = findings.amount(line?.parts, `${pointer}/parts`, "Parts");
  if (given.length !== 1) return undefined;
  const read = findings.gather(() => readWay(line, pointer, warnings));
  if (!read || !weighs) return undefined;
  remarkOn(read.label, read.yielded, line.parts, pointer, warnings);
  const { counted, ...rest } = read;
  return { ...rest, parts: line.parts, addition, countedParts: line.parts * counted };
}

/** The plain case, a built-in material that calls for no remark, without the cost of building pointers. */
function readPlain(line: RecipeLine, addition: boolean): ReadLine | undefined {
  const { material: id, parts, analysis, formula } = (line ?? {}) as Record<string, unknown>;
  if (analysis !== undefined || formula !== undefined || typeof parts !== "number") return undefined;
  if (!(parts >= 0 && parts <= HUGE_PARTS)) return undefined;
  const material = typeof id === "string" ? materialCalled(id) : undefined;
  if (!material) return undefined;
  const yielded = yieldOfMaterial(material);
  if (yielded.lost > HIGH_LOSS || yielded.fluorine > 0) return undefined;
  return { label: material.id, material, parts, addition, countedParts: parts, yielded, traces: [] };
}

function remarkOn(label: string, { lost, fluorine }: Yield, parts: number, pointer: string, warnings: Notice[]): void {
  if (parts > HUGE_PARTS) {
    const message = `${parts} parts of ${label} is a great deal; check the figure.`;
    warnings.push({ code: "huge-parts", message, pointer: `${pointer}/parts` });
  }
  if (lost > HIGH_LOSS) {
    const message = `${label} loses ${(100 * lost).toFixed(0)} % of its weight in the kiln, so little of it stays in the glaze.`;
    warnings.push({ code: "high-loss", message, pointer });
  }
  if (fluorine > 0) {
    const message = `The fluorine of ${label} is counted as leaving in the kiln; part of it may stay in the glaze.`;
    warnings.push({ code: "fluorine-leaves", message, pointer });
  }
}

function readWay(line: RecipeLine, pointer: string, warnings: Notice[]): ReadWay {
  const whole = { counted: 1, traces: [] };
  if ("material" in line && line.material !== undefined) {
    const material = findMaterial(line.material, `${pointer}/material`);
    return { label: material.id, material, yielded: yieldOfMaterial(material), ...whole };
  }
  const name =
    "name" in line && typeof line.name === "string" && line.name !== "" ? line.name.slice(0, 100) : undefined;
  if ("formula" in line && line.formula !== undefined) {
    const yielded = yieldOfFormula(line.formula, `${pointer}/formula`);
    return { label: name ?? line.formula, material: null, yielded, ...whole };
  }
  const analysis = "analysis" in line ? line.analysis : undefined;
  const at = `${pointer}/analysis`;
  const { totalPercent, assumedLossPercent, ...read } = yieldOfAnalysis((analysis ?? {}) as Analysis, at);
  const label = name ?? "own analysis";
  if (assumedLossPercent > QUIET_ASSUMED_LOSS) {
    const message = `The analysis of ${label} states no loss on ignition; the ${assumedLossPercent.toFixed(1)} % missing from 100 is taken as loss.`;
    warnings.push({ code: "loss-assumed", message, pointer: at });
  } else if (assumedLossPercent === 0 && (totalPercent < USUAL_TOTAL.from || totalPercent > USUAL_TOTAL.to)) {
    const message = `The analysis of ${label} adds up to ${totalPercent.toFixed(1)} %; it has been brought to 100, but check the figures.`;
    warnings.push({ code: "analysis-total", message, pointer: at });
  }
  return { label, material: null, ...read };
}
