/** From recipe or oxides to the chemistry of the fired glaze. @module */
import { ImpossibleValueError, type Notice } from "../errors.ts";
import type { Material, OxideComposition, Recipe, RecipeLine } from "../recipe/types.ts";
import { glazeCautions } from "./cautions.ts";
import { OXIDE_MASS, OXIDES } from "./oxides.ts";
import { readOxides } from "./read-oxides.ts";
import { leaveTracesOut, type ReadLine, readRecipe } from "./read-recipe.ts";
import { segerFormula } from "./seger.ts";
import type { LeftOut } from "./traces.ts";
import type { GlazeChemistry, OxideRecord } from "./types.ts";

/** Half-width of a 90 % interval of a normal spread, in standard deviations. */
const SD_PER_HALF_WIDTH = 1 / 1.6449;
const N = OXIDES.length;

/**
 * Chemistry of a glaze, every way: moles, weight and mole per cent fired, weight as weighed, Seger formula, loss and
 * mass balance, with the spread that the materials bring.
 *
 * Recipes are fired in air: carbonates, water, sulfate and fluorine leave, iron counts as Fe2O3, manganese as MnO,
 * cobalt as CoO, copper as CuO. Oxides given directly are the fired glass itself. Additions count like any line.
 *
 * Oxides that are known and not counted (Nd2O3, WO3) are left out with a warning where all together make up to 1 wt % of
 * the fired glaze; everything is then that of the rest.
 *
 * @param glaze - a recipe with parts by weight, or oxides
 * @returns the chemistry, unrounded; rounding is for the edge
 * @throws ImpossibleValueError or UnknownNameError carrying every fault found, with JSON Pointers into `glaze`
 * Sources: ciaaw-2021 for masses; the data file of each material for its analysis; spread by first-order
 * propagation, materials and oxides taken as independent.
 * @example analyseGlaze({ recipe: [{ material: "whiting", parts: 20 }, …] }).seger?.moles
 */
export function analyseGlaze(glaze: Recipe | OxideComposition): GlazeChemistry {
  const warnings: Notice[] = [];
  const { recipe, oxides } = (glaze ?? {}) as Partial<Recipe & OxideComposition>;
  if ((recipe === undefined) === (oxides === undefined)) {
    const message = "Give a glaze either as a recipe or as oxides, one of the two.";
    throw new ImpossibleValueError([{ pointer: "", message, allowed: ["recipe", "oxides"] }]);
  }
  if (oxides !== undefined) {
    const { moles, leftOut } = readOxides({ oxides }, warnings);
    let total = 0;
    for (let i = 0; i < N; i++) total += moles[i]! * OXIDE_MASS[i]!;
    for (let i = 0; i < N; i++) moles[i] = moles[i]! / total; // moles in one gram of glass
    return compose(moles, 0, [], warnings, leftOut);
  }
  const lines = readRecipe(glaze as Recipe, warnings);
  const leftOut = leaveTracesOut(lines, warnings);
  if (lines.length === 1) {
    const message = "This recipe has a single material. It is answered as it stands.";
    warnings.push({ code: "single-material", message, pointer: "/recipe" });
  }
  return fireLines(lines, warnings, leftOut);
}

/**
 * Chemistry of one material by itself, oxides that are not counted left out however much there is of them: what a line
 * brings to a glaze whose own traces were judged.
 * @param line - material, analysis or formula; its parts do not matter
 * @returns its chemistry as that of a glaze
 * @throws ImpossibleValueError or UnknownNameError as {@link analyseGlaze} does
 * @example analyseMaterial({ formula: "CaCO3", parts: 1 }).fired.weightPercent // { CaO: 100 }
 */
export function analyseMaterial(line: RecipeLine): GlazeChemistry {
  const warnings: Notice[] = [];
  return fireLines(readRecipe({ recipe: [{ ...line, parts: 1 }] }, warnings), warnings, []);
}

/** Adds up what the kiln leaves of each line. */
function fireLines(lines: ReadLine[], warnings: Notice[], leftOut: readonly LeftOut[]): GlazeChemistry {
  const parts = countedParts(lines);
  const moles = new Float64Array(N);
  let lost = 0;
  for (const { yielded, countedParts: weight } of lines) {
    const share = weight / parts;
    lost += share * yielded.lost;
    for (let k = 0; k < yielded.oxides.length; k++) {
      const i = yielded.oxides[k]!;
      moles[i] = moles[i]! + (share * yielded.grams[k]!) / OXIDE_MASS[i]!;
    }
  }
  return compose(moles, lost, lines, warnings, leftOut);
}

