/** Coats of glaze, read: chemistry, viscosity, thickness. @module */
import { analyseGlaze, type GlazeChemistry, molarMass } from "../chemistry/index.ts";
import type { Notice } from "../errors.ts";
import { feldsparShare } from "../fit/feldspar-glass.ts";
import {
  appenDensity,
  KNOWN_GLAZES,
  type MoleFractions,
  type ViscosityCurve,
  viscosityCurve,
  type WeightPercent,
} from "../glass/index.ts";
import type { Faults } from "../lengths/index.ts";
import { quantileOf } from "../quantity.ts";
import { type Application, COAT_MM, THICKNESS_SHARE } from "./practice.ts";
import type { Coat } from "./types.ts";

/** A coat made ready. */
export interface ReadCoat {
  chemistry: GlazeChemistry;
  curve: ViscosityCurve;
  /** Fired [mm], with its half-width (90 %). */
  thicknessMm: number;
  plusMinusMm: number;
  /** Of the cold glass [kg/m³]. */
  densityKgPerM3: number;
  warnings: Notice[];
}

/** The hand's work in words. */
const BY: Readonly<Record<Application, string>> = {
  dip: "dipping",
  pour: "pouring",
  spray: "spraying",
  brush: "brushing",
};
/** Thickness of a coat of which nothing is said [mm]. */
const USUAL_MM = 0.3;
/** Density of a glaze that no volume is known for [kg/m³] (from-memory-handbooks). */
const USUAL_DENSITY = 2450;

/**
 * Reads one coat.
 * @param coat - glaze, and thickness or application
 * @param pointer - where it stands
 * @param faults - takes what cannot be
 * @returns the coat, or undefined after a fault
 */
export function readCoat(coat: Coat, pointer: string, glazePointer: string, faults: Faults): ReadCoat | undefined {
  const chemistry = faults.gather(glazePointer, () => analyseGlaze(coat.glaze));
  const warnings: Notice[] = [];
  const { thicknessMm: stated } = coat.glaze;
  const { application, coats = 1 } = coat;
  const count = faults.number(coats, `${pointer}/coats`, "How many times over", { from: 1, to: 20, unit: "coats" });
  let thicknessMm = USUAL_MM;
  let plusMinusMm = USUAL_MM * THICKNESS_SHARE;
  if (stated !== undefined) {
    if (application !== undefined || coat.coats !== undefined) {
      const message = "Give the thickness, or how it was put on, not both: they could contradict each other.";
      faults.add(`${pointer}/${application === undefined ? "coats" : "application"}`, message);
    }
    const limits = { from: 0.01, to: 5, unit: "mm" };
    if (!faults.number(stated, `${glazePointer}/thicknessMm`, "The fired coat", limits)) return undefined;
    thicknessMm = stated;
    plusMinusMm = stated * THICKNESS_SHARE;
  } else if (application !== undefined) {
    if (!Object.hasOwn(COAT_MM, application)) {
      const allowed = Object.keys(COAT_MM);
      faults.add(`${pointer}/application`, `I know no way of glazing called ${application}.`, { allowed });
      return undefined;
    }
    const { low, high } = COAT_MM[application];
    thicknessMm = (coats * (low + high)) / 2;
    plusMinusMm = (coats * (high - low)) / 2;
    const many = coats === 1 ? "one coat" : `${coats} coats`;
    const message = `I took ${shown(thicknessMm)} mm fired, ${shown(coats * low)} to ${shown(coats * high)}, for ${many} put on by ${BY[application]} (common practice, no source). A fired chip under a lens and a rule tells better.`;
    warnings.push({ code: "thickness-from-application", message, pointer: `${pointer}/application` });
  } else {
    thicknessMm = USUAL_MM * coats;
    plusMinusMm = thicknessMm * THICKNESS_SHARE;
    const message = `You did not say how thick the fired glaze is. I have taken ${shown(thicknessMm)} mm; run goes with the square of it.`;
    warnings.push({ code: "thickness-assumed", message, pointer: `${glazePointer}/thicknessMm` });
  }
  if (!chemistry || !count) return undefined;
  const curve = viscosityCurve(chemistry.moleFractions);
  if (isUnknowable(curve)) {
    const message = `I can't say how this one runs: no melt like it was ever measured. ${KNOWN_GLAZES}`;
    faults.add(glazePointer, message);
    return undefined;
  }
  if (feldsparShare(chemistry.moleFractions) > FELDSPAR_FROM) {
    const message =
      "Alumina takes up all of the alkali in this glaze, and there is hardly any lime to soften it: measured melts like it are some three times as stiff at 1200 °C as I reckon (1 to 25 times), so it likely runs less.";
    warnings.push({ code: "feldspar-glass", message, pointer: glazePointer });
  }
  const at = (notice: Notice): Notice =>
    notice.pointer === undefined
      ? { ...notice, pointer: glazePointer }
      : { ...notice, pointer: glazePointer + notice.pointer };
  warnings.unshift(...[...chemistry.warnings, ...curve.warnings].map(at));
  const densityKgPerM3 = (appenDensity(chemistry.moleFractions).value ?? USUAL_DENSITY / 1000) * 1000;
  return { chemistry, curve, thicknessMm, plusMinusMm, densityKgPerM3, warnings };
}

