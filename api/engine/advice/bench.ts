/** A recipe on the bench: its lines, what may come in, and how any change of it turns out. @module */
import { analyseMaterial, type GlazeChemistry } from "../chemistry/index.ts";
import { EngineError } from "../errors.ts";
import { DRAWS, type Draws, drawsFor } from "../fit/draws.ts";
import { type Situation, simulate } from "../fit/simulate.ts";
import { type Prepared, prepare } from "../fit/situation.ts";
import type { FitRequest, Outcome } from "../fit/types.ts";
import { unroundedTension, viscosityCurve } from "../glass/index.ts";
import { materialCalled } from "../recipe/materials.ts";
import type { Recipe, RecipeLine } from "../recipe/types.ts";

/** One line that may be changed, or brought in. */
export interface BenchLine {
  line: RecipeLine;
  name: string;
  /** Id of a built-in material, or null. */
  id: string | null;
  /** Parts now, for each 100 parts of the recipe. */
  now: number;
  /** Moles of each oxide that it leaves in the glaze, in their ratios. */
  moles: Readonly<Record<string, number>>;
  /** Colours or opacifies: keeps its share. */
  colours: boolean;
}

/** How a recipe turns out by the full model. */
export interface State {
  prepared: Prepared;
  chemistry: GlazeChemistry;
  sound: number;
  probabilities: Record<Outcome, number>;
  /** Mean stress over all draws [Pa]. */
  stress: number;
  /** Standard deviation of the stress over all draws [Pa]. */
  spread: number;
  /** Expansion in the middle of its doubt [1e-6/K]. */
  expansion: number;
  /** log10 of the viscosity at the peak [Pa·s]. */
  logViscosity: number;
  /** Surface tension [mN/m], where a set covers the glaze. */
  tension: number | null;
}

/** Oxides that colour or opacify. */
const COLOURS = [
  "Fe2O3",
  "FeO",
  "CoO",
  "CuO",
  "MnO",
  "Cr2O3",
  "NiO",
  "V2O5",
  "TiO2",
  "SnO2",
  "ZrO2",
  "CeO2",
  "Pr2O3",
  "Sb2O3",
];
/** Share of the fired material from which it counts as a colourant or opacifier [wt %] (common practice, no source). */
const COLOURS_FROM = 20;

/** The question with everything that stays the same. */
export interface Bench {
  request: FitRequest;
  lines: BenchLine[];
  additions: readonly RecipeLine[];
  peakC: number;
  /** The recipe with new parts of each line. */
  glaze(x: readonly number[]): Recipe & { thicknessMm?: number };
  /** How it turns out; null where the engine cannot say. */
  at(x: readonly number[]): State | null;
  /** Chance of staying sound and mean stress if the glass expanded by so much more [1e-6/K]. */
  shifted(state: State, by: number): { sound: number; stress: number };
}

/**
 * Sets a recipe out.
 * @param request - the misfit; its glaze a recipe
 * @param incoming - ids of materials that may come in
 * @param seed - seed of the draws
 */
export function layOut(request: FitRequest, incoming: readonly string[], seed: number): Bench {
  const { recipe: given, additions = [], thicknessMm } = request.glaze as Recipe & { thicknessMm?: number };
  const recipe = eachOnce(given);
  const total = recipe.reduce((sum, { parts }) => sum + parts, 0);
  const scale = 100 / total;
  const present = new Set(recipe.flatMap((line) => ("material" in line ? [materialCalled(line.material)?.id] : [])));
  const lines = [
    ...recipe.map((line) => benchLine(line, line.parts * scale)),
    ...incoming.filter((id) => !present.has(id)).map((id) => benchLine({ material: id, parts: 0 }, 0)),
  ];
  const draws = drawsFor(seed);
  const peakC = request.firing?.peakC ?? middleOf(prepare(request).body.class.firingC);
  const glaze = (x: readonly number[]) => {
    const kept = lines.flatMap(({ line }, j) => (x[j]! > 1e-9 ? [{ ...line, parts: x[j]! }] : []));
    // Additions keep their share of the batch, so that the colour stays.
    const batch = x.reduce((sum, parts) => sum + parts, 0) / total;
    const coloured = additions.map((line) => ({ ...line, parts: line.parts * batch }));
    return { recipe: kept, ...(coloured.length > 0 ? { additions: coloured } : {}), thicknessMm };
  };
  return {
    request,
    lines,
    additions,
    peakC,
    glaze,
    at(x) {
      try {
        const prepared = prepare({ ...request, glaze: glaze(x) });
        const { situation, chemistry } = prepared;
        const simulation = simulate(situation, draws);
        const { counts } = simulation;
        const probabilities = Object.fromEntries(
          Object.entries(counts).map(([name, count]) => [name, count / DRAWS]),
        ) as Record<Outcome, number>;
        const { moleFractions, fired } = chemistry!;
        return {
          prepared,
          chemistry: chemistry!,
          sound: probabilities.sound,
          probabilities,
          ...momentsOf(simulation.stress),
          expansion: situation.expansion.value,
          logViscosity: viscosityCurve(moleFractions).logViscosity(peakC).value,
          tension: unroundedTension(moleFractions, fired.weightPercent),
        };
      } catch (error) {
        if (error instanceof EngineError) return null;
        throw error;
      }
    },
    shifted: ({ prepared: { situation } }, by) => shifted(situation, by, draws),
  };
}

/** Chance of staying sound and mean stress [Pa] if the glass expanded by so much more [1e-6/K]. */
export function shifted(situation: Situation, by: number, draws: Draws): { sound: number; stress: number } {
  const expansion = { ...situation.expansion, value: situation.expansion.value + by };
  const { counts, stress } = simulate({ ...situation, expansion }, draws);
  return { sound: counts.sound / DRAWS, stress: momentsOf(stress).stress };
}

/** A material that is written twice is weighed once, where it stands first; so a limit holds for all there is of it. */
function eachOnce(given: readonly RecipeLine[]): RecipeLine[] {
  const lines = new Map<string, RecipeLine>();
  given.forEach((line, i) => {
    const key = "material" in line ? (materialCalled(line.material)?.id ?? line.material) : `line ${i}`;
    lines.set(key, { ...line, ...lines.get(key), parts: (lines.get(key)?.parts ?? 0) + line.parts });
  });
  return [...lines.values()];
}

function benchLine(line: RecipeLine, now: number): BenchLine {
  const { moles, fired } = analyseMaterial(line);
  const colour = COLOURS.reduce((sum, oxide) => sum + (fired.weightPercent[oxide] ?? 0), 0);
  const material = "material" in line ? materialCalled(line.material) : undefined;
  return {
    line,
    name: nameOf(line),
    id: material?.id ?? null,
    now,
    moles,
    colours: colour >= COLOURS_FROM,
  };
}

/** What a line is called at the scales: short, as in the recipe. */
export function nameOf(line: RecipeLine): string {
  if ("material" in line) return (materialCalled(line.material)?.id ?? line.material).replaceAll("-", " ");
  return line.name ?? ("formula" in line ? line.formula : "own material");
}

const middleOf = ([low, high]: readonly [number, number]) => (low + high) / 2;

function momentsOf(values: Float64Array): Pick<State, "stress" | "spread"> {
  let sum = 0;
  for (const value of values) sum += value;
  const stress = sum / values.length;
  let squares = 0;
  for (const value of values) squares += (value - stress) ** 2;
  return { stress, spread: Math.sqrt(squares / values.length) };
}
