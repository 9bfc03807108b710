/** What the glass of a glaze is like beside its expansion. @module */
import { z } from "zod";
import { celsius, list, signed, sourceKeys, words } from "./figures.ts";
import { Notice, quantity, quantityOrNull } from "./quantity.ts";

const meaning = words("What it means at the kiln.", "About there it starts to hold stress.");
const sources = sourceKeys("sciglass-2019");
const missingOxides = list("Oxides of the glaze that are left out for want of a figure.", "CoO");
const warnings = z
  .array(Notice)
  .meta({ description: "Oxides outside the glasses behind these figures; empty if none." });
const note = (example: string) => words("What to know before leaning on it.", example);

const Property = (id: string, unit: string, description: string) =>
  z.strictObject({ value: quantity(`${description} [${unit}].`), meaning, sources }).meta({
    id,
    description: `${description}.`,
  });

const Density = z
  .strictObject({
    value: quantityOrNull("Density at room temperature [g/cm3]; null where no oxide has a figure."),
    missingOxides,
    meaning,
    note: note("The interval rests on eight industrial glasses with printed densities."),
    sources,
  })
  .meta({ id: "GlassDensity", description: "Density of the glass by a published set." });

const SurfaceTension = z
  .strictObject({
    model: words("Which published set.", "kucuk-1999"),
    name: words("The set in words.", "Kucuk, Clare and Jones 1999"),
    temperatureC: celsius("Temperature that it is for [°C].", 1400),
    value: quantityOrNull(
      "Surface tension of the melt [mN/m]; null where the set lacks more than a tenth of the glaze, or where its sum is " +
        "below 80, which is no melt's: so much vanadium, boron, lead or potash is beyond it.",
    ),
    missingOxides,
    note: note("The interval is how far the three sets differ on glazes."),
    sources,
  })
  .meta({ id: "SurfaceTension", description: "Surface tension of the molten glaze by one published set." });

const ViscosityAt = z
  .strictObject({
    temperatureC: celsius("At this temperature [°C].", 1200),
    logViscosity: quantity("Logarithm to base 10 of the viscosity in Pa·s [log10(Pa·s)]."),
  })
  .meta({ id: "ViscosityAt", description: "How stiff the melt is at a temperature." });

const TemperatureOf = z
  .strictObject({
    logViscosity: signed("Logarithm to base 10 of the viscosity in Pa·s [log10(Pa·s)].", 4),
    temperature: quantity("Where the melt is that stiff [°C]."),
    meaning,
  })
  .meta({ id: "TemperatureOfViscosity", description: "The temperature at which the melt is so stiff." });

const Viscosity = z
  .strictObject({
    atTemperatures: z.array(ViscosityAt).meta({
      description: "From 600 to 1400 °C, as far as the curve reaches: 10^1.5 to 10^13 Pa·s.",
    }),
    atViscosities: z
      .array(TemperatureOf)
      .meta({ description: "Temperatures of a few viscosities, the runniest first." }),
    note: note("Of the even melt: crystals, bubbles and grains not yet melted stiffen a real glaze."),
    warnings,
    sources,
  })
  .meta({ id: "GlassViscosity", description: "Viscosity as one falling curve: both lists are read off it." });

const Liquidus = z
  .strictObject({
    indication: quantity("Temperature above which no crystal lasts, as an indication [°C]."),
    note: note("An indication only: it says where crystals could grow, not that they will."),
    warnings,
    sources,
  })
  .meta({ id: "LiquidusIndication", description: "Where crystals could grow: an indication only." });

export const GlassPropertyReport = z
  .strictObject({
    transition: Property("GlassTransition", "°C", "Glass transition as usually reported, near 10^12 Pa·s"),
    youngs: Property("GlassStiffness", "GPa", "Young's modulus at room temperature"),
    density: Density,
    viscosity: Viscosity,
    surfaceTension: z.array(SurfaceTension).meta({ description: "By each published set, the best founded first." }),
    liquidus: Liquidus,
  })
  .meta({ id: "GlassPropertyReport", description: "What the glass is like beside its expansion, with intervals." });
