/** Traces of oxides that are not counted: left out of a glaze up to a share, refused beyond it. @module */
import type { Notice } from "../errors.ts";
import type { Findings } from "./findings.ts";
import { OXIDES } from "./oxides.ts";

/** Most of a fired glaze that oxides not counted may make together [wt %]: `common practice, no source`. */
export const MOST_TRACES_PERCENT = 1;

/** An oxide that was read and is not counted. */
export interface Trace {
  name: string;
  /** The table that lists it, and its place in it. */
  table: string;
  pointer: string;
  /** Its weight, in the unit of the glass that it is held against. */
  grams: number;
}

/** What was left out of a glaze. */
export interface LeftOut {
  name: string;
  /** Share of the fired glaze with all that was left out [wt %]. */
  percent: number;
}

/**
 * Leaves traces out, or refuses them where all together are more than {@link MOST_TRACES_PERCENT} of the fired glaze.
 * They are taken to stay in the kiln, as they are written.
 * @param traces - oxides read that are not counted
 * @param countedGrams - weight of the oxides counted, fired
 * @param findings - receives a refusal of each, where they are too much
 * @param warnings - receives one remark for each table that lists some
 * @returns what was left out
 */
export function leaveOut(
  traces: readonly Trace[],
  countedGrams: number,
  findings: Findings,
  warnings: Notice[],
): LeftOut[] {
  const whole = traces.reduce((sum, { grams }) => sum + grams, countedGrams);
  const shares = traces.map((trace) => ({ ...trace, percent: (100 * trace.grams) / whole }));
  const together = shares.reduce((sum, { percent }) => sum + percent, 0);
  // A rounding above counts as the limit itself.
  if (together > MOST_TRACES_PERCENT * (1 + 1e-9)) {
    for (const { name, pointer } of shares) {
      const message = `“${name}” is not among the oxides counted here. Up to ${MOST_TRACES_PERCENT} % of the fired glaze such oxides are left out; here they make ${Number(together.toPrecision(3))} %, and of such a glaze I know too little.`;
      findings.unknown.push({ pointer, message, allowed: [...OXIDES] });
    }
    return [];
  }
  for (const table of new Set(shares.map((trace) => trace.table))) {
    const listed = shares.filter((trace) => trace.table === table);
    const named = listed.map(({ name, percent }) => `${name} (${said(percent)} of the fired glaze)`).join(", ");
    const message = `${named} ${listed.length > 1 ? "are" : "is"} left out: not among the oxides counted here. The rest is taken for the whole.`;
    warnings.push({ code: "trace-left-out", message, pointer: listed.length > 1 ? table : listed[0]!.pointer });
  }
  return shares.map(({ name, percent }) => ({ name, percent }));
}

const said = (percent: number) => (percent < 0.005 ? "less than 0.01 %" : `${percent.toFixed(2)} %`);
