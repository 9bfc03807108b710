/**
 * Asks the engine a few hundred seeded questions and writes them with its unrounded answers, for `compare.py`.
 *
 *     node .config/run.mjs tests/independent/engine/ask.ts OUT.json [SEED]
 *
 * @module
 */
import { writeFileSync } from "node:fs";
import { mixtureStrain, PHASES, toVolume } from "../../../api/engine/body/index.ts";
import {
  batchFromSeger,
  fromSeger,
  materialAnalysis,
  molarMass,
  OXIDES,
  parseFormula,
} from "../../../api/engine/chemistry/index.ts";
import { EngineError } from "../../../api/engine/errors.ts";
import { drawsFor, INPUTS } from "../../../api/engine/fit/draws.ts";
import { latticePoints } from "../../../api/engine/numeric/lattice.ts";
import { normalQuantile } from "../../../api/engine/numeric/normal.ts";
import { listMaterials } from "../../../api/engine/recipe/materials.ts";
import { ofBody, ofFit, ofGlaze, PROBABILITIES, packed } from "./answers.ts";
import { Chance } from "./chance.ts";
import { FORMULAS, oxides, recipe } from "./glazes.ts";
import { body, fitQuestion } from "./questions.ts";
import { ofMechanics } from "./single.ts";

const [out, seed = "1"] = process.argv.slice(2);
if (!out) {
  console.error("Name the file to write: node .config/run.mjs tests/independent/engine/ask.ts OUT.json [SEED]");
  process.exit(2);
}
const chance = new Chance(Number(seed));
const count = (times: number) => Array.from({ length: times });

/** Asks; a question that the engine refuses is asked with its refusal, so that none is lost unseen. */
function answered<Q, A>(question: Q, ask: (question: Q) => A) {
  try {
    return { question, answer: ask(question) };
  } catch (error) {
    if (!(error instanceof EngineError)) throw error;
    return { question, refused: error.message };
  }
}

const asked = {
  seed: Number(seed),
  masses: Object.fromEntries([...OXIDES, ...FORMULAS].map((name) => [name, molarMass(name)])),
  atoms: Object.fromEntries(FORMULAS.map((text) => [text, parseFormula(text)])),
  materials: Object.fromEntries(listMaterials().map(({ id }) => [id, materialAnalysis(id)])),
  glazes: count(240).map((_, i) => answered(i % 2 ? recipe(chance) : oxides(chance), ofGlaze)),
  batches: count(30).map(() => {
    const moles = { K2O: 0.3, CaO: 0.7, Al2O3: chance.between(0.2, 0.7), SiO2: chance.between(2, 6) };
    const ingredients = [
      ...chance.some(listMaterials(), 3).map(({ id }) => ({ material: id })),
      { material: "silica" },
    ];
    ingredients.push({ material: "kaolin" }, { material: "potash-feldspar" }, { material: "whiting" });
    const { lines, missing } = batchFromSeger(moles, ingredients);
    return { moles, ingredients, parts: lines.map((row) => row.parts), missing, weightPercent: fromSeger(moles) };
  }),
  bodies: count(160).map(() => answered(body(chance), ofBody)),
  mixtures: [...PHASES.keys()].map((id) => ({
    masses: { [id]: 40, glass: 45, mullite: 15 },
    volume: toVolume({ [id]: 40, glass: 45, mullite: 15 }),
    strain: [117.5, 480, 573.5, 850].map((c) => ({ c, ...mixtureStrain({ [id]: 40, glass: 45, mullite: 15 }, c) })),
  })),
  mechanics: count(80).map(() => ofMechanics(chance)),
  draws: [1, 2, 7, 12345, 4294967295].map((value) => ({
    seed: value,
    lattice: latticePoints(INPUTS.length, value).map(packed),
    normal: INPUTS.map((input) => packed(drawsFor(value).normal[input])),
    interface: packed(drawsFor(value).interfaceToughness),
  })),
  quantiles: [1e-9, 1e-4, 0.02, 0.3, 0.5, 0.975, 1 - 1e-9].map((p) => ({ p, z: normalQuantile(p) })),
  probabilities: PROBABILITIES,
  fits: count(260).map(() => answered(fitQuestion(chance), ofFit)),
};
writeFileSync(out, JSON.stringify(asked));
