/** Why: sentences a student understands, each with its figures. @module */
import type { Prepared } from "./situation.ts";
import type { Summary } from "./summary.ts";
import type { FitReport, Outcome, OxidePull, Reason } from "./types.ts";
import type { Judgement } from "./verdict.ts";
import { celsius, chances, expansion, inWords, megapascal, millimetres, percent, signed } from "./words.ts";

/** How the body is called in a sentence. */
export function clayName({ body }: Prepared): string {
  return body.classId === null ? "this clay" : `this ${body.class.name}`;
}

/** The answer in one sentence. */
export function headline(prepared: Prepared, { verdict, of20 }: Judgement): string {
  const clay = clayName(prepared);
  const crazes = of20.crazesOnCooling + of20.crazesLater;
  const both = crazes >= 2 && of20.shivers >= 2 ? ` It may also ${verdict === "may-shiver" ? "crack" : "lift"}.` : "";
  switch (verdict) {
    case "crazes":
      return `This glaze will ${crazes >= 19 ? "almost surely" : "most likely"} craze on ${clay}: ${chances(crazes)}.`;
    case "shivers":
      return `This glaze will ${of20.shivers >= 19 ? "almost surely" : "most likely"} shiver off ${clay}: ${chances(of20.shivers)}.`;
    case "sound":
      return `This glaze should hold ${of20.sound >= 19 ? "well " : ""}on ${clay}: ${chances(of20.sound)}.`;
    case "may-shiver":
      return `This glaze may shiver on ${clay}: ${chances(of20.shivers)}.${both}`;
    case "may-craze":
      return Math.abs(crazes - 10) <= 1
        ? `This glaze may craze on ${clay}: a coin toss, ${chances(crazes)}.${both}`
        : `This glaze may craze on ${clay}: ${chances(crazes)}.${both}`;
  }
}

type Figures = Pick<FitReport, "stress" | "mismatch" | "setPoint" | "thresholds" | "glaze" | "body">;

/** The reasons, weightiest first. */
export function reasonsFor(
  prepared: Prepared,
  summary: Summary,
  judgement: Judgement,
  pulls: readonly OxidePull[],
  figures: Figures,
): Reason[] {
  return [
    mismatchReason(summary, figures),
    meansReason(prepared, summary, figures),
    thresholdReason(prepared, summary, figures),
    casesReason(prepared, judgement, figures),
    ...moistureReason(prepared, summary, figures),
    ...quartzReason(prepared, summary, figures),
    ...pullReason(pulls, figures),
  ];
}

function mismatchReason({ mismatch, stress, setPointC }: Summary, figures: Figures): Reason {
  const squeezed = mismatch.value >= 0;
  const text = squeezed
    ? `From the point where it sets, near ${celsius(setPointC.value)}, the clay shrinks ${percent(mismatch.value)} more than the glaze would. Cold, the glaze is left squeezed at ${megapascal(stress.value)}.`
    : `From the point where it sets, near ${celsius(setPointC.value)}, the glaze wants to shrink ${percent(mismatch.value)} more than the clay will let it. Cold, it is left stretched at ${megapascal(stress.value)}.`;
  return {
    code: "mismatch",
    text,
    quantities: [figures.mismatch, figures.stress, figures.setPoint].map(plain),
    sources: ["inada-1978-3"],
  };
}

/** A quantity without whatever rides on it. */
function plain({ value, low, high, coverage, unit, rangeC }: FitReport["mismatch"]) {
  return rangeC ? { value, low, high, coverage, unit, rangeC } : { value, low, high, coverage, unit };
}

function meansReason({ body, model }: Prepared, { glazeMean, bodyMean, setPointC }: Summary, figures: Figures): Reason {
  const said =
    model === "stated" ? "The glaze's stated expansion" : "Worked out from its oxides, the glaze's expansion";
  const from = body.basis === "stated" ? "your sheet's" : body.basis === "class" ? "the class's" : "its curve's";
  return {
    code: "expansions",
    text: `${said} is ${expansion(figures.glaze.expansion.value)} from 20 to 300 °C. Glass swells faster as it gets hotter, and a thin skin takes up clay: from 20 °C to the set point (${celsius(setPointC.value)}) it counts ${expansion(glazeMean.value)}, against ${expansion(bodyMean.value)} for the clay (${from} ${expansion(figures.body.expansion.value)} over ${body.expansion.rangeC[0]}–${body.expansion.rangeC[1]} °C).`,
    quantities: [
      figures.glaze.expansion,
      figures.glaze.expansionToSetPoint,
      figures.body.expansion,
      figures.body.expansionToSetPoint,
    ],
    sources: ["mclellan-shand-1984", "merritt-peters-1926"],
  };
}

