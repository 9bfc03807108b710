/** What to measure or fire next, and what it would buy. @module */
import { quantity, round, UNITS } from "../quantity.ts";
import type { Input } from "./draws.ts";
import type { DoubtShares } from "./shares.ts";
import { skinOf } from "./simulate.ts";
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
  /** What it asks for, 1 a few minutes, 2 a firing, 3 a laboratory: cheaper ones come first where they buy as much. */
  effort: 1 | 2 | 3;
  what: string;
  action: string;
  sources: readonly string[];
}

const MEASUREMENTS: readonly Measurement[] = [
  {
    input: "body-expansion",
    label: "how much the clay shrinks",
    inputs: ["bodyMean", "bodyQuartz", "bodyRise", "bodyCristobalite"],
    left: 0.3,
    effort: 3,
    sources: ["astm-c372"],
    what: "the clay",
    action: "Have a fired bar of your clay run in a dilatometer to 700 °C (ASTM C372)",
  },
  {
    input: "glaze-expansion",
    label: "how much the glaze shrinks",
    inputs: ["glazeExpansion", "glazeRise", "recipe"],
    left: 0.35,
    effort: 3,
    sources: ["astm-c372"],
    what: "the glaze",
    action:
      "Cast a bar of the glaze and have it run in a dilatometer (ASTM C372), or glaze one face of a thin strip of a clay you know and measure how it bends",
  },
  {
    input: "on-ware",
    label: "how far the thin glaze takes up clay",
    inputs: ["onWare"],
    left: 0.5,
    effort: 2,
    sources: ["common-practice"],
    what: "what the clay does to a thin skin",
    action: "Glaze a split ring of your clay, fire it, cut it and measure how far the gap closes or opens",
  },
  {
    input: "set-point",
    label: "where the glaze sets",
    inputs: ["setPoint", "transition"],
    left: 0.5,
    effort: 3,
    sources: ["astm-c372"],
    what: "where the glaze sets",
    action:
      "Read the glass transition off a dilatometer run of the glaze, and log the kiln's cooling from 750 to 500 °C",
  },
  {
    input: "thickness",
    label: "how thick the glaze is",
    inputs: ["thickness"],
    left: 0.3,
    effort: 1,
    sources: ["common-practice"],
    what: "the thickness",
    action: "Break a test tile and measure the glaze under a magnifier",
  },
  {
    input: "stiffness",
    label: "how stiff glaze and clay are",
    inputs: ["glazeStiffness", "bodyStiffness"],
    left: 0.5,
    effort: 3,
    sources: ["common-practice"],
    what: "the stiffness",
    action: "Have the modulus of a fired bar measured by resonance",
  },
];

/** Inputs that moisture, breaking or lifting bring in: they move the verdict, not the stress. */
const FATE: readonly Omit<Measurement, "left" | "effort" | "what" | "action" | "sources">[] = [
  { input: "moisture", label: "how much the clay grows with moisture", inputs: ["moisture"] },
  { input: "strength", label: "how tough glaze and interface are", inputs: ["toughness", "interface", "rupture"] },
];

const sum = (shares: Record<Input, number>, inputs: readonly Input[]) =>
  round(
    inputs.reduce((total, input) => total + shares[input], 0),
    3,
  );

/** Doubt by what could be measured, largest first; shares of the variance of the stress and of the outcome [-]. */
export function driversOf({ shares, verdictShares }: DoubtShares): Driver[] {
  return [...MEASUREMENTS, ...FATE]
    .map(({ input, label, inputs }) => ({
      input,
      label,
      share: sum(shares, inputs),
      verdictShare: sum(verdictShares, inputs),
    }))
    .sort((a, b) => b.share - a.share || b.verdictShare - a.verdictShare);
}

/** A measurement worth its effort has to take away this share of the interval for each step of effort [-]. */
const WORTH = 0.05;

/**
 * The measurement that buys most for its effort, then the test tile.
 * What is left of the interval after a measurement: half·√(1 − S(1 − r²)), S the share of its inputs, r what it leaves of
 * their doubt.
 */
export function nextSteps(
  prepared: Prepared,
  { shares }: DoubtShares,
  summary: Summary,
  { of20 }: Judgement,
): Reason[] {
  const half = (summary.stress.high - summary.stress.low) / 2;
  const steps: Reason[] = MEASUREMENTS.map((m) => {
    const share = sum(shares, m.inputs);
    return { m, share, after: half * Math.sqrt(Math.max(1 - share * (1 - m.left ** 2), 0)) };
  })
    .filter(({ m, after }) => 1 - after / half > WORTH * m.effort)
    .sort((a, b) => (half - b.after) / b.m.effort - (half - a.after) / a.m.effort)
    .slice(0, 2)
    .map(({ m, share, after }, i) => ({
      code: `measure-${m.input}`,
      text: `${i === 0 ? "It pays most to measure" : "Then"} ${m.what}. ${m.action}: the stress would then be known to about ±${Math.round(after / 1e6)} instead of ±${Math.round(half / 1e6)}\u00a0MPa.`,
      detail: `${Math.round(share * 100)} % of the variance of the stress comes from ${m.label}; the measurement is taken to leave ${Math.round(m.left * 100)} % of its standard deviation.`,
      quantities: [quantity(after / 1e6, 0, half / 1e6, UNITS.stress, { decimals: 0 })],
      sources: [...m.sources],
    }));
  return [...steps, tile(prepared, summary, of20)];
}

function tile({ situation }: Prepared, { stress }: Summary, of20: Judgement["of20"]): Reason {
  const crazes = of20.crazesOnCooling + of20.crazesLater;
  return {
    code: "fire-a-tile",
    text: `Fire one tile of your clay with the glaze ${millimetres(skinOf(situation) * 1000)} thick. Rub ink over it cold, after a day and after a month: I expect cracks at once ${chances(of20.crazesOnCooling)}, cracks by and by ${chances(crazes)}, lifting edges ${chances(of20.shivers)}.`,
    detail: `The stress I expect in it is ${megapascal(stress.value)} (${megapascal(stress.low)} to ${megapascal(stress.high)}). A tile that cracks at once says it lies above the threshold, one that holds says it lies below.`,
    quantities: [quantity(stress.value / 1e6, stress.low / 1e6, stress.high / 1e6, UNITS.stress, { decimals: 0 })],
    sources: ["common-practice"],
  };
}
