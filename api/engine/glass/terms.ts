/**
 * The physical terms of the measured-glass models.
 *
 * A term is a quantity such as `CaO`, `R2O` or `BoronInFour`, or a product of two of them written `R2O*Al2O3`.
 * Every quantity except `SiO2` is a sum, minimum or maximum of the other oxides and scales with them, so along
 * the line from pure silica to a glass each model is a parabola. The exact split into contributions rests on that.
 *
 * @module
 */
import { MODEL_OXIDES } from "./oxides.ts";

const at = (oxide: (typeof MODEL_OXIDES)[number]) => MODEL_OXIDES.indexOf(oxide);
const AL = at("Al2O3");
const B = at("B2O3");
const ALKALIS = [at("Li2O"), at("Na2O"), at("K2O")];
const EARTHS = [
  at("MgO"),
  at("CaO"),
  at("SrO"),
  at("BaO"),
  at("ZnO"),
  at("PbO"),
  at("FeO"),
  at("MnO"),
  at("CoO"),
  at("CuO"),
  at("NiO"),
];
const FLUXES = [...ALKALIS, ...EARTHS];

/** Quantities beyond the oxides themselves, in the order they follow them in the vector. */
export const GROUPS = [
  /** Li2O + Na2O + K2O. */
  "R2O",
  /** MgO + CaO + SrO + BaO + ZnO + PbO and the divalent colouring oxides. */
  "RO",
  /** Alumina that alkalis can charge-balance: min(Al2O3, R2O). */
  "AluminaWithAlkali",
  /** Alumina that any flux can charge-balance: min(Al2O3, R2O + RO). What is left is excess alumina. */
  "AluminaWithFlux",
  /** Boron that flux left over by alumina can turn four-fold: min(B2O3, max(R2O + RO − Al2O3, 0)). */
  "BoronInFour",
] as const;

/** Number of quantities: oxides, then groups. */
export const QUANTITY_COUNT = MODEL_OXIDES.length + GROUPS.length;
const R2O = MODEL_OXIDES.length;

/** Names of all quantities, in vector order. */
export const QUANTITIES: readonly string[] = [...MODEL_OXIDES, ...GROUPS];

/**
 * Works out every quantity of a glass.
 * @param x - mole fractions in the order of MODEL_OXIDES [-]
 * @param into - vector of length {@link QUANTITY_COUNT}, overwritten
 */
export function quantitiesOf(x: Float64Array, into: Float64Array): void {
  for (let i = 0; i < x.length; i++) into[i] = x[i]!;
  let r2o = 0;
  for (const i of ALKALIS) r2o += x[i]!;
  let ro = 0;
  for (const i of EARTHS) ro += x[i]!;
  const al = x[AL]!;
  const flux = r2o + ro;
  into[R2O] = r2o;
  into[R2O + 1] = ro;
  into[R2O + 2] = Math.min(al, r2o);
  into[R2O + 3] = Math.min(al, flux);
  into[R2O + 4] = Math.min(x[B]!, Math.max(flux - al, 0));
}

/**
 * Adds one quantity's derivatives by each oxide, on the branch of its minimum that holds at this glass.
 * @param index - position of the quantity in {@link QUANTITIES}
 * @param weight - factor the derivatives are multiplied with
 * @param q - quantities of the glass, from {@link quantitiesOf}
 * @param gradient - ∂/∂x by oxide, added to
 */
export function addGradient(index: number, weight: number, q: Float64Array, gradient: Float64Array): void {
  if (index < MODEL_OXIDES.length) {
    gradient[index] = gradient[index]! + weight;
    return;
  }
  const [rising, falling] = membersOf(index, q);
  for (const i of rising) gradient[i] = gradient[i]! + weight;
  for (const i of falling) gradient[i] = gradient[i]! - weight;
}

/** Oxides that a group rises and falls with, one for one, on its present branch. */
function membersOf(index: number, q: Float64Array): [rising: readonly number[], falling: readonly number[]] {
  const al = q[AL]!;
  const r2o = q[R2O]!;
  const flux = r2o + q[R2O + 1]!;
  switch (GROUPS[index - R2O]!) {
    case "R2O":
      return [ALKALIS, []];
    case "RO":
      return [EARTHS, []];
    case "AluminaWithAlkali":
      return [al <= r2o ? [AL] : ALKALIS, []];
    case "AluminaWithFlux":
      return [al <= flux ? [AL] : FLUXES, []];
    case "BoronInFour":
      if (flux <= al) return [[], []];
      return q[B]! <= flux - al ? [[B], []] : [FLUXES, [AL]];
  }
}

/** A term taken apart: positions of its one or two quantities; `second` is −1 for a plain quantity. */
export interface Term {
  name: string;
  first: number;
  second: number;
}

/**
 * Reads a term's name.
 * @param name - quantity, or two quantities joined by `*`
 * @throws Error when a quantity is not known: the model file and this code disagree
 * @example parseTerm("Na2O*K2O") // { name: "Na2O*K2O", first: 4, second: 5 }
 */
export function parseTerm(name: string): Term {
  const [a = "", b] = name.split("*");
  const first = QUANTITIES.indexOf(a);
  const second = b === undefined ? -1 : QUANTITIES.indexOf(b);
  if (first < 0 || (b !== undefined && second < 0)) throw new Error(`Model term ${name} is not known.`);
  return { name, first, second };
}
