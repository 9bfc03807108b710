/** What the glass of a glaze is like, as the service shows it. @module */
import type { z } from "zod";
import type { GlazeChemistry } from "../engine/chemistry/index.ts";
import {
  glassDensity,
  glassProperties,
  liquidusIndication,
  surfaceTension,
  type ViscosityCurve,
  viscosityCurve,
} from "../engine/glass/index.ts";
import { type Estimate, type Quantity, quantileOf, quantity, UNITS } from "../engine/quantity.ts";
import type { Shown } from "../http/operation.ts";
import type { GlassPropertyReport } from "../schemas/expansion-properties.ts";
import { pointInto } from "./point-into.ts";

type Report = Shown<z.output<typeof GlassPropertyReport>>;

/** Where the curve is read [°C]. */
const TEMPERATURES = [600, 700, 800, 900, 1000, 1100, 1200, 1300, 1400] as const;
/** What the curve was fitted to [log10(Pa·s)]. */
const REACH = [1.5, 13] as const;

/**
 * Viscosities that mean something at the kiln. How far a coat of 0.3 mm creeps is ρgh²/3η with 2400 kg/m3, how long
 * stress lasts η/G with 27 GPa; 10^6.6 is the softening point of ISO 7884-3 (from memory).
 */
const MEANINGS: readonly (readonly [logViscosity: number, meaning: string])[] = [
  [2, "Runny: a coat of 0.3 mm creeps about 25 mm an hour down a wall."],
  [3, "Flowing: a coat of 0.3 mm creeps about 2.5 mm an hour down a wall."],
  [4, "Smoothing over: a coat of 0.3 mm creeps about a quarter of a millimetre an hour, so brush marks close slowly."],
  [6.6, "Softening: grains of glass stick together and sag under their own weight."],
  [12, "Near the glass transition: stress fades within a minute."],
  [13, "About where a glaze sets in an ordinary cooling: stress takes several minutes to fade."],
];

/**
 * @param chemistry - analysed glaze
 * @returns transition, stiffness, density, viscosity, surface tension and liquidus, each with its interval and meaning
 */
export function showProperties({ moleFractions, fired }: GlazeChemistry): Report {
  const { transitionC, youngsGPa, sources } = glassProperties(moleFractions);
  const { density, sources: densitySources, ...bareDensity } = glassDensity(moleFractions);
  const { liquidusC, note, warnings, sources: liquidusSources } = liquidusIndication(moleFractions);
  return {
    transition: {
      value: figure(transitionC, UNITS.temperature, 0),
      meaning: "Where the glaze turns from stiff liquid to glass on cooling: about there it starts to hold stress.",
      sources,
    },
    youngs: {
      value: figure(youngsGPa, UNITS.modulus, 1),
      meaning: "How stiff the cold glaze is: the stiffer, the more stress the same misfit makes.",
      sources,
    },
    density: {
      value: density,
      ...bareDensity,
      meaning: "How heavy the glass is without bubbles or crystals: bubbles make a glaze lighter, crystals heavier.",
      sources: densitySources,
    },
    viscosity: showViscosity(viscosityCurve(moleFractions)),
    surfaceTension: surfaceTension(moleFractions, fired.weightPercent),
    liquidus: {
      indication: figure(liquidusC, UNITS.temperature, 0),
      note,
      warnings: warnings.map((notice) => pointInto("/glaze", notice)),
      sources: liquidusSources,
    },
  };
}

function showViscosity(curve: ViscosityCurve): Report["viscosity"] {
  const read = TEMPERATURES.map((temperatureC) => ({ temperatureC, estimate: curve.logViscosity(temperatureC) }));
  return {
    atTemperatures: read
      .filter(({ estimate: { value } }) => value >= REACH[0] && value <= REACH[1])
      .map(({ temperatureC, estimate }) => ({ temperatureC, logViscosity: figure(estimate, UNITS.logViscosity, 2) })),
    atViscosities: MEANINGS.map(([logViscosity, meaning]) => ({
      logViscosity,
      temperature: figure(curve.temperatureC(logViscosity), UNITS.temperature, 0),
      meaning,
    })),
    note: "Of the even melt: crystals, bubbles and grains not yet melted stiffen a real glaze.",
    warnings: curve.warnings.map((notice) => pointInto("/glaze", notice)),
    sources: curve.sources,
  };
}

/** An estimate as a quantity that holds nine cases in ten; the value never outside its own interval. */
function figure(estimate: Estimate, unit: string, decimals: number): Quantity {
  const low = Math.min(quantileOf(estimate, 0.05), estimate.value);
  const high = Math.max(quantileOf(estimate, 0.95), estimate.value);
  return quantity(estimate.value, low, high, unit, { decimals });
}
