/** Stiffness, strength and moisture growth of a body: stated, else from its class. @module */
import { ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { type BodyModel, fromSpan, type Spread, Z90 } from "./body-model.ts";
import type { BodyClass, Span } from "./classes.ts";
import type { BodyFacts } from "./types.ts";

/** Share taken as the half-width of a 90 % interval of a stated fact [-] (common practice, no source). */
const STATED_SHARE = 0.1;

/** Long-term growth by moisture [% of length] by water absorption [%], from the ranges of data/bodies/classes.json. */
const MOISTURE_BY_ABSORPTION: readonly { upTo: number; percent: Span }[] = [
  { upTo: 0.5, percent: [0, 0.005] },
  { upTo: 5, percent: [0.005, 0.05] },
  { upTo: 100, percent: [0.02, 0.18] },
];

const LIMITS: Record<keyof BodyFacts, { low: number; high: number; what: string }> = {
  absorptionPercent: { low: 0, high: 40, what: "Water absorption lies between 0 and 40 % of the dry weight." },
  moistureExpansionPercent: {
    low: 0,
    high: 1,
    what: "Moisture expansion lies between 0 and 1 % of the length; 0.06 % is a lot.",
  },
  youngsGPa: { low: 1, high: 400, what: "Young's modulus of a fired body lies between 1 and 400 GPa." },
  ruptureMPa: { low: 1, high: 500, what: "Modulus of rupture lies between 1 and 500 MPa." },
};

type Facts = Pick<BodyModel, "youngsGPa" | "poisson" | "moisturePercent" | "ruptureMPa" | "warnings">;

/**
 * Puts the facts that a person knows in place of the ranges of the class.
 * @param facts - as given
 * @param row - the class, or the stand-in for any body
 * @param classId - null when no class was told
 * @param pointer - JSON Pointer of the body in the input
 */
export function bodyFacts(facts: BodyFacts, row: BodyClass, classId: string | null, pointer: string): Facts {
  const issues: Issue[] = [];
  for (const [key, { low, high, what }] of Object.entries(LIMITS)) {
    const value = facts[key as keyof BodyFacts];
    if (value !== undefined && !(value >= low && value <= high)) {
      issues.push({ pointer: `${pointer}/${key}`, message: what, allowed: [low, high] });
    }
  }
  if (issues.length > 0) throw new ImpossibleValueError(issues);

  const warnings: Notice[] = [];
  const { absorptionPercent: absorption } = facts;
  const usual = row.absorptionPercent;
  if (
    absorption !== undefined &&
    classId !== null &&
    usual &&
    (absorption > usual[1] * 1.5 + 1 || absorption < usual[0] / 2 - 1)
  ) {
    warnings.push({
      code: "facts-disagree",
      message: `${absorption} % water absorption is not usual for ${row.name} (${usual[0]}–${usual[1]} %). It may be fired short or hard; I took moisture growth from the absorption.`,
      pointer: `${pointer}/absorptionPercent`,
    });
  }
  return {
    youngsGPa: stated(facts.youngsGPa) ?? fromSpan(row.youngsGPa, 3),
    poisson: (row.poisson[0] + row.poisson[1]) / 2,
    moisturePercent: moisture(facts, row),
    ruptureMPa: stated(facts.ruptureMPa) ?? fromSpan(row.ruptureMPa, 1),
    warnings,
  };
}

function moisture(facts: BodyFacts, row: BodyClass): Spread {
  const { absorptionPercent: absorption, moistureExpansionPercent } = facts;
  const known = stated(moistureExpansionPercent);
  if (known) return { ...known, floor: 0 };
  if (absorption !== undefined) {
    return fromSpan(MOISTURE_BY_ABSORPTION.find(({ upTo }) => absorption <= upTo)!.percent, 0);
  }
  // Lithia and cordierite bodies have no figure; being porous they are given that of any body.
  return fromSpan(row.moistureExpansionPercent ?? [0, 0.06], 0);
}

function stated(value: number | undefined): Spread | undefined {
  return value === undefined ? undefined : { value, sd: (value * STATED_SHARE) / Z90, floor: 0 };
}
