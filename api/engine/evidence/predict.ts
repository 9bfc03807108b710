/** What the fit says a tile would show, draw by draw, at every expansion of the grid. @module */

import { RANKED } from "../fit/draw-outcome.ts";
import { DRAWS, type Draws, NORMAL_SHAPE } from "../fit/draws.ts";
import { cantileverDeflection, ringClosingOf, spanSag, stripCurvature } from "../fit/ring-and-strip.ts";
import { type Simulation, type Situation, simulate } from "../fit/simulate.ts";
import { quenchDifferences } from "../fit/trials.ts";
import type { Seen } from "./types.ts";

/** A question put to a tile. The answer is yes or no, or a length [mm]. */
export type Question =
  | { ask: "crazed"; days: number }
  | { ask: "quench"; differenceK: number }
  | { ask: "shivered" }
  | { ask: "ring"; radiusM: number; sign: 1 | -1 }
  | { ask: "strip"; lengthM: number; held: "one-end" | "both-ends" };

/** A question with what was answered: 1 for yes, 0 for no, or millimetres with their standard deviation. */
export type Answered = { question: Question; answer: number; sd: number | null };

/** A tile made ready. */
export interface Ready {
  situation: Situation;
  draws: Draws;
}

/** Doubt of a reading in millimetres where none is told, half-width of a 90 % interval (common practice, no source). */
export const READING_MM = 0.1;

/** Turns what was seen into questions with answers. */
export function asked(seen: Seen): Answered[] {
  const plain = (question: Question, yes: boolean): Answered => ({ question, answer: yes ? 1 : 0, sd: null });
  const read = (question: Question, mm: number, plusMinusMm = READING_MM): Answered => ({
    question,
    answer: mm,
    sd: plusMinusMm / 1.6448536269514722,
  });
  switch (seen.kind) {
    case "crazed":
      return [
        plain({ ask: "crazed", days: seen.byDays ?? 0 }, true),
        ...(seen.soundAtDays === undefined ? [] : [plain({ ask: "crazed", days: seen.soundAtDays }, false)]),
      ];
    case "not-crazed":
      return [plain({ ask: "crazed", days: seen.afterDays }, false)];
    case "quench":
      return [plain({ ask: "quench", differenceK: seen.differenceK }, seen.cracked)];
    case "shivered":
      return [plain({ ask: "shivered" }, true)];
    case "not-shivered":
      return [plain({ ask: "shivered" }, false)];
    case "ring": {
      const sign = seen.face === "inside" ? -1 : 1;
      return [read({ ask: "ring", radiusM: seen.radiusMm / 1000, sign }, seen.closesMm, seen.plusMinusMm)];
    }
    case "strip": {
      const held = seen.held ?? "one-end";
      return [read({ ask: "strip", lengthM: seen.lengthMm / 1000, held }, seen.bowMm, seen.plusMinusMm)];
    }
  }
}

/** Rank from which a glaze is crazed at once, and from which it is crazed by the end of the time looked at. */
const AT_ONCE = RANKED.indexOf("crazesOnCooling");
const IN_TIME = RANKED.indexOf("crazesLater");
const SHIVERS = RANKED.indexOf("shivers");
const DAYS_A_YEAR = 365.25;
/** Cracks seen this soon are seen at opening [days]. */
const AT_OPENING = 0.04;

/**
 * Answers to several questions about one tile.
 * @param tile - situation and deviates; its own expansion is not looked at
 * @param questions - what is asked
 * @param alphas - expansions of the glass in bulk, 20–300 °C [1e-6/K]
 * @returns for each question, expansion by expansion, the answer of each draw
 */
export function predict(tile: Ready, questions: readonly Question[], alphas: Float64Array): Float32Array[] {
  const out = questions.map(() => new Float32Array(alphas.length * DRAWS));
  const times = [...new Set(questions.map(yearsOf))];
  for (const years of times) {
    alphas.forEach((alpha, g) => {
      const s: Situation = {
        ...tile.situation,
        expansion: { value: alpha, scale: 0, shape: NORMAL_SHAPE },
        recipeSd: 0,
        serviceYears: years ?? tile.situation.serviceYears,
      };
      const simulation = simulate(s, tile.draws);
      questions.forEach((question, q) => {
        if (yearsOf(question) !== years) return;
        answers(question, s, simulation, tile.draws, out[q]!.subarray(g * DRAWS, (g + 1) * DRAWS));
      });
    });
  }
  return out;
}

/** Time that a question makes the simulation run to; undefined where it does not matter. */
function yearsOf(question: Question): number | undefined {
  return question.ask === "crazed" && question.days > AT_OPENING ? question.days / DAYS_A_YEAR : undefined;
}

const differences = new Float64Array(DRAWS);

function answers(question: Question, s: Situation, simulation: Simulation, draws: Draws, out: Float32Array): void {
  const { outcome, mismatch, glazePa } = simulation;
  switch (question.ask) {
    case "crazed": {
      const from = question.days > AT_OPENING ? IN_TIME : AT_ONCE;
      for (let i = 0; i < DRAWS; i++) out[i] = outcome[i]! >= from ? 1 : 0;
      return;
    }
    case "shivered":
      for (let i = 0; i < DRAWS; i++) out[i] = outcome[i] === SHIVERS ? 1 : 0;
      return;
    case "quench":
      quenchDifferences(s, simulation, draws, differences);
      for (let i = 0; i < DRAWS; i++) out[i] = differences[i]! <= question.differenceK ? 1 : 0;
      return;
    default: {
      const { thickness, bodyStiffness } = draws.normal;
      const { value, sd, floor = 1 } = s.body.youngsGPa;
      for (let i = 0; i < DRAWS; i++) {
        // The same deviates as in the fit, so that stiff and thick mean the same here and there.
        const glazeM = s.thicknessM * Math.max(1 + s.thicknessSd * thickness[i]!, 0.2);
        const bodyPa = Math.max(value + sd * bodyStiffness[i]!, floor) * 1e9;
        out[i] = lengthMm(question, mismatch[i]!, glazeM, s.wallM, glazePa[i]!, bodyPa);
      }
    }
  }
}

function lengthMm(
  question: Extract<Question, { ask: "ring" | "strip" }>,
  mismatch: number,
  glazeM: number,
  wallM: number,
  glazePa: number,
  bodyPa: number,
): number {
  if (question.ask === "ring") {
    return question.sign * 1000 * ringClosingOf(mismatch, question.radiusM, wallM, glazeM, glazePa, bodyPa);
  }
  const curvature = stripCurvature(mismatch, glazeM, wallM, glazePa, bodyPa);
  const bend = question.held === "one-end" ? cantileverDeflection : spanSag;
  return 1000 * bend(curvature, question.lengthM);
}
