/** From what a maker knows of a clay to one {@link BodyModel}. @module */
import { ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { type EvenTable, readEven, tabulate } from "../numeric/interpolate.ts";
import { expansionMeant, round } from "../quantity.ts";
import { meanIssues, rangeRemarks } from "../stated-mean.ts";
import { type BodyModel, fromSpan, LEAST_MATRIX_SHARE, type Spread, scaledMixture, Z90 } from "./body-model.ts";
import { ANY_BODY, type BodyClass, findBody } from "./classes.ts";
import { checkCurve, readCurve } from "./curve.ts";
import { bodyFacts, dunting, minerals } from "./facts.ts";
import { CRISTOBALITE_STRAIN, checkPhases, DEBONDED_QUARTZ, mixtureStrain, PHASES, QUARTZ_STRAIN } from "./phases.ts";
import type { Body, BodyFacts, StatedBodyExpansion } from "./types.ts";

/** Half-width taken for a stated mean whose doubt is not told [1e-6/K] (common practice, no source). */
const UNSTATED_PLUS_MINUS = 0.4;
/** Doubt of a strain worked out from phases, as a share: the ±5–10 % of the phase curves. */
const PHASES_SD_SHARE = 0.06;
/** Glass from which quartz parts as in coarse vitrified bodies; glass below which that is told [% by volume] (choices, no source). */
const GLASS_TO_PART_FROM_PERCENT = 20;
const LITTLE_GLASS_PERCENT = 5;
/** Expansions of fired bodies lie here [1e-6/K]; beyond, the unit was mistaken. */
const POSSIBLE_EXPANSION: readonly [number, number] = [-2, 20];

/**
 * Reads a body however it is described.
 * @param body - class, stated mean, dilatometer curve or phases, with facts beside it
 * @param pointer - JSON Pointer of the body in the input, for errors and warnings
 * @returns the body's strain curve with its doubt, stiffness, moisture growth and strength
 * @throws UnknownNameError, ImpossibleValueError
 * @example describeBody({ class: "red-stoneware" }).expansion.value // 5.55, the middle of 4.8–6.3 [1e-6/K]
 */
export function describeBody(body: Body, pointer = ""): BodyModel {
  const { classId, class: row, basis, contraction, expansion, bounds, warnings, sources } = strainOf(body, pointer);
  const facts = bodyFacts(body, row, classId, pointer);
  return {
    classId,
    class: row,
    basis,
    contraction,
    expansion,
    bounds,
    youngsGPa: facts.youngsGPa,
    poisson: facts.poisson,
    moisturePercent: facts.moisturePercent,
    ruptureMPa: facts.ruptureMPa,
    warnings: [...warnings, ...poresUnknown(body, basis, pointer), ...facts.warnings],
    sources: [...new Set([...sources, ...row.sources])],
  };
}

/** A curve or phases tell nothing of pores; what is taken for them is said where no fact tells either. */
function poresUnknown(facts: BodyFacts, basis: BodyModel["basis"], pointer: string): Notice[] {
  const { absorptionPercent, moistureExpansionPercent, youngsGPa } = facts;
  if (basis !== "curve" && basis !== "phases") return [];
  if (absorptionPercent !== undefined || moistureExpansionPercent !== undefined) return [];
  return [
    {
      code: "pores-unknown",
      message: `You did not say how much water the fired clay takes up, so I had to allow for some growth by moisture${youngsGPa === undefined ? " and any stiffness" : ""}. Of a vitrified clay that is too much, of a porous one too little.`,
      pointer: `${pointer}/absorptionPercent`,
    },
  ];
}

type Described = Pick<
  BodyModel,
  "classId" | "class" | "basis" | "contraction" | "expansion" | "bounds" | "warnings" | "sources"
>;

function strainOf(body: Body, pointer: string): Described {
  if ("curve" in body && body.curve) {
    checkCurve(body.curve, `${pointer}/curve`);
    const { contraction, meanTo500, sdShare, warnings } = readCurve(
      body.curve,
      body.plusMinusPercent,
      `${pointer}/curve`,
    );
    const expansion = { value: meanTo500, sd: Math.abs(meanTo500 * sdShare), rangeC: [20, 500] as const };
    return { classId: null, class: ANY_BODY, basis: "curve", contraction, expansion, warnings, sources: [] };
  }
  if ("phases" in body && body.phases) return fromPhases(body.phases, pointer);
  if ("expansion" in body && body.expansion) return fromStatedMean(body.expansion, body.class, body, pointer);
  const row = findBody((body as { class: string }).class, `${pointer}/class`);
  const { low, high, rangeC } = row.expansion;
  const expansion = { ...fromSpan([low, high]), rangeC };
  const warnings: Notice[] = [
    {
      code: "class-only",
      message: `You named only the class: ${row.name} runs from ${low} to ${high} ×10⁻⁶/K over ${rangeC[0]}–${rangeC[1]} °C. Your clay's own figure would narrow this most.`,
      pointer: `${pointer}/class`,
    },
  ];
  return {
    classId: row.id,
    class: row,
    basis: "class",
    contraction: fromMean(expansion, row, body),
    expansion,
    warnings,
    sources: [],
  };
}

function fromStatedMean(
  stated: StatedBodyExpansion,
  classId: string | undefined,
  facts: BodyFacts,
  pointer: string,
): Described {
  const row = classId === undefined ? ANY_BODY : findBody(classId, `${pointer}/class`);
  const at = `${pointer}/expansion`;
  const rangeC = stated.rangeC ?? ([20, 500] as const);
  checkStated(stated, rangeC, at);
  const warnings: Notice[] = rangeRemarks(stated.rangeC, at);
  if (!stated.rangeC) {
    warnings.push({
      code: "range-assumed",
      message: `No temperature range stands beside ${stated.value} ×10⁻⁶/K. I have taken it as the mean from 20 to 500 °C.`,
      pointer: `${at}/rangeC`,
    });
  }
  if (stated.plusMinus === undefined) {
    warnings.push({
      code: "tolerance-assumed",
      message: `No tolerance stands beside ${stated.value} ×10⁻⁶/K. I have taken ±${UNSTATED_PLUS_MINUS} ×10⁻⁶/K.`,
      pointer: `${at}/plusMinus`,
    });
  }
  if (classId === undefined) {
    warnings.push({
      code: "class-unknown",
      message:
        "You did not name a class of body, so I had to allow for any amount of quartz, any stiffness and some growth by moisture.",
      pointer: `${pointer}/class`,
    });
  }
  const expansion = { value: stated.value, sd: (stated.plusMinus ?? UNSTATED_PLUS_MINUS) / Z90, rangeC };
  warnings.push(...disagreement(expansion, row, classId, at), ...quartzDisagreement(expansion, facts, row, pointer));
  return {
    classId: classId ?? null,
    class: row,
    basis: "stated",
    contraction: fromMean(expansion, row, facts),
    expansion,
    warnings,
    sources: [],
  };
}

function fromMean(expansion: BodyModel["expansion"], row: BodyClass, facts: BodyFacts): BodyModel["contraction"] {
  const { quartz, cristobalite } = minerals(facts, row);
  return scaledMixture(expansion, quartz, cristobalite);
}

/** Says so when counted quartz and cristobalite alone would make up (nearly) all of a stated mean. */
function quartzDisagreement(
  expansion: BodyModel["expansion"],
  facts: BodyFacts,
  row: BodyClass,
  pointer: string,
): Notice[] {
  if (facts.quartzPercent === undefined && facts.cristobalitePercent === undefined) return [];
  const { quartz, cristobalite } = minerals(facts, row);
  const [from, to] = expansion.rangeC;
  const span = (table: EvenTable) => readEven(table, to) - readEven(table, from);
  const minerally = quartz.value * quartz.factor * span(QUARTZ_STRAIN) + cristobalite.value * span(CRISTOBALITE_STRAIN);
  const share = minerally / (expansion.value * 1e-6 * (to - from));
  if (share <= 1 - LEAST_MATRIX_SHARE) return [];
  return [
    {
      code: "facts-disagree",
      message: `The quartz and cristobalite you state would alone make up ${round(share * expansion.value, 1)} of the ${expansion.value} ×10⁻⁶/K you state for the whole clay, and leave hardly anything to its glass. I kept the mean and counted fewer of them.`,
      pointer: `${pointer}/${facts.quartzPercent === undefined ? "cristobalitePercent" : "quartzPercent"}`,
    },
  ];
}

/**
 * A body of phases: Kerner's mixture in glass, sampled every 2.5 °C, with a standard deviation of 6 %. What is missing
 * from 100 % is glass. Quartz counts with {@link DEBONDED_QUARTZ} of its strain where there is enough glass for it to part
 * from, whole where there is none, and on a straight line between.
 */
function fromPhases(phases: Readonly<Record<string, number>>, pointer: string): Described {
  checkPhases(phases, `${pointer}/phases`);
  const given = Object.values(phases).reduce((sum, percent) => sum + percent, 0);
  const filled = given < 99.5 ? { ...phases, glass: (phases.glass ?? 0) + 100 - given } : phases;
  const warnings: Notice[] = [];
  if (given < 99.5) {
    warnings.push({
      code: "glass-assumed",
      message: `The phases add up to ${round(given, 1)} % by volume. I have taken the other ${round(100 - given, 1)} % as glass.`,
      pointer: `${pointer}/phases`,
    });
  }
  for (const [id, percent] of Object.entries(phases)) {
    const { name, stiffnessKnown } = PHASES.get(id)!;
    if (stiffnessKnown || percent === 0) continue;
    warnings.push({
      code: "stiffness-unknown",
      message: `No stiffness was found for ${name}; that of the glass stands in.`,
      pointer: `${pointer}/phases/${id}`,
    });
  }
  const glass = filled.glass ?? 0;
  if (glass < LITTLE_GLASS_PERCENT) {
    warnings.push({
      code: "little-glass",
      message: `These phases hold ${round(glass, 1)} % glass by volume. A fired body holds more, and an X-ray analysis that counts crystals alone brings them to 100 % and makes them too many. Count the glass as well.`,
      pointer: `${pointer}/phases`,
    });
  }
  warnings.push(...dunting((phases.quartz ?? 0) / 100, (phases.cristobalite ?? 0) / 100, `${pointer}/phases`));
  const quartzFactor = 1 - (1 - DEBONDED_QUARTZ) * Math.min(glass / GLASS_TO_PART_FROM_PERCENT, 1);
  const table = tabulate(20, 1000, 2.5, (c) => mixtureStrain(filled, c, { quartzFactor }).kerner);
  const meanTo500 = (readEven(table, 500) / 480) * 1e6;
  return {
    classId: null,
    class: ANY_BODY,
    basis: "phases",
    contraction: (c, { bodyMean }, out) => {
      for (let i = 0; i < c.length; i++) out[i] = readEven(table, c[i]!) * (1 + PHASES_SD_SHARE * bodyMean[i]!);
    },
    expansion: { value: meanTo500, sd: Math.abs(meanTo500) * PHASES_SD_SHARE, rangeC: [20, 500] },
    bounds: (c) => {
      const { turner, linear } = mixtureStrain(filled, c, { quartzFactor });
      const mean = (strain: number) => round((strain / (c - 20)) * 1e6, 2);
      return { turner: mean(turner), linear: mean(linear) };
    },
    warnings,
    sources: [...new Set(Object.keys(filled).flatMap((id) => PHASES.get(id)!.sources))],
  };
}

function checkStated(stated: StatedBodyExpansion, rangeC: readonly [number, number], at: string): void {
  const issues: Issue[] = [];
  const { value, plusMinus } = stated;
  if (!Number.isFinite(value) || value < POSSIBLE_EXPANSION[0] || value > POSSIBLE_EXPANSION[1]) {
    const meant = expansionMeant(value);
    issues.push({
      pointer: `${at}/value`,
      message: `${value} cannot be the expansion of a fired body in 1e-6/K; they run from about 1 to 10.${
        meant === undefined ? "" : ` If the sheet counts in another unit, you may mean ${meant}.`
      }`,
      allowed: [...POSSIBLE_EXPANSION],
      ...(meant === undefined ? {} : { suggestion: String(meant) }),
    });
  }
  issues.push(...meanIssues("body", rangeC, plusMinus, at));
  if (issues.length > 0) throw new ImpossibleValueError(issues);
}

/** Says so when a stated mean lies well outside its class, range against like range. */
function disagreement(
  expansion: Spread & { rangeC: readonly [number, number] },
  row: BodyClass,
  classId: string | undefined,
  at: string,
): Notice[] {
  if (classId === undefined) return [];
  const printed = [row.expansion, ...row.alsoPrinted].find(({ rangeC }) => rangeC[1] === expansion.rangeC[1]);
  if (!printed) return [];
  const { low, high } = printed;
  const beyond = expansion.value < low ? low - expansion.value : expansion.value - high;
  if (beyond <= 0.3) return [];
  return [
    {
      code: "facts-disagree",
      message: `${expansion.value} ×10⁻⁶/K lies ${round(beyond, 1)} ×10⁻⁶/K outside what ${row.name} usually shows (${low}–${high}, ${printed.rangeC[0]}–${printed.rangeC[1]} °C). I trusted your figure; check its unit and range.`,
      pointer: `${at}/value`,
    },
  ];
}
