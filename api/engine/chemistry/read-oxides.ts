/** Reads a glaze given by its oxides into moles. @module */
import type { Notice } from "../errors.ts";
import type { OxideComposition } from "../recipe/types.ts";
import { MAX_TOTAL_PERCENT } from "./analysis.ts";
import { Findings, pointerToken } from "./findings.ts";
import { fire } from "./firing.ts";
import {
  analysisAtoms,
  MAX_OXIDES,
  massOf,
  OXIDE_INDEX,
  OXIDE_MASS,
  OXIDES,
  traceAtoms,
  unknownOxide,
} from "./oxides.ts";
import { type LeftOut, leaveOut, type Trace } from "./traces.ts";

const BASES = ["weightPercent", "molePercent", "moles"] as const;
/** Totals of per cents that pass without remark [%]: `common practice, no source`. */
const USUAL_TOTAL = { from: 95, to: 101.5 };

/**
 * Moles of a glaze given by its oxides, taken as the fired glass: FeO stays FeO here. Other spellings (MnO2, Co3O4,
 * metal iron) are turned to the oxide counted; water, carbon dioxide, sulfate and halogens are left out with a warning,
 * and so are oxides not counted (Nd2O3) that together make up to 1 wt % of the glass.
 *
 * @param composition - basis and amounts [wt %, mol % or mol]
 * @param warnings - receives remarks
 * @returns moles of each of `OXIDES` in one mole of glass [mol], and what was left out
 * @throws ImpossibleValueError or UnknownNameError with every fault found; of oxides not counted only where there is no
 * other, for their share is not known before
 */
export function readOxides(
  { oxides }: OxideComposition,
  warnings: Notice[],
): { moles: Float64Array; leftOut: LeftOut[] } {
  const findings = new Findings();
  const moles = new Float64Array(OXIDES.length);
  const basis = oxides?.basis;
  if (!BASES.includes(basis)) {
    const message = "Say whether the amounts are weight per cent, mole per cent or moles.";
    findings.impossible.push({ pointer: "/oxides/basis", message, allowed: [...BASES] });
  }
  const traces: Trace[] = [];
  const table = "/oxides/amounts";
  let total = 0;
  let kept = 0;
  for (const [name, amount] of findings.entries(oxides?.amounts, table, MAX_OXIDES)) {
    const pointer = `${table}/${pointerToken(name)}`;
    const atoms = analysisAtoms(name) ?? traceAtoms(name);
    if (!atoms) findings.unknown.push(unknownOxide(name, pointer));
    if (!findings.amount(amount, pointer, atoms ? name : "This amount") || !atoms || amount === 0) continue;
    total += amount;
    const mole = basis === "weightPercent" ? amount / massOf(atoms) : amount;
    const same = OXIDE_INDEX.get(name);
    if (traceAtoms(name)) traces.push({ name, table, pointer, grams: mole * massOf(atoms) });
    else if (same !== undefined) moles[same] = moles[same]! + mole;
    else turn(name, mole, moles, pointer, warnings);
  }
  for (const mole of moles) kept += mole;
  if (basis !== "moles" && total > MAX_TOTAL_PERCENT) {
    const message = `These amounts add up to ${total.toFixed(1)} %. Rounding does not explain that: look for an oxide counted twice, or say that they are moles.`;
    findings.impossible.push({ pointer: table, message, allowed: [MAX_TOTAL_PERCENT] });
  } else if (findings.impossible.length + findings.unknown.length === 0 && !(kept > 0) && traces.length === 0) {
    const message = "These amounts leave nothing in the fired glaze. Give at least one oxide with an amount above 0.";
    findings.impossible.push({ pointer: table, message });
  }
  findings.throwIfAny();
  const glass = moles.reduce((sum, mole, i) => sum + mole * OXIDE_MASS[i]!, 0);
  const leftOut = leaveOut(traces, glass, findings, warnings);
  findings.throwIfAny();
  if (basis !== "moles" && (total < USUAL_TOTAL.from || total > USUAL_TOTAL.to)) {
    const message = `These amounts add up to ${total.toFixed(1)} %; they have been brought to 100, but check the figures.`;
    warnings.push({ code: "analysis-total", message, pointer: table });
  }
  // To one mole together: amounts down to the smallest number a computer holds keep their proportions.
  return { moles: moles.map((mole) => mole / kept), leftOut };
}

function turn(name: string, mole: number, moles: Float64Array, pointer: string, warnings: Notice[]): void {
  const fired = fire(analysisAtoms(name)!);
  if ("homeless" in fired) return;
  for (const [i, perMole] of fired.oxides) moles[i] = moles[i]! + mole * perMole;
  const into = [...fired.oxides.keys()].map((i) => OXIDES[i]);
  const message =
    into.length > 0
      ? `${name} is counted as ${into.join(" and ")}.`
      : `${name} is left out: it leaves in the kiln and is not part of the fired glass.`;
  warnings.push({ code: into.length > 0 ? "oxide-converted" : "volatile-left-out", message, pointer });
}
