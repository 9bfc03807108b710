/**
 * What makers call things that have another name here. A word may stand for several fields: the first that is known at its
 * place is meant.
 *
 * @module
 */

/** Field → words for it, small letters alone (common practice, no source). The order of fields settles a word for several. */
const WORDS = {
  // The firing, and the points of a curve
  peakC: "temperature temp peaktemperature peaktemp maxtemperature maxtemp toptemperature toptemp top max cone",
  coolingCPerHour: "coolingrate coolrate cooldown rate",
  cPerHour: "rate speed ramp",
  heatingCPerHour: "heatingrate heatrate ramp",
  holdMinutes: "soak holdtime soaktime dwell",
  toC: "temperature temp target end",
  c: "temperature temp t",
  strainPercent: "expansion lengthchange change",
  firing: "fire kiln schedule firingschedule cone temperature temp peak",
  // The recipe
  parts: "amount amt percent percentage weight wt grams gram quantity qty share",
  material: "name ingredient id",
  recipe: "ingredients materials batch lines",
  additions: "colorants colourants colorant colourant opacifiers adds extras",
  oxides: "analysis composition chemistry umf unityformula",
  amounts: "oxides analysis values",
  weightPercent: "oxides composition amounts",
  lossOnIgnitionPercent: "loi loss",
  // The expansion
  expansion: "coe cte coefficient coefficientofexpansion expansioncoefficient thermalexpansion alpha",
  value: "coe cte coefficient expansion mean alpha",
  plusMinus: "tolerance uncertainty error sd sigma",
  transitionC: "tg glasstransition",
  // Clay and ware
  class: "type kind name clay claytype bodyclass",
  body: "clay claybody",
  absorptionPercent: "waterabsorption",
  moistureExpansionPercent: "moistureexpansion moisturegrowth",
  youngsGPa: "youngsmodulus modulus elasticmodulus stiffness",
  ruptureMPa: "mor modulusofrupture bendingstrength strength",
  ware: "piece pot wall",
  wallMm: "wallthickness claythickness thickness",
  thicknessMm: "glazethickness coatthickness thick",
  serviceYears: "life lifetime years",
  edgeRadiusMm: "edge rim radius rimradius",
  glazed: "faces sides glazedfaces",
  // Tests and runs
  seen: "observed observation observations result",
  slopeDeg: "angle",
  clearanceMm: "gap",
} as const;

/** Word → fields, in the order in which they are asked for. */
export const TRADE_WORDS: ReadonlyMap<string, readonly string[]> = turned();

function turned(): Map<string, string[]> {
  const fields = new Map<string, string[]>();
  for (const [field, words] of Object.entries(WORDS)) {
    for (const word of words.split(" ")) fields.set(word, [...(fields.get(word) ?? []), field]);
  }
  return fields;
}
