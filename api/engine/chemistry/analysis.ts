/** What an analysed material leaves in the glaze. @module */
import type { Analysis } from "../recipe/types.ts";
import { Findings, pointerToken } from "./findings.ts";
import { fire } from "./firing.ts";
import { analysisAtoms, MAX_OXIDES, massOf, OXIDE_INDEX, OXIDE_MASS, traceAtoms, unknownOxide } from "./oxides.ts";
import type { Trace } from "./traces.ts";
import { buildYield, netLossG, nothingLeft, type Yield } from "./yield.ts";

/** Highest total of an analysis that rounding can explain [wt %]; above it something is counted twice. */
export const MAX_TOTAL_PERCENT = 105;

/** Spread of an analysis that states none: half-width at 90 % [wt %]. `common practice, no source`. */
const ANALYSIS_SPREAD = { ofFigure: 0.02, atLeast: 0.05 };

/** What an analysis of clay, feldspar or stone holds, as dried [g/g]. `common practice, no source`. */
const STONE = { silicaFrom: 0.35, aluminaFrom: 0.08, boronAndLeadUpTo: 0.01 };

/**
 * Yield of a material from its analysis.
 *
 * The figures are shares: a total that misses 100 is brought to it. Where no loss on ignition is stated, what is
 * missing from 100 is taken as loss. Iron given as FeO or as metal takes up oxygen to Fe2O3, MnO2 gives it off to
 * MnO, and H2O, CO2, SO3, F among the oxides count as loss. Half-widths are turned and brought to the total with their
 * figures; where several listed forms become one oxide (FeO beside Fe2O3) they err together and their half-widths add up.
 *
 * Oxides that are known and not counted (Nd2O3) are handed back apart; yield and spread are those of the rest.
 *
 * @param analysis - weight per cent as dried, with loss on ignition [wt %]
 * @param pointer - where the analysis stands in the input
 * @param plusMinus - half-widths at 90 % by oxide as listed [wt %]; 2 % of each and at least 0.05 where none is given
 * @returns the yield per gram of what is counted; the share of that [g/g]; what is not counted, by grams in one gram as
 * dried; the total as stated [wt %]; the loss taken where none was stated [wt %]
 * @throws ImpossibleValueError for negative figures or a total above 105; UnknownNameError for oxides not known, and
 * where nothing is counted
 * @example yieldOfAnalysis({ weightPercent: { CaO: 56 } }).yielded.lost // 0.44
 */
export function yieldOfAnalysis(
  analysis: Analysis,
  pointer = "",
  plusMinus?: Readonly<Record<string, number>>,
): { yielded: Yield; counted: number; traces: Trace[]; totalPercent: number; assumedLossPercent: number } {
  const findings = new Findings();
  const grams = new Map<number, number>();
  const spread = new Map<number, number>();
  const traces: Trace[] = [];
  const table = `${pointer}/weightPercent`;
  let listed = 0;
  let traced = 0;
  let lost = 0;
  const gases = new Map<string, number>();
  for (const [name, percent] of findings.entries(analysis.weightPercent, table, MAX_OXIDES)) {
    const at = `${table}/${pointerToken(name)}`;
    const atoms = analysisAtoms(name) ?? traceAtoms(name);
    if (!atoms) findings.unknown.push(unknownOxide(name, at));
    if (!findings.amount(percent, at, atoms ? name : "This figure") || !atoms || percent === 0) continue;
    listed += percent;
    if (traceAtoms(name)) {
      traced += percent;
      traces.push({ name, table, pointer: at, grams: percent });
      continue;
    }
    const fired = fire(atoms);
    if ("homeless" in fired) continue;
    const mass = massOf(atoms);
    const half = plusMinus?.[name] ?? Math.max(ANALYSIS_SPREAD.ofFigure * percent, ANALYSIS_SPREAD.atLeast);
    for (const [i, moles] of fired.oxides) {
      const gain = (moles * OXIDE_MASS[i]!) / mass;
      grams.set(i, (grams.get(i) ?? 0) + percent * gain);
      spread.set(i, (spread.get(i) ?? 0) + half * gain);
    }
    lost += (percent * netLossG(fired)) / mass;
    for (const gas in fired.gases) gases.set(gas, (gases.get(gas) ?? 0) + (percent * fired.gases[gas]!) / mass);
  }
  const stated = analysis.lossOnIgnitionPercent;
  const known = stated === undefined || findings.amount(stated, `${pointer}/lossOnIgnitionPercent`, "Loss on ignition");
  const statedLoss = known ? (stated ?? 0) : 0;
  const assumedLossPercent = stated === undefined ? Math.max(0, 100 - listed) : 0;
  const totalPercent = listed + statedLoss;
  if (totalPercent > MAX_TOTAL_PERCENT) {
    const message = `This analysis adds up to ${totalPercent.toFixed(1)} %, loss on ignition included. Rounding does not explain that: look for an oxide or a loss counted twice.`;
    findings.impossible.push({ pointer, message, allowed: [MAX_TOTAL_PERCENT] });
  }
  if (grams.size === 0) for (const { name, pointer: at } of traces) findings.unknown.push(unknownOxide(name, at));
  findings.throwIfAny();
  if (grams.size === 0) throw nothingLeft(pointer);
  const dried = totalPercent + assumedLossPercent;
  const whole = dried - traced;
  for (const trace of traces) trace.grams /= dried;
  for (const [i, gram] of grams) grams.set(i, gram / whole);
  for (const [i, half] of spread) spread.set(i, half / whole);
  for (const [gas, gram] of gases) gases.set(gas, gram / whole);
  const loss = (lost + statedLoss + assumedLossPercent) / whole;
  const yielded = buildYield(grams, spread, loss, gases);
  yielded.silicaDust ||= isStone(grams);
  return { yielded, counted: whole / dried, traces, totalPercent, assumedLossPercent };
}

/**
 * Whether an analysis is that of a clay, feldspar or stone, which hardly ever come without quartz. An analysis cannot
 * show it: a frit without boron and lead that holds this much alumina is taken for a stone.
 */
function isStone(grams: ReadonlyMap<number, number>): boolean {
  const share = (oxide: string) => grams.get(OXIDE_INDEX.get(oxide)!) ?? 0;
  const isFrit = share("B2O3") + share("PbO") > STONE.boronAndLeadUpTo;
  return share("SiO2") >= STONE.silicaFrom && share("Al2O3") >= STONE.aluminaFrom && !isFrit;
}
