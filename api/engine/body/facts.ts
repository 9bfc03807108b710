/** Stiffness, strength and moisture growth of a body: stated, else from its class. @module */
import { ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { readPoints } from "../numeric/interpolate.ts";
import { round } from "../quantity.ts";
import { type BodyModel, fromSpan, type Spread, Z90 } from "./body-model.ts";
import type { BodyClass, Span } from "./classes.ts";
import type { BodyFacts } from "./types.ts";

/** Share taken as the half-width of a 90 % interval of a stated fact, which never falls below 0 [-] (common practice, no source). */
const STATED_SHARE = 0.1;

/**
 * Long-term growth by moisture [% of length] by water absorption [%]: the ranges of data/bodies/classes.json, at about the
 * middle of what vitreous, stoneware and porous classes take up. Straight lines between (a choice, no source).
 */
const MOISTURE_BY_ABSORPTION: readonly { at: number; percent: Span }[] = [
  { at: 0.5, percent: [0, 0.005] },
  { at: 3, percent: [0.005, 0.05] },
  { at: 10, percent: [0.02, 0.18] },
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
  quartzPercent: { low: 0, high: 80, what: "Free quartz in a fired body lies between 0 and 80 % by weight." },
  cristobalitePercent: { low: 0, high: 60, what: "Cristobalite in a fired body lies between 0 and 60 % by weight." },
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

  const warnings = [
    ...absorptionRemarks(facts, row, classId, pointer),
    ...stiffnessRemarks(facts, row, pointer),
    ...duntingRemarks(facts, row, classId, pointer),
  ];
  return {
    youngsGPa: stated(facts.youngsGPa) ?? stiffness(facts.absorptionPercent, row),
    poisson: (row.poisson[0] + row.poisson[1]) / 2,
    moisturePercent: moisture(facts, row),
    ruptureMPa: stated(facts.ruptureMPa) ?? fromSpan(row.ruptureMPa, 1),
    warnings,
  };
}

/**
 * Weight to volume of the solid: density of a glassy body, 2450 kg/m3 (common practice, no source), over that of the
 * mineral in data/bodies/phases.json [-].
 */
const TO_VOLUME = { quartz: 2450 / 2650, cristobalite: 2450 / 2330 };
/** Half-width of a 90 % interval of a counted mineral, as a share [-] (common practice, no source). */
const COUNTED_SHARE = 0.15;

/** Quartz and cristobalite by volume: counted ones ± 15 % and at least ± 0.5 % of the volume, else the range of the class. */
export function minerals(
  facts: BodyFacts,
  row: BodyClass,
): { quartz: Spread & { factor: number }; cristobalite: Spread } {
  const counted = (percent: number | undefined, toVolume: number): Spread | undefined => {
    if (percent === undefined) return undefined;
    const value = (percent / 100) * toVolume;
    return { value, sd: Math.max(value * COUNTED_SHARE, 0.005) / Z90, floor: 0 };
  };
  return {
    quartz: {
      ...(counted(facts.quartzPercent, TO_VOLUME.quartz) ?? fromSpan(row.quartzFraction, 0)),
      factor: row.quartzFactor,
    },
    cristobalite: counted(facts.cristobalitePercent, TO_VOLUME.cristobalite) ?? fromSpan(row.cristobaliteFraction, 0),
  };
}

/** Density of the solid of a fired body, and Young's modulus without pores. */
const SOLID_G_PER_CM3 = 2.5;
const DENSE_GPA = 70;

/**
 * What pores leave of the stiffness, from water absorption by way of porosity.
 *
 *     P = W ρ_s/(1 + W ρ_s),   E/E₀ = 1 − 1.9 P + 0.9 P²
 *
 * @param absorptionPercent - W [% of dry weight]
 * @returns share of the modulus without pores [-]
 * @remarks Pores lower the stiffness, not the expansion. Source: Mackenzie; Coble & Kingery (from memory).
 * @example stiffnessLeft(10) // 0.656
 */
export function stiffnessLeft(absorptionPercent: number): number {
  const w = (absorptionPercent / 100) * SOLID_G_PER_CM3;
  const pores = w / (1 + w);
  return 1 - 1.9 * pores + 0.9 * pores * pores;
}

/**
 * Young's modulus of a body: of no class 70 GPa less its pores, a quarter to either side; of a class the range of that
 * class, which holds for the middle of what the class takes up, and more or less by what other pores leave.
 *
 *     E = [class] · left(W)/left(middle of the class)
 */
function stiffness(absorption: number | undefined, { youngsGPa, absorptionPercent: usual }: BodyClass): Spread {
  if (absorption === undefined) return fromSpan(youngsGPa, 3);
  if (!usual) {
    const value = DENSE_GPA * stiffnessLeft(absorption);
    return { value, sd: (value * 0.25) / Z90, floor: 3 };
  }
  const share = stiffnessLeft(absorption) / stiffnessLeft((usual[0] + usual[1]) / 2);
  return fromSpan([youngsGPa[0] * share, youngsGPa[1] * share], 3);
}

function absorptionRemarks(facts: BodyFacts, row: BodyClass, classId: string | null, pointer: string): Notice[] {
  const { absorptionPercent: absorption, moistureExpansionPercent: growth } = facts;
  const usual = row.absorptionPercent;
  const notices: Notice[] = [];
  if (absorption === undefined) return notices;
  if (classId !== null && usual && (absorption > usual[1] * 1.5 + 1 || absorption < usual[0] / 2 - 1)) {
    const off = absorption > usual[1] ? absorption - usual[1] : usual[0] - absorption;
    notices.push({
      code: "facts-disagree",
      message: `${absorption} % water absorption is ${round(off, 1)} % outside what is usual for ${row.name} (${usual[0]}–${usual[1]} %). It may be fired short or hard; I took moisture growth and stiffness from the absorption.`,
      pointer: `${pointer}/absorptionPercent`,
    });
  }
  if (absorption <= 0.5 && growth !== undefined && growth > 0.02) {
    notices.push({
      code: "facts-disagree",
      message: `A body that takes up only ${absorption} % water hardly grows with moisture, yet you state ${growth} %: some ${round(growth - 0.005, 3)} % more than I would expect. I trusted your figure.`,
      pointer: `${pointer}/moistureExpansionPercent`,
    });
  }
  return notices;
}

function stiffnessRemarks({ absorptionPercent, youngsGPa }: BodyFacts, row: BodyClass, pointer: string): Notice[] {
  if (absorptionPercent === undefined || youngsGPa === undefined) return [];
  const expected = stiffness(absorptionPercent, row).value;
  if (Math.abs(youngsGPa / expected - 1) < 0.5) return [];
  return [
    {
      code: "facts-disagree",
      message: `${youngsGPa} GPa and ${absorptionPercent} % water absorption do not go together: pores that take up so much water leave about ${round(expected, 0)} GPa. I trusted the modulus.`,
      pointer: `${pointer}/youngsGPa`,
    },
  ];
}

/** Quartz and cristobalite by volume from which a kiln should cool gently through their turns [-] (common practice, no source). */
const MUCH_QUARTZ = 0.22;
const MUCH_CRISTOBALITE = 0.03;

function duntingRemarks(facts: BodyFacts, row: BodyClass, classId: string | null, pointer: string): Notice[] {
  const { quartz, cristobalite } = minerals(facts, row);
  const told = classId !== null || facts.quartzPercent !== undefined || facts.cristobalitePercent !== undefined;
  return told ? dunting(quartz.value, cristobalite.value, pointer) : [];
}

/** What much quartz and cristobalite ask of the kiln; volume fractions [-]. */
export function dunting(quartz: number, cristobalite: number, pointer: string): Notice[] {
  const notices: Notice[] = [];
  if (quartz >= MUCH_QUARTZ) {
    notices.push({
      code: "dunting-quartz",
      message: `With about ${Math.round(quartz * 100)} % quartz by volume the clay jumps at 573 °C. Cool slowly from 600 to 550 °C, or large or uneven pieces may dunt.`,
      pointer,
    });
  }
  if (cristobalite >= MUCH_CRISTOBALITE) {
    notices.push({
      code: "dunting-cristobalite",
      message: `With about ${Math.round(cristobalite * 100)} % cristobalite by volume the clay shrinks suddenly between 270 and 220 °C and squeezes the glaze hard: watch for lifting edges, and for dunting if the kiln is opened hot or the pot is used in an oven.`,
      pointer,
    });
  }
  return notices;
}

/**
 * Growth by moisture: stated; else that of the class, which holds for what the class takes up. Beyond it as much more as
 * the figures by absorption rise, short of it in their proportion. Of no class, or of one without a figure, by absorption.
 */
function moisture(facts: BodyFacts, { absorptionPercent: usual, moistureExpansionPercent: span }: BodyClass): Spread {
  const { absorptionPercent: absorption, moistureExpansionPercent } = facts;
  const known = stated(moistureExpansionPercent);
  if (known) return { ...known, floor: 0 };
  // Lithia and cordierite bodies have no figure; being porous they are given that of any body.
  if (absorption === undefined) return fromSpan(span ?? [0, 0.06], 0);
  const [low, high] = moistureBy(absorption);
  if (!usual || !span) return fromSpan([low, high], 0);
  const [least, most] = usual;
  if (absorption < least) {
    const [lowest, highest] = moistureBy(least);
    return fromSpan([span[0] * (low / lowest), span[1] * (high / highest)], 0);
  }
  const [usualLow, usualHigh] = moistureBy(Math.min(absorption, most));
  return fromSpan([span[0] + (low - usualLow), span[1] + (high - usualHigh)], 0);
}

/** Growth by moisture of a body that takes up so much water [% of length]. */
function moistureBy(absorption: number): Span {
  const [first, last] = [MOISTURE_BY_ABSORPTION[0]!.at, MOISTURE_BY_ABSORPTION.at(-1)!.at];
  const within = Math.min(Math.max(absorption, first), last);
  const read = (end: 0 | 1) =>
    readPoints(
      MOISTURE_BY_ABSORPTION.map(({ at, percent }) => [at, percent[end]] as const),
      within,
    );
  return [read(0), read(1)];
}

function stated(value: number | undefined): Spread | undefined {
  return value === undefined ? undefined : { value, sd: (value * STATED_SHARE) / Z90, floor: 0 };
}
