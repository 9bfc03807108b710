/** The named doubts about how much a glaze expands on ware, one by one and together. @module */
import { Z90 } from "../body/index.ts";
import type { GlazeChemistry } from "../chemistry/index.ts";
import { expansionContributions, expansionDoubt, glassProperties, type OxideContribution } from "../glass/index.ts";
import { type Quantity, quantileOf, quantity, UNITS } from "../quantity.ts";
import { findMaterial } from "../recipe/materials.ts";
import { ON_WARE } from "./constants.ts";
import { onWareDrop } from "./draw-coat.ts";
import type { Doubts } from "./types.ts";

/** Opacifiers above this stay (partly) as crystals [mol %]; and the doubt each further mole per cent adds [1e-6/K]. */
const CRYSTALS = { from: 1.5, sdPerPercent: 0.12, most: 0.6 };

/** One named doubt. `model` is always counted. */
export interface NamedDoubt {
  term: "model" | keyof Doubts;
  counted: boolean;
  /** What it does to the expansion by itself: shift, and the interval about it, mean 20–300 °C. */
  effect: Quantity;
  text: string;
  sources: readonly string[];
}

/**
 * Standard deviation that crystals add to the expansion [1e-6/K] (common practice, no source).
 *
 *     min(0.12 · max(ZrO2 + SnO2 + TiO2/2 − 1.5, 0), 0.6), oxides in mol %
 */
export function crystalSd(molePercent: Readonly<Record<string, number>>): number {
  const opacifier = (molePercent.ZrO2 ?? 0) + (molePercent.SnO2 ?? 0) + (molePercent.TiO2 ?? 0) / 2;
  return Math.min(Math.max(opacifier - CRYSTALS.from, 0) * CRYSTALS.sdPerPercent, CRYSTALS.most);
}

/** Standard deviation that the spread of the materials' analyses adds to the expansion [1e-6/K]. */
export function materialsSd(chemistry: GlazeChemistry, oxides: readonly OxideContribution[]): number {
  let variance = 0;
  for (const { oxide, perWeightPercent } of oxides) {
    variance += (perWeightPercent * (chemistry.weightPercentSd[oxide] ?? 0)) ** 2;
  }
  return Math.sqrt(variance);
}

/**
 * What the doubt about a glaze's expansion is made of, and the expansion on ware with the doubts that are counted.
 *
 * Symmetric doubts are half-widths of 90 % intervals. On ware the shift is one-sided: between nothing and the most on
 * record for this thickness, all equally likely, so its middle moves the figure and its 5th and 95th percentiles widen it.
 *
 *     low  = value + Σ middles − √Σ (middle − low)²,   high the same upwards
 *
 * @param chemistry - analysed glaze
 * @param thicknessMm - thickness of the fired glaze [mm]
 * @param counted - doubts to leave out are false; all count if left out
 * @returns every doubt by name, and the mean expansion 20–300 °C on ware [1e-6/K]
 * @remarks A glaze by its oxides has no materials, so their spread adds nothing.
 * Sources: sciglass-2019; inada-1978-4 and merritt-peters-1926 for ware; crystals are common practice, no source.
 * @example glazeDoubts(analyseGlaze(glaze), 0.3).terms.find((t) => t.term === "onWare").effect.value // -0.31
 */
export function glazeDoubts(
  chemistry: GlazeChemistry,
  thicknessMm: number,
  counted: Doubts = {},
): { terms: NamedDoubt[]; together: Quantity } {
  const { expansion } = glassProperties(chemistry.moleFractions);
  const below = expansion.value - quantileOf(expansion, 0.05);
  const above = quantileOf(expansion, 0.95) - expansion.value;
  const bulk = expansionDoubt(chemistry.moleFractions).map(({ term, halfWidth, text, source }): Doubt => {
    const share = (2 * halfWidth) / (below + above);
    const name = term === "model" ? "model" : "betweenPapers";
    return { term: name, middle: 0, below: share * below, above: share * above, text, sources: [source] };
  });
  const materials = Z90 * materialsSd(chemistry, expansionContributions(chemistry.moleFractions).oxides);
  const crystals = Z90 * crystalSd(chemistry.fired.molePercent);
  const doubts: Doubt[] = [
    ...bulk,
    even("materials", materials, materialsText(chemistry, materials), materialSources(chemistry)),
    onWare(thicknessMm),
    even("crystals", crystals, crystalsText(crystals), []),
  ];
  const counts = ({ term }: Doubt) => term === "model" || counted[term] !== false;
  const kept = doubts.filter(counts);
  const middle = kept.reduce((sum, doubt) => sum + doubt.middle, expansion.value);
  const together = [Math.hypot(...kept.map((d) => d.below)), Math.hypot(...kept.map((d) => d.above))] as const;
  return {
    terms: doubts.map((doubt) => ({
      term: doubt.term,
      counted: counts(doubt),
      effect: figure(doubt.middle, doubt.below, doubt.above),
      text: doubt.text,
      sources: doubt.sources,
    })),
    together: figure(middle, ...together),
  };
}

/** A doubt in 1e-6/K: where it moves the figure, and how far the interval reaches to either side. */
interface Doubt extends Pick<NamedDoubt, "term" | "text" | "sources"> {
  middle: number;
  below: number;
  above: number;
}

function even(term: Doubt["term"], half: number, text: string, sources: readonly string[]): Doubt {
  return { term, middle: 0, below: half, above: half, text, sources };
}

function onWare(thicknessMm: number): Doubt {
  const drop = (evenly: number) => onWareDrop(thicknessMm / 1000, evenly);
  const middle = -drop(0.5);
  const half = drop(0.5) - drop(0.05);
  const text = `Fired on a pot the glaze takes up clay and shrinks less than the glass in bulk: at ${thicknessMm} mm between nothing and ${drop(1).toFixed(2)}e-6/K less. The thinner, the more.`;
  return { term: "onWare", middle, below: half, above: half, text, sources: ON_WARE.sources };
}

function materialsText(chemistry: GlazeChemistry, half: number): string {
  if (chemistry.lines.length === 0) return "The oxides are given, so no material can differ from its analysis.";
  // Every material has a spread; it vanishes where one oxide makes up the whole, however impure the bags.
  if (half === 0) return "There is one oxide only, so bags that differ still give the same glass.";
  return `Materials differ from bag to bag: ±${half.toFixed(2)}e-6/K for this recipe.`;
}

function materialSources({ lines }: GlazeChemistry): string[] {
  const built = lines.flatMap(({ material }) => (material === null ? [] : findMaterial(material).sources));
  return [...new Set(built)];
}

function crystalsText(half: number): string {
  if (half === 0) return "Too little opacifier for crystals to count.";
  return `Opacifier stays as crystals, which are not glass: ±${half.toFixed(2)}e-6/K allowed for them.`;
}

function figure(value: number, below: number, above: number): Quantity {
  return quantity(value, value - below, value + above, UNITS.expansion, { rangeC: [20, 300] });
}
