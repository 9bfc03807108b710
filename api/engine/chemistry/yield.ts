/** What one gram of a dried material leaves in the glaze. @module */
import { ImpossibleValueError, UnknownNameError } from "../errors.ts";
import { type Fired, fire } from "./firing.ts";
import { type Atoms, parseFormula } from "./formula.ts";
import { massOf, OXIDE_INDEX, OXIDE_MASS, OXIDES } from "./oxides.ts";

/** Yield of a material, per gram as dried. Arrays run alongside `oxides`. */
export interface Yield {
  /** Positions in `OXIDES`, ascending. */
  oxides: readonly number[];
  /** Mass of each oxide from one gram [g/g]. */
  grams: readonly number[];
  /** Half-width at 90 % of each mass [g/g]. */
  plusMinus: readonly number[];
  /** Mass of gases given off, less oxygen taken up, from one gram [g/g]. */
  lost: number;
  /** Fluorine given off from one gram [g/g]. */
  fluorine: number;
  /** Gases that harm, where a gram gives off {@link FUMES_FROM} or more of them: F, SO3, N2O5, Cl. */
  fumes: readonly string[];
  /** Whether its dust is taken for silica dust by what it is made of. */
  silicaDust: boolean;
  /** What the kiln leaves of 100 g, by oxide [g]. */
  weightPercent: Readonly<Record<string, number>>;
}

/** Spread of a mineral weighed by its formula: half-width at 90 %, share of the figure. `common practice, no source`. */
const FORMULA_SPREAD = 0.03;
/** Share of a material that leaves as a harmful gas from which that is told [g/g]: `common practice, no source`. */
export const FUMES_FROM = 0.01;
const HARMFUL = ["F", "SO3", "N2O5", "Cl"];
/** Share of silica in a material as dried from which hardly all of it can be bound [g/g]: `common practice, no source`. */
const FREE_SILICA_FROM = 0.9;
const SILICA = OXIDE_INDEX.get("SiO2")!;

/**
 * Yield of a mineral or chemical from its formula, fired in air (see `fire`).
 * @param formula - as `parseFormula` reads it
 * @param pointer - where it stands in the input
 * @param plusMinus - half-widths at 90 % by fired oxide [wt %]; 3 % of each figure where none is given
 * @returns the yield per gram
 * @throws ImpossibleValueError when it is no formula or leaves nothing; UnknownNameError for foreign elements
 * @example yieldOfFormula("CaCO3").weightPercent // { CaO: 56.029 }
 */
export function yieldOfFormula(formula: string, pointer = "", plusMinus?: Readonly<Record<string, number>>): Yield {
  const atoms = parseFormula(formula, pointer);
  if (!("O" in atoms) && /0/.test(formula)) {
    const suggestion = formula.replace(/0/g, "O");
    const message = `“${formula.slice(0, 40)}” holds no oxygen. Did you mean ${suggestion.slice(0, 40)}, with the letter O for the zero?`;
    throw new UnknownNameError([{ pointer, message, suggestion }]);
  }
  const fired = firedOrThrow(atoms, pointer);
  const mass = massOf(atoms);
  const grams = new Map<number, number>();
  const spread = new Map<number, number>();
  for (const [i, moles] of fired.oxides) {
    const gram = (moles * OXIDE_MASS[i]!) / mass;
    grams.set(i, gram);
    spread.set(i, plusMinus ? (plusMinus[OXIDES[i]!] ?? 0) / 100 : FORMULA_SPREAD * gram);
  }
  if (grams.size === 0) throw nothingLeft(pointer);
  const gases = Object.entries(fired.gases).map(([gas, gram]) => [gas, gram / mass] as const);
  return buildYield(grams, spread, netLossG(fired) / mass, new Map(gases));
}

/** Gases given off less oxygen taken up, per mole fired [g]. */
export function netLossG(fired: Fired): number {
  let loss = -fired.oxygenTakenUpG;
  for (const gas in fired.gases) loss += fired.gases[gas]!;
  return loss;
}

/** Lays maps from oxide position to grams, and from gas to grams, out as a {@link Yield}. */
export function buildYield(
  grams: ReadonlyMap<number, number>,
  spread: ReadonlyMap<number, number>,
  lost: number,
  gases: ReadonlyMap<string, number>,
): Yield {
  const oxides = [...grams.keys()].sort((a, b) => a - b);
  return {
    oxides,
    grams: oxides.map((i) => grams.get(i)!),
    plusMinus: oxides.map((i) => spread.get(i) ?? 0),
    lost,
    fluorine: gases.get("F") ?? 0,
    fumes: HARMFUL.filter((gas) => (gases.get(gas) ?? 0) >= FUMES_FROM),
    silicaDust: (grams.get(SILICA) ?? 0) >= FREE_SILICA_FROM,
    weightPercent: Object.freeze(Object.fromEntries(oxides.map((i) => [OXIDES[i]!, 100 * grams.get(i)!]))),
  };
}

/** The error for a material of which nothing stays in the glaze. */
export function nothingLeft(pointer: string): ImpossibleValueError {
  const message = "Nothing of this stays in the glaze once it is fired. Leave the line out.";
  return new ImpossibleValueError([{ pointer, message }]);
}

function firedOrThrow(atoms: Atoms, pointer: string): Fired {
  const fired = fire(atoms);
  if (!("homeless" in fired)) return fired;
  const message = `${fired.homeless.join(", ")} has no oxide among those counted in a glaze here.`;
  throw new UnknownNameError([{ pointer, message, allowed: [...OXIDES] }]);
}
