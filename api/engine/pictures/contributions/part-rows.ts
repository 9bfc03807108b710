/** Which materials get a row, and what the rows amount to. @module */
import type { FitReport, PartPull } from "../../fit/types.ts";
import { signed } from "../../fit/words.ts";

/** Most bars [-]. */
const MOST = 10;
/** Most names in one line of words [-]. */
const NAMED = 6;
/** Below this a part does next to nothing [MPa]: ten parts would not move the stress by what it is rounded to. */
export const LEAST_MPA = 0.1;

/** One material: its name as it is said, and what one more part of it does to the stress [MPa]. */
export interface PartRow {
  name: string;
  mpa: number;
}

/** Bars from the hardest pull to the hardest push, those next to nothing, and those that found no room. */
export interface PartRows {
  bars: PartRow[];
  faint: PartRow[];
  cut: PartRow[];
}

/** A material's name as it is said: built-in ids without their hyphens. */
function nameOf({ label, material }: PartPull): string {
  return material === null ? label : label.replaceAll("-", " ");
}

/** Rows of a report; none where it holds no parts. A material weighed out twice gets one. */
export function partRowsOf({ parts = [] }: Pick<FitReport, "parts">): PartRows {
  const seen = new Set<string>();
  const rows: PartRow[] = [];
  for (const part of parts) {
    const key = `${part.material ?? part.label} ${part.perPartMPa}`;
    if (seen.has(key)) continue;
    seen.add(key);
    rows.push({ name: nameOf(part), mpa: part.perPartMPa });
  }
  const telling = rows
    .filter(({ mpa }) => Math.abs(mpa) >= LEAST_MPA)
    .sort((a, b) => Math.abs(b.mpa) - Math.abs(a.mpa));
  return {
    bars: telling.slice(0, MOST).sort((a, b) => b.mpa - a.mpa),
    faint: rows.filter(({ mpa }) => Math.abs(mpa) < LEAST_MPA),
    cut: telling.slice(MOST),
  };
}

/** What has no bar, in words. @returns one sentence for those next to nothing, one for those that found no room */
export function restInWords({ faint, cut }: PartRows): string[] {
  const out: string[] = [];
  if (faint.length > 0) {
    const more = faint.length > NAMED ? ` and ${faint.length - NAMED} more` : "";
    const names = faint.slice(0, NAMED).map(({ name }) => name);
    out.push(`Next to nothing: ${names.join(", ")}${more}.`);
  }
  if (cut.length > 0) {
    const most = Math.abs(cut[0]!.mpa).toFixed(1);
    out.push(`${cut.length} more change it by ${most}\u00a0MPa a part or less.`);
  }
  return out;
}

/**
 * The part that helps most: where the glaze lifts, the one that adds most pull; else the one that takes most off.
 * @returns a sentence, or nothing where no part helps
 */
export function bestPart({ verdict, parts }: Pick<FitReport, "verdict" | "parts">): string | undefined {
  const { bars } = partRowsOf({ parts });
  const lifts = verdict === "shivers" || verdict === "may-shiver";
  const best = lifts ? bars[0] : bars.at(-1);
  if (!best || (lifts ? best.mpa <= 0 : best.mpa >= 0)) return undefined;
  const by = `${Math.abs(best.mpa).toFixed(1)}\u00a0MPa`;
  return `One more part of ${best.name} ${lifts ? "adds" : "takes off"} ${by}.`;
}

/** Every material with its figure, for the description. */
export function partsInWords(rows: PartRows): string {
  const each = rows.bars.map(({ name, mpa }) => `${name} ${signed(mpa, 1)} MPa`);
  const told = each.length > 0 ? [`${each.join("; ")}.`] : [];
  return ["One more part of each material, the others staying:", ...told, ...restInWords(rows)].join(" ");
}
