/** Advice in a potter's words. @module */
import type { FitReport } from "../fit/types.ts";
import { chances } from "../fit/words.ts";
import type { NewLine, Standing } from "./types.ts";

/** @example chanceWords(0.86) // "about 17 in 20" */
export function chanceWords(chance: number): string {
  return chances(Math.round(chance * 20));
}

/** The same beside a target that it may fall just short of. @example soundWords(0.846, 0.85) // "about 17 in 20, just short of that" */
export function soundWords(chance: number, target: number): string {
  const words = chanceWords(chance);
  return chance < target && words === chanceWords(target) ? `${words}, just short of that` : words;
}

/** What a fit says of where a glaze stands. */
export function standingOf({ verdict, probabilities, glaze, stress: { cases: _, ...stress } }: FitReport): Standing {
  return { verdict, probabilities, expansion: glaze.expansion, stress };
}

/** The changed lines as one would say them. @example changesInWords(lines) // "silica 22 → 27.5 (+5.5)" */
export function changesInWords(lines: readonly NewLine[]): string {
  return lines
    .filter(({ change }) => change !== 0)
    .map(({ name, before, after, change }) => {
      const sign = change > 0 ? "+" : "−";
      return `${name} ${before} → ${after} (${sign}${Math.abs(change)})`;
    })
    .join(", ");
}

/** A recipe as one would write it on a card; the sum of the base where it is not 100. */
export function recipeInWords(lines: readonly NewLine[], additions: readonly NewLine[]): string {
  const row = ({ name, after }: NewLine) => `${name} ${after}`;
  const base = lines.filter(({ after }) => after > 0).map(row);
  const over = additions.map((line) => `+ ${row(line)}`);
  const sum = Math.round(lines.reduce((total, { after }) => total + after, 0) * 10) / 10;
  return [...base, ...over].join("; ") + (sum === 100 ? "" : ` (${sum} together)`);
}