/** How far a melt has to be like feldspar to be told of [-] (a choice, no source). */
const FELDSPAR_FROM = 0.7;

/** Widest 90 % interval of a viscosity with which a run still says something [decades of Pa·s]. */
const WIDEST = 10;

/** Whether the viscosity of a melt is so doubtful at the heat of kilns that a run would be any figure or none. */
function isUnknowable(curve: ViscosityCurve): boolean {
  const estimate = curve.logViscosity(1200);
  return !(quantileOf(estimate, 0.95) - quantileOf(estimate, 0.05) <= WIDEST);
}

const shown = (mm: number) => String(Math.round(mm * 100) / 100);

/**
 * Coats melted into one: fired weights added up.
 * @returns weight per cent and mole fractions of the mixture
 */
export function mixture(coats: readonly ReadCoat[]): { weightPercent: WeightPercent; moleFractions: MoleFractions } {
  const weights: Record<string, number> = {};
  const masses = coats.map(({ thicknessMm, densityKgPerM3 }) => thicknessMm * densityKgPerM3);
  const total = masses.reduce((sum, mass) => sum + mass, 0);
  coats.forEach(({ chemistry }, i) => {
    for (const [oxide, percent] of Object.entries(chemistry.fired.weightPercent)) {
      weights[oxide] = (weights[oxide] ?? 0) + (percent * masses[i]!) / total;
    }
  });
  return { weightPercent: weights, moleFractions: moleFractionsOf(weights) };
}

/**
 * Mole fractions of weights on any scale.
 * @example moleFractionsOf({ SiO2: 60.083, MgO: 40.304 }).MgO // 0.5
 */
export function moleFractionsOf(weights: WeightPercent): Record<string, number> {
  const moles = Object.entries(weights).map(([oxide, weight]) => [oxide, weight / molarMass(oxide)] as const);
  const total = moles.reduce((sum, [, amount]) => sum + amount, 0);
  return Object.fromEntries(moles.map(([oxide, amount]) => [oxide, amount / total]));
}

/** A glass with one oxide's weight raised and the rest scaled down. @param byPercent - weight per cent added [wt %] */
export function withMore(weightPercent: WeightPercent, oxide: string, byPercent: number): Record<string, number> {
  const before = weightPercent[oxide] ?? 0;
  const rest = (100 - before - byPercent) / (100 - before);
  const raised = Object.fromEntries(Object.entries(weightPercent).map(([name, weight]) => [name, weight * rest]));
  return { ...raised, [oxide]: before + byPercent };
}
