/** The answer in a sentence, as look and voice ask for it: chances in twenty, the larger risk first. @module */
import type { FitReport, Outcome } from "../../engine/fit/types.ts";
import { fill } from "../fill.ts";
import words from "../words.json" with { type: "json" };

export function countCases(report: FitReport): Record<Outcome, number> {
  const counts: Record<Outcome, number> = { crazesOnCooling: 0, crazesLater: 0, sound: 0, shivers: 0 };
  for (const { outcome } of report.stress.cases) counts[outcome]++;
  return counts;
}

/** How many of twenty do what the verdict says. */
export function telling(report: FitReport): number {
  const counts = countCases(report);
  if (report.verdict === "sound") return counts.sound;
  return report.verdict === "may-shiver" || report.verdict === "shivers"
    ? counts.shivers
    : counts.crazesOnCooling + counts.crazesLater;
}

/** The sentence; the part to underline stands between asterisks. */
export function sayVerdict(report: FitReport, glaze: string, clay: string): string {
  const { verdict } = words;
  const count = telling(report);
  const counts = countCases(report);
  const crazes = counts.crazesOnCooling + counts.crazesLater;
  const key =
    report.verdict === "crazes" && count >= 20
      ? "crazesSurely"
      : report.verdict === "shivers" && count >= 20
        ? "shiversSurely"
        : report.verdict === "sound" && count >= 19
          ? "soundWell"
          : report.verdict === "may-craze" && Math.abs(count - 10) <= 1
            ? "may-crazeToss"
            : report.verdict;
  const sentence = fill(verdict[key], { glaze: glaze.replaceAll("*", ""), clay, count: Math.min(count, 19) });
  if (report.verdict === "may-craze" && counts.shivers >= 2) {
    return fill(verdict.alsoShivers, { sentence, count: counts.shivers });
  }
  return report.verdict === "may-shiver" && crazes >= 2
    ? fill(verdict.alsoCrazes, { sentence, count: crazes })
    : sentence;
}

/** The clay as the sentence names it. */
export function sayClay(report: FitReport, bodies: readonly { id: string; name: string }[]): string {
  const name = bodies.find(({ id }) => id === report.body.class)?.name ?? report.body.class?.replaceAll("-", " ");
  return name ? fill(words.verdict.yourClay, { clay: name.replace(/ \(.*\)/, "") }) : words.verdict.thatClay;
}
