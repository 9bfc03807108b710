/** One glaze, from its recipe or oxides to what the simulation needs of it. @module */
import { Z90 } from "../body/index.ts";
import { analyseGlaze, type GlazeChemistry } from "../chemistry/index.ts";
import { EngineError, ImpossibleValueError, type Notice } from "../errors.ts";
import {
  type ExpansionContributions,
  expansionContributions,
  type GlassProperties,
  glassProperties,
  KNOWN_GLAZES,
  type ViscosityCurve,
  viscosityCurve,
  WITHOUT_PAPERS,
} from "../glass/index.ts";
import { type Estimate, quantileOf, round } from "../quantity.ts";
import type { OxideComposition, Recipe, SingleGlaze } from "../recipe/types.ts";
import { SET_POINT } from "./constants.ts";
import { FELDSPAR_GLASS, feldsparShare } from "./feldspar-glass.ts";
import { crystalSd, materialsSd } from "./glaze-doubts.ts";
import { readStated } from "./read-stated-glaze.ts";
import type { Coat } from "./simulate.ts";
import { toughnessOf } from "./toughness.ts";
import type { Doubts } from "./types.ts";

/** log10 of the viscosity at the glass transition [Pa·s]. */
const LOG_VISCOSITY_AT_TG = 12;

/** What is known of one glaze before any draw. */
export interface GlazeReading {
  /** Null for a glaze known only by its expansion. */
  chemistry: GlazeChemistry | null;
  contributions: ExpansionContributions | null;
  model: string;
  properties: Omit<Coat, "thicknessM">;
  /** Null for a glaze known only by its expansion. */
  viscosity: ViscosityCurve | null;
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
}

/**
 * Reads one glaze however it is told.
 * @param glaze - recipe, oxides, or a stated expansion
 * @param at - JSON Pointer of the glaze in the request
 * @param doubts - which of the named doubts are left out
 * @throws EngineError with every fault, pointers from the root of the request
 */
export function readGlaze(glaze: SingleGlaze, at: string, doubts: Doubts): GlazeReading {
  if ("expansion" in glaze && glaze.expansion) return readStated(glaze, at);
  let chemistry: GlazeChemistry;
  let properties: GlassProperties;
  let viscosity: ViscosityCurve;
  try {
    chemistry = analyseGlaze(glaze as Recipe | OxideComposition);
    properties = glassProperties(chemistry.moleFractions);
    viscosity = viscosityCurve(chemistry.moleFractions);
    refuseUnknowable(properties.expansion, chemistry.moleFractions);
  } catch (error) {
    if (!(error instanceof EngineError)) throw error;
    throw new EngineError(error.issues.map((issue) => ({ ...issue, pointer: at + issue.pointer })));
  }
  const under = (notices: readonly Notice[]) =>
    notices.map((notice) => (notice.pointer === undefined ? notice : { ...notice, pointer: at + notice.pointer }));
  const contributions = expansionContributions(chemistry.moleFractions);
  const feldspar = feldsparShare(chemistry.moleFractions);
  const crystals = doubts.crystals === false ? 0 : crystalSd(chemistry.fired.molePercent);
  const materials = doubts.materials === false ? 0 : materialsSd(chemistry, contributions.oxides);
  return {
    chemistry,
    contributions,
    model: "measured-glasses",
    properties: {
      expansion: doubts.betweenPapers === false ? agreed(properties.expansion) : properties.expansion,
      transitionC: properties.transitionC,
      ...settingFrom(properties.transitionC, viscosity, feldspar),
      fragility: viscosity.parameters.fragility,
      youngsGPa: properties.youngsGPa,
      recipeSd: Math.hypot(materials, crystals),
      toughness: toughnessOf(chemistry.moleFractions),
    },
    viscosity,
    warnings: [
      ...under(chemistry.warnings),
      ...under(properties.warnings),
      ...(crystals > 0 ? [crystalRemark(crystals, at)] : []),
      ...(feldspar > 0 ? [feldsparRemark(feldspar, at)] : []),
    ],
    cautions: [...chemistry.cautions],
    sources: [...chemistry.sources, ...properties.sources],
  };
}

/** The expansion as it would be known if all papers agreed. */
function agreed({ value, scale, shape }: Estimate): Estimate {
  return { value, scale: scale * WITHOUT_PAPERS, shape };
}

function crystalRemark(sd: number, at: string): Notice {
  return {
    code: "crystals",
    message: `This glaze holds enough opacifier to stay milky with crystals, which are not glass: I allowed another ±${round(sd * Z90, 1)} ×10⁻⁶/K for them.`,
    pointer: at,
  };
}

function feldsparRemark(share: number, at: string): Notice {
  return {
    code: "feldspar-glass",
    message: `Alumina takes up all of the alkali in this glaze, and there is hardly any lime to soften it: measured glasses like it set hotter than I reckon. I moved the set point up by ${round(FELDSPAR_GLASS.hotterK * share, 0)} °C and doubt it more.`,
    pointer: at,
  };
}

/** Widest 90 % interval of the expansion with which a verdict still says something [1e-6/K]. */
export const WIDEST = 12;

/** Refuses glasses of which nothing can be said: nothing like them was ever measured. */
function refuseUnknowable(expansion: Estimate, moleFractions: Readonly<Record<string, number>>): void {
  const width = quantileOf(expansion, 0.95) - quantileOf(expansion, 0.05);
  if (width <= WIDEST) return;
  const { SiO2 = 0, ...others } = moleFractions;
  const [most] = Object.entries(others).sort((a, b) => b[1] - a[1]);
  const silica = round(SiO2 * 100, 0);
  throw new ImpossibleValueError([
    {
      pointer: "",
      message: `I can't judge this one: no glass like it was ever measured (${silica} mol % silica${
        most ? `, ${round(most[1] * 100, 0)} mol % ${most[0]}` : ""
      }). ${KNOWN_GLAZES}`,
    },
  ]);
}

/**
 * Temperature of 10^12 Pa·s from two witnesses of like weight: the viscosity curve, fitted to few glasses so stiff, and
 * the glass transition, reported for many. Where they part, half of the gap is added to the doubt of the set point.
 *
 *     value (T_curve + Tg)/2 + 70 f,   scale √(s_curve² + s_Tg²)/2,   set point ± √(25² + (gap/2)² + (50 f)²)
 *
 * @param feldspar - f, how far it is a glass like molten feldspar ({@link feldsparShare}) [-]
 * @returns estimate [°C] with the shape of the transition's residuals; standard deviation of the set point about it [K]
 */
function settingFrom(
  transition: Estimate,
  { temperatureC }: ViscosityCurve,
  feldspar: number,
): Pick<Coat, "t12C" | "setPointSdK"> {
  const stiff = temperatureC(LOG_VISCOSITY_AT_TG);
  const gap = Math.abs(stiff.value - transition.value) / 2;
  const scale = Math.hypot(stiff.scale, transition.scale) / 2;
  return {
    t12C: {
      value: (stiff.value + transition.value) / 2 + FELDSPAR_GLASS.hotterK * feldspar,
      scale,
      shape: transition.shape,
    },
    setPointSdK: Math.hypot(SET_POINT.shiftSdK, gap, FELDSPAR_GLASS.sdK * feldspar),
  };
}