const countedParts = (lines: readonly ReadLine[]) => lines.reduce((sum, line) => sum + line.countedParts, 0);

/** Lays out the answer for the given moles of each oxide per gram of dry batch. */
function compose(
  moles: Float64Array,
  lost: number,
  lines: ReadLine[],
  warnings: Notice[],
  leftOut: readonly LeftOut[],
): GlazeChemistry {
  let mole = 0;
  let glass = 0;
  for (let i = 0; i < N; i++) {
    mole += moles[i]!;
    glass += moles[i]! * OXIDE_MASS[i]!;
  }
  const firedPercent = new Float64Array(N);
  const moleFractions: OxideRecord = {};
  const weightPercent: OxideRecord = {};
  const molePercent: OxideRecord = {};
  const asWeighed: OxideRecord = {};
  const molesPer100: OxideRecord = {};
  for (let i = 0; i < N; i++) {
    if (!(moles[i]! > 0)) continue;
    const oxide = OXIDES[i]!;
    const gram = moles[i]! * OXIDE_MASS[i]!;
    firedPercent[i] = (100 * gram) / glass;
    moleFractions[oxide] = moles[i]! / mole;
    weightPercent[oxide] = firedPercent[i]!;
    molePercent[oxide] = (100 * moles[i]!) / mole;
    asWeighed[oxide] = 100 * gram;
    molesPer100[oxide] = (100 * moles[i]!) / glass;
  }
  const seger = segerFormula(moles);
  if (!seger) {
    const message = "There is no flux in this glaze, so it has no Seger formula, and it will not melt by itself.";
    warnings.push({ code: "no-flux", message });
  }
  if (!(moles[0]! > 0)) {
    warnings.push({
      code: "no-silica",
      message: "There is no silica here; glazes nearly always need it to form a glass.",
    });
  }
  const materials = new Set<Material>();
  for (const line of lines) if (line.material && line.parts > 0) materials.add(line.material);
  const sources = new Set(["ciaaw-2021"]);
  for (const material of materials) for (const source of material.sources) sources.add(source);
  const own = lines.flatMap(({ material, parts: weight, yielded }) => (material || weight === 0 ? [] : yielded));
  const cautions = glazeCautions([...materials], firedPercent, own, leftOut);
  if (cautions.length > 0) sources.add("hazard-classes");
  const parts = lines.reduce((sum, line) => sum + line.parts, 0);
  return {
    moleFractions,
    fired: { weightPercent, molePercent },
    asWeighed: { weightPercent: asWeighed, lossOnIgnitionPercent: 100 * lost },
    moles: molesPer100,
    seger,
    weightPercentSd: spread(lines, glass, firedPercent),
    lines: lines.map(({ label, material, parts: weight, addition, yielded }) => ({
      label,
      material: material ? material.id : null,
      parts: weight,
      share: weight / parts,
      addition,
      lossOnIgnitionPercent: 100 * yielded.lost,
      weightPercent: yielded.weightPercent,
    })),
    massBalance: { weighedG: 100, glassG: 100 * glass, lostG: 100 * lost, error: 100 - 100 * glass - 100 * lost },
    warnings,
    cautions,
    sources: [...sources],
  };
}

/**
 * Standard deviation of each fired weight per cent w_i. With share p of a line, glass M per gram and standard deviation
 * s_i of oxide i in one gram of the line, dw_i/da_j = p (100 δ_ij − w_i)/M, so that
 * var w_i = Σ_lines (p/M)² [(100 − w_i)² s_i² + w_i² Σ_j≠i s_j²].
 */
function spread(lines: ReadLine[], glass: number, firedPercent: Float64Array): OxideRecord {
  const parts = countedParts(lines);
  const own = new Float64Array(N);
  let shared = 0;
  for (const { yielded, countedParts: weight } of lines) {
    const scale = (weight / parts / glass) * SD_PER_HALF_WIDTH;
    for (let k = 0; k < yielded.oxides.length; k++) {
      const variance = (scale * yielded.plusMinus[k]!) ** 2;
      own[yielded.oxides[k]!] = own[yielded.oxides[k]!]! + variance;
      shared += variance;
    }
  }
  const sd: OxideRecord = {};
  for (let i = 0; i < N; i++) {
    const w = firedPercent[i]!;
    if (w > 0) sd[OXIDES[i]!] = Math.sqrt((100 - w) ** 2 * own[i]! + w * w * Math.max(0, shared - own[i]!));
  }
  return sd;
}
