/** What to measure or fire next, and what it would buy. @module */
import { quantity, UNITS } from "../quantity.ts";
import type { Input } from "./draws.ts";
import type { Simulation } from "./simulate.ts";
import type { Prepared } from "./situation.ts";
import type { Summary } from "./summary.ts";
import type { Driver, Reason } from "./types.ts";
import type { Judgement } from "./verdict.ts";
import { chances, megapascal, millimetres } from "./words.ts";

/** Inputs that one measurement settles together. */
interface Measurement {
  input: string;
  label: string;
  inputs: readonly Input[];
  /** Share of the standard deviation that stays after it is measured [-] (common practice, no source). */
  left: number;
  what: string;
  action: string;
}

const MEASUREMENTS: readonly Measurement[] = [
  {
    input: "body-expansion",
    label: "how much the clay shrinks",
    inputs: ["bodyMean", "bodyQuartz", "bodyRise", "bodyCristobalite"],
    left: 0.3,
    what: "the clay",
    action: "Have a fired bar of your clay run in a dilatometer to 700 °C (ASTM C372)",
  },
  {
    input: "glaze-expansion",
    label: "how much the glaze shrinks",
    inputs: ["glazeExpansion", "glazeRise", "recipe"],
    left: 0.35,
    what: "the glaze",
    action:
      "Cast a bar of the glaze and have it run in a dilatometer (ASTM C372), or glaze one face of a thin strip of a clay you know and measure how it bends",
  },
  {
    input: "on-ware",
    label: "how far the thin glaze takes up clay",
    inputs: ["onWare"],
    left: 0.5,
    what: "what the clay does to a thin skin",
    action: "Glaze a split ring of your clay, fire it, cut it and measure how far the gap closes or opens",
  },
  {
    input: "set-point",
    label: "where the glaze sets",
    inputs: ["setPoint", "transition"],
    left: 0.5,
    what: "where the glaze sets",
    action:
      "Read the glass transition off a dilatometer run of the glaze, and log the kiln's cooling from 750 to 500 °C",
  },
  {
    input: "thickness",
    label: "how thick the glaze is",
    inputs: ["thickness"],
    left: 0.3,
    what: "the thickness",
    action: "Break a test tile and measure the glaze under a magnifier",
  },
  {
    input: "stiffness",
    label: "how stiff glaze and clay are",
    inputs: ["glazeStiffness", "bodyStiffness"],
    left: 0.5,
    what: "the stiffness",
    action: "Have the modulus of a fired bar measured by resonance",
  },
];

/** Doubt by what could be measured, largest first; shares of the variance of the stress [-]. */
export function driversOf(simulation: Simulation): (Driver & { measurement: Measurement })[] {
  return MEASUREMENTS.map((measurement) => ({
    input: measurement.input,
    label: measurement.label,
    share: Math.round(measurement.inputs.reduce((sum, input) => sum + simulation.shares[input], 0) * 1000) / 1000,
    measurement,
  })).sort((a, b) => b.share - a.share);
}

/** The most telling measurement, then the test tile. */
export function nextSteps(prepared: Prepared, simulation: Simulation, summary: Summary, { of20 }: Judgement): Reason[] {
  const [top] = driversOf(simulation);
  const half = (summary.stress.high - summary.stress.low) / 2;
  const crazes = of20.crazesOnCooling + of20.crazesLater;
  const mm = prepared.situation.thicknessM * 1000;
  const steps: Reason[] = [];
  if (top && top.share > 0.05) {
    const after = half * Math.sqrt(Math.max(1 - top.share * (1 - top.measurement.left ** 2), 0));
    steps.push({
      code: `measure-${top.input}`,
      text: `Most of the doubt is ${top.measurement.what}. ${top.measurement.action}: the stress would then be known to about ±${Math.round(after / 1e6)} instead of ±${Math.round(half / 1e6)}\u00a0MPa.`,
      quantities: [quantity(after / 1e6, 0, half / 1e6, UNITS.stress, { decimals: 0 })],
      sources: ["astm-c372"],
    });
  }
  steps.push({
    code: "fire-a-tile",
    text: `Fire one tile of your clay with the glaze ${millimetres(mm)} thick. Rub ink over it cold, after a day and after a month: I expect cracks at once ${chances(of20.crazesOnCooling)}, cracks by and by ${chances(crazes)}, lifting edges ${chances(of20.shivers)}. Today's stress should be near ${megapascal(summary.stress.value)}.`,
    quantities: [
      quantity(summary.stress.value / 1e6, summary.stress.low / 1e6, summary.stress.high / 1e6, UNITS.stress, {
        decimals: 0,
      }),
    ],
    sources: ["common-practice"],
  });
  return steps;
}
