/** Why: sentences a student understands, each with its figures. @module */
import { TOUGHNESS } from "./constants.ts";
import { DRAWS, INPUTS } from "./draws.ts";
import { skinOf } from "./simulate.ts";
import type { Prepared } from "./situation.ts";
import type { Summary } from "./summary.ts";
import type { FitReport, Outcome, OxidePull, Reason, Trials } from "./types.ts";
import type { Judgement } from "./verdict.ts";
import { celsius, chances, expansion, inWords, megapascal, millimetres, percent, signed, years } from "./words.ts";

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
  trials: Trials,
): Reason[] {
  return [
    mismatchReason(summary, figures),
    meansReason(prepared, summary, figures),
    thresholdReason(prepared, summary, figures),
    ...slopeReason(summary, figures),
    casesReason(prepared, judgement, figures),
    ...moistureReason(prepared, summary, figures),
    ...quartzReason(prepared, summary, figures),
    ...pullReason(pulls, figures),
    quenchReason(trials),
    ...splitReason(prepared, figures),
  ];
}

function quenchReason({ quench }: Trials): Reason {
  const steps = quench.steps.map(({ ovenC, passes }) => `${ovenC} °C ${Math.round(passes * 20)}/20`).join(", ");
  return {
    code: "quench",
    text: quench.text,
    detail: `Surface stress f E_g α_g ΔT/(1 − ν_g), f 0.45–0.95, added to the stress on cooling and set against K/√(Zh): cracks begin at ΔT ${quench.cracksFrom.value} K (${quench.cracksFrom.low} to ${quench.cracksFrom.high}). Chances to pass each step of ${quench.standard}: ${steps}.`,
    quantities: [quench.cracksFrom],
    sources: ["astm-c554", "inada-1978-11"],
  };
}

function splitReason({ situation, body }: Prepared, { body: clay }: Figures): Reason[] {
  if (clay.splits < 0.05) return [];
  const rupture = `${Math.round(body.ruptureMPa.value)} MPa`;
  const pull = `${signed(clay.stress.value)} MPa (${signed(clay.stress.low)} to ${signed(clay.stress.high)})`;
  const bends = situation.glazed === "one-face-free";
  return [
    {
      code: "splitting",
      text: `The squeezed glaze pulls the clay ${bends ? "right under it" : "wall"} by about ${signed(clay.stress.value)}\u00a0MPa; with a wall of ${millimetres(situation.wallM * 1000)} it may split, ${chances(Math.round(clay.splits * 20))}.`,
      detail: bends
        ? `The piece bends: σ_b = E_b(ε₀ + δ)/(1 − ν_b) = ${pull} under the glaze against the modulus of rupture, ${rupture}, or −σ_g t/H against 0.6 of it.`
        : `σ_b = −σ_g n t/H = ${pull} against 0.6 of the modulus of rupture, ${rupture}.`,
      quantities: [clay.stress, clay.rupture],
      sources: ["hutchinson-suo-1992"],
    },
  ];
}

function mismatchReason({ mismatch, stress, setPointC }: Summary, figures: Figures): Reason {
  const squeezed = mismatch.value >= 0;
  const text = squeezed
    ? `From the point where it sets, near ${celsius(setPointC.value)}, the clay shrinks ${percent(mismatch.value)} more than the glaze would. Cold, the glaze is left squeezed at ${megapascal(stress.value)}.`
    : `From the point where it sets, near ${celsius(setPointC.value)}, the glaze wants to shrink ${percent(mismatch.value)} more than the clay will let it. Cold, it is left stretched at ${megapascal(stress.value)}.`;
  const [tsLow, tsHigh] = [figures.setPoint.low, figures.setPoint.high];
  return {
    code: "mismatch",
    text,
    detail: `δ = [ε_b(Ts) − ε_b(20)] − [ε_g(Ts) − ε_g(20)] = ${signed(mismatch.value * 100, 3)} % (${signed(mismatch.low * 100, 3)} to ${signed(mismatch.high * 100, 3)} %, 9 in 10), Ts ${figures.setPoint.value} °C (${tsLow} to ${tsHigh}); σ = −E_g δ/(1 − ν_g), shared with the wall: ${megapascal(stress.value)} (${megapascal(stress.low)} to ${megapascal(stress.high)}). Tension is +.`,
    quantities: [figures.mismatch, figures.stress, figures.setPoint].map(plain),
    sources: ["inada-1978-3"],
  };
}