function thresholdReason({ situation }: Prepared, { thresholds, stress }: Summary, figures: Figures): Reason {
  const mm = situation.thicknessM * 1000;
  if (stress.value < thresholds.edgesMayLift / 2) {
    const half = thresholds.flakesComeOff * Math.SQRT2;
    return {
      code: "lifting-threshold",
      text: `A skin ${millimetres(mm)} thick may begin to lift at edges from ${megapascal(thresholds.edgesMayLift)} and flake from about ${megapascal(thresholds.flakesComeOff)}; half as thick, from about ${megapascal(half)}.`,
      quantities: [figures.thresholds.edgesMayLift, figures.thresholds.flakesComeOff],
      sources: ["hutchinson-suo-1992", "soda-lime-toughness-1990"],
    };
  }
  return {
    code: "cracking-threshold",
    text: `A skin ${millimetres(mm)} thick cracks at once from about ${megapascal(thresholds.cracksOnCooling)} (half as thick, from about ${megapascal(thresholds.cracksOnCooling * Math.SQRT2)}). In ${situation.serviceYears} years it can still crack if it starts out above ${megapascal(thresholds.mayCrackInTime)}.`,
    quantities: [figures.thresholds.cracksOnCooling, figures.thresholds.mayCrackInTime],
    sources: ["hutchinson-suo-1992", "beuth-1992"],
  };
}

function casesReason({ situation }: Prepared, { of20 }: Judgement, figures: Figures): Reason {
  const said: Record<Outcome, string> = {
    crazesOnCooling: "crack as the kiln cools",
    crazesLater: `crack within ${situation.serviceYears} ${situation.serviceYears === 1 ? "year" : "years"}`,
    sound: "hold",
    shivers: "shiver",
  };
  const parts = (Object.keys(said) as Outcome[])
    .filter((outcome) => of20[outcome] > 0)
    .map(
      (outcome) =>
        `${inWords(of20[outcome])} ${of20[outcome] === 1 ? said[outcome].replace(/^(\w+)/, "$1s") : said[outcome]}`,
    );
  return {
    code: "cases",
    text: `Of 20 equally likely cases, ${parts.join(", ")}.`,
    quantities: [plain(figures.stress)],
    sources: [],
  };
}

function moistureReason({ situation }: Prepared, { moistureStress }: Summary, figures: Figures): Reason[] {
  if (moistureStress < 2e6) return [];
  return [
    {
      code: "moisture",
      text: `Clay that drinks water grows: in ${situation.serviceYears} years about ${figures.body.moistureExpansion.value.toFixed(3)}\u00a0%, which pulls the glaze by another ${megapascal(moistureStress)}.`,
      quantities: [figures.body.moistureExpansion],
      sources: ["wilson-2003", "schurecht-1928"],
    },
  ];
}

function quartzReason({ body }: Prepared, { setPointC }: Summary, figures: Figures): Reason[] {
  const quartz = (body.class.quartzFraction[0] + body.class.quartzFraction[1]) / 2;
  if (body.basis === "curve" || body.basis === "phases" || quartz < 0.03) return [];
  const beyond = body.expansion.rangeC[1] < 573 && setPointC.value > 573;
  const before = setPointC.value < 573;
  const text = before
    ? `The glaze sets near ${celsius(setPointC.value)}, below the turn of quartz at 573 °C, so the clay's quartz step comes too early to squeeze it.`
    : beyond
      ? `Quartz turns at 573 °C and the clay steps in, which squeezes the glaze. Your figure stops at ${body.expansion.rangeC[1]} °C and says nothing of it: I allowed ${Math.round(body.class.quartzFraction[0] * 100)} to ${Math.round(body.class.quartzFraction[1] * 100)} % quartz by volume.`
      : "Quartz turns at 573 °C and the clay steps in, which squeezes the glaze; your figure reaches past it.";
  return [{ code: "quartz-step", text, quantities: [figures.setPoint], sources: ["holland-powell-2011"] }];
}

function pullReason(pulls: readonly OxidePull[], figures: Figures): Reason[] {
  const [first, second] = [...pulls].sort((a, b) => b.pullMPa - a.pullMPa);
  if (!first || first.pullMPa <= 0) return [];
  const also = second && second.pullMPa > 0 ? `, then ${second.oxide} (${signed(second.pullMPa)}\u00a0MPa)` : "";
  return [
    {
      code: "pulls",
      text: `Set against silica in its place, ${first.oxide} pulls hardest toward crazing (${signed(first.pullMPa)}\u00a0MPa)${also}. One per cent by weight less of ${first.oxide}, the rest scaled up, changes the stress by about ${signed(-first.perWeightPercentMPa)}\u00a0MPa.`,
      quantities: [figures.glaze.expansion],
      sources: ["sciglass-2019"],
    },
  ];
}
