/** How the published expansion sets do on the measured glasses. @module */
import { OXIDE_INDEX, OXIDE_MASS } from "../../api/engine/chemistry/oxides.ts";
import { askSet, PUBLISHED_SETS, type PublishedSet } from "../../api/engine/glass/expansion/index.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import type { AccuracyFigures } from "../../api/engine/glass/types.ts";
import { accuracyOf } from "./accuracy.ts";
import { DOMAINS, inDomain } from "./domains.ts";
import type { GlassRow } from "./read-glasses.ts";

/** Set id → domain → figures, over every row that the set can answer for. */
export type SetScores = Record<string, Record<string, AccuracyFigures>>;

const MASS = MODEL_OXIDES.map((oxide) => OXIDE_MASS[OXIDE_INDEX.get(oxide)!]!);

/** A row in mole per cent or weight per cent. */
export function percentOf(x: Float64Array, basis: "mole" | "weight"): Record<string, number> {
  const share = (i: number) => x[i]! * (basis === "weight" ? MASS[i]! : 1);
  let total = 0;
  for (let i = 0; i < x.length; i++) total += share(i);
  const percent: Record<string, number> = {};
  for (let i = 0; i < x.length; i++) if (x[i]! > 0) percent[MODEL_OXIDES[i]!] = (100 * share(i)) / total;
  return percent;
}

/**
 * Scores every set on all measured glasses of each domain. No set was fitted here, so no rows are held out; a row
 * of which a set lacks more than a tenth is not counted for that set.
 */
export function scoreSets(glasses: readonly GlassRow[]): SetScores {
  const rows = glasses.filter((g) => g.measured.cte !== undefined);
  return Object.fromEntries(
    PUBLISHED_SETS.map((set) => [
      set.id,
      Object.fromEntries(
        DOMAINS.map((domain) => {
          const errors = rows.flatMap((row) => (inDomain(domain, row.x) ? (setError(set, row) ?? []) : []));
          return [domain, accuracyOf(errors)];
        }),
      ),
    ]),
  );
}

/** A set's expansion minus the measured one [1e-6/K]; null where the set lacks too much of the glass. */
export function setError(set: PublishedSet, row: GlassRow): number | null {
  const { value } = askSet(set, percentOf(row.x, set.basis));
  return value === null ? null : value - row.measured.cte!;
}