/** A quantity without whatever rides on it. */
function plain({ value, low, high, coverage, unit, rangeC }: FitReport["mismatch"]) {
  return rangeC ? { value, low, high, coverage, unit, rangeC } : { value, low, high, coverage, unit };
}

function meansReason(
  { body, model, situation }: Prepared,
  { glazeMean, bodyMean, setPointC }: Summary,
  figures: Figures,
): Reason {
  const said =
    model === "stated" ? "The glaze's stated expansion" : "Worked out from its oxides, the glaze's expansion";
  const from = body.basis === "stated" ? "your sheet's" : body.basis === "class" ? "the class's" : "its curve's";
  return {
    code: "expansions",
    detail: `Instantaneous α(T) of the glass = ᾱ(20–300)·(1 + s(T − 160)), s = ${situation.rise.perKelvin}/K ± ${situation.rise.sd}/K (1 sd): books quote ${expansion(figures.glaze.expansion.value)} over 20–300 °C; the mean over 20–${Math.round(setPointC.value)} °C on the ware is ${expansion(glazeMean.value)} (${expansion(glazeMean.low)} to ${expansion(glazeMean.high)}). The clay over the same range: ${expansion(bodyMean.value)} (${expansion(bodyMean.low)} to ${expansion(bodyMean.high)}).`,
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

function thresholdReason({ situation }: Prepared, { thresholds, stress, bent }: Summary, figures: Figures): Reason {
  const mm = skinOf(situation) * 1000;
  if (stress.value < thresholds.edgesMayLift / 2) {
    const half = thresholds.flakesComeOff * Math.SQRT2;
    return {
      code: "lifting-threshold",
      detail: `G₀ = (1 − ν²)σ²h/2E against an interface toughness between 7.4 J/m² (mode I) and 32 J/m² (mode II), median 25; at the sharpest edge (radius ${situation.edgeM * 1000} mm) the pull −σt/R against what the clay bears. One glaze in ten lifts at ${megapascal(thresholds.edgesMayLift)}, every second at ${megapascal(thresholds.flakesComeOff)}.`,
      text: `A skin ${millimetres(mm)} thick may begin to lift at edges from ${megapascal(thresholds.edgesMayLift)} and flake from about ${megapascal(thresholds.flakesComeOff)}; half as thick, from about ${megapascal(half)}.`,
      quantities: [figures.thresholds.edgesMayLift, figures.thresholds.flakesComeOff],
      sources: ["hutchinson-suo-1992", "soda-lime-toughness-1990"],
    };
  }
  // Half as thick, a glaze that slopes would slope less too.
  const half = bent?.shallow
    ? ""
    : ` (half as thick, from about ${megapascal(thresholds.cracksOnCooling * Math.SQRT2)})`;
  return {
    code: "cracking-threshold",
    detail: `σ_c = K/√(Zh): Z from the stiffness of glaze and clay (1.976 when equal), h ${millimetres(mm)}; K_Ic ${situation.toughness.value.toFixed(2)} MPa·√m at once, falling with time to the floor K0 ${TOUGHNESS.floor.value.toFixed(2)} MPa·√m, less what moisture adds.`,
    text: `A skin ${millimetres(mm)} thick cracks at once from about ${megapascal(thresholds.cracksOnCooling)}${half}. In ${years(situation.serviceYears)} it can still crack if it starts out above ${megapascal(thresholds.mayCrackInTime)}.`,
    quantities: [figures.thresholds.cracksOnCooling, figures.thresholds.mayCrackInTime],
    sources: ["hutchinson-suo-1992", "beuth-1992"],
  };
}

/** A thick glaze on a piece that bends may crack from a face, though as a whole it would hold. */
function slopeReason({ bent, stress }: Summary, figures: Figures): Reason[] {
  if (!bent?.shallow) return [];
  const face = stress.value + bent.across / 2;
  const across = `${Math.round(bent.across / 1e6)}\u00a0MPa`;
  return [
    {
      code: "sloping-stress",
      detail: `Of a crack a deep, σ̄(a)√(a/t) at its greatest: m where the mean m is at least d, else ⅔ s √(2s/3d), s = m + d/2; m ${megapascal(stress.value)}, d ${across}, s ${megapascal(face)}.`,
      text: `The glaze is thick beside the wall and the piece bends with it: between its two faces the stress in the glaze differs by ${across}, and the one that is pulled harder stands at ${megapascal(face)}. A crack can start there and stay shallow.`,
      quantities: [plain(figures.stress)],
      sources: ["beuth-1992", "hutchinson-suo-1992"],
    },
  ];
}

function casesReason({ situation }: Prepared, { of20 }: Judgement, figures: Figures): Reason {
  const said: Record<Outcome, string> = {
    crazesOnCooling: "crack as the kiln cools",
    crazesLater: `crack within ${years(situation.serviceYears)}`,
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
    detail: `${DRAWS} quasi-random draws of ${INPUTS.length} uncertain inputs, put in order of outcome and stress; one case stands for each twentieth. 9 in 10 lie between ${signed(figures.stress.low)} and ${signed(figures.stress.high)} MPa.`,
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
      detail: `ε_m(t) = ε_long (t/30 years)^¼: ${figures.body.moistureExpansion.value.toFixed(4)} % (${figures.body.moistureExpansion.low.toFixed(4)} to ${figures.body.moistureExpansion.high.toFixed(4)}) after ${years(situation.serviceYears)}; Δσ = E_g ε_m/(1 − ν_g) = ${megapascal(moistureStress)}. Reheating above about 600 °C takes it back.`,
      text: `Clay that drinks water grows: in ${years(situation.serviceYears)} about ${figures.body.moistureExpansion.value.toFixed(3)}\u00a0%, which pulls the glaze by another ${megapascal(moistureStress)}.`,
      quantities: [figures.body.moistureExpansion],
      sources: ["wilson-2003", "schurecht-1928"],
    },
  ];
}

function quartzReason({ body }: Prepared, { setPointC }: Summary, figures: Figures): Reason[] {
  const quartz = (body.class.quartzFraction[0] + body.class.quartzFraction[1]) / 2;
  if (body.basis === "curve" || body.basis === "phases" || quartz < 0.03) return [];
  const beyond = body.expansion.rangeC[1] < 573;
  const before = setPointC.value < 573;
  const whose = body.basis === "class" ? "The class's" : "Your";
  const text = before
    ? `The glaze sets near ${celsius(setPointC.value)}, below the turn of quartz at 573 °C, so the clay's quartz step comes too early to squeeze it.`
    : beyond
      ? `Quartz turns at 573 °C and the clay steps in, which squeezes the glaze. ${whose} figure stops at ${body.expansion.rangeC[1]} °C and says nothing of it: I allowed ${Math.round(body.class.quartzFraction[0] * 100)} to ${Math.round(body.class.quartzFraction[1] * 100)} % quartz by volume.`
      : `Quartz turns at 573 °C and the clay steps in, which squeezes the glaze. ${whose} figure reaches past it.`;
  const detail = `ε_b(T) = A·m(T) + q·f·Q(T) + c·C(T): quartz q ${body.class.quartzFraction[0]}–${body.class.quartzFraction[1]} by volume, f ${body.class.quartzFactor}; Q(T) rises 1.41 % to 575 °C, about 0.5 % of it after 500 °C. A is scaled until the stated mean is met.`;
  return [{ code: "quartz-step", text, detail, quantities: [figures.setPoint], sources: ["holland-powell-2011"] }];
}

function pullReason(pulls: readonly OxidePull[], figures: Figures): Reason[] {
  const [first, second] = [...pulls].sort((a, b) => b.pullMPa - a.pullMPa);
  if (!first || first.pullMPa <= 0) return [];
  const also = second && second.pullMPa > 0 ? `, then ${second.oxide} (${signed(second.pullMPa)}\u00a0MPa)` : "";
  return [
    {
      code: "pulls",
      detail: `Contributions of the measured-glass model against silica in its place, times dσ/dα = E₁(Ts − 20)(1 + s((Ts + 20)/2 − 160)); they add up to the glaze's expansion. Local slope: one more per cent by weight, the rest scaled down.`,
      text: `Set against silica in its place, ${first.oxide} pulls hardest toward crazing (${signed(first.pullMPa)}\u00a0MPa)${also}. One per cent by weight less of ${first.oxide}, the rest scaled up, changes the stress by about ${signed(-first.perWeightPercentMPa)}\u00a0MPa.`,
      quantities: [figures.glaze.expansion],
      sources: ["sciglass-2019"],
    },
  ];
}
