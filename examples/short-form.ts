/** A verdict short enough for a label, a message or a cell of a table. @module */
import type { FitReport } from "@ringtrue/sdk";

/** What is left of a report when there is little room. */
export interface ShortForm {
  /** The verdict as a potter says it. */
  verdict: string;
  /** Of 20 equally likely cases: crack as they cool, crack within the service time, hold, shiver [-]. */
  inTwenty: { crazesOnCooling: number; crazesLater: number; sound: number; shivers: number };
  /** The twenty in words, crazed sooner or later taken together. */
  chances: string;
  /** Stress in the cold glaze with its interval; above 0 it is pulled, below 0 squeezed. */
  stress: string;
}

/** The short form of a report. */
export function shortForm({ verdict, stress }: Pick<FitReport, "verdict" | "stress">): ShortForm {
  const count = (outcome: string) => stress.cases.filter((likely) => likely.outcome === outcome).length;
  const inTwenty = {
    crazesOnCooling: count("crazesOnCooling"),
    crazesLater: count("crazesLater"),
    sound: count("sound"),
    shivers: count("shivers"),
  };
  const craze = inTwenty.crazesOnCooling + inTwenty.crazesLater;
  const figure = (n: number) => `${n < 0 ? "−" : "+"}${Math.abs(n).toFixed(0)}`;
  return {
    // New verdicts may come; they too are words joined by hyphens.
    verdict: verdict.replaceAll("-", " "),
    inTwenty,
    chances: `in 20: ${craze} craze, ${inTwenty.sound} hold, ${inTwenty.shivers} shiver`,
    stress: `${figure(stress.value)} ${stress.unit} (${figure(stress.low)} to ${figure(stress.high)})`,
  };
}
