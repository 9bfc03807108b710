/** Seeded glazes: by recipe, by oxides, by expansion; ordinary and odd. @module */
import { listMaterials } from "../../../api/engine/recipe/materials.ts";
import type { OxideComposition, Recipe, RecipeLine, SingleGlaze } from "../../../api/engine/recipe/types.ts";
import type { Chance } from "./chance.ts";

/** Formulas that try every rule about dots, brackets and lower digits. */
export const FORMULAS = [
  ...[
    "SiO2",
    "CaMg(CO3)2",
    "Al2O3·2SiO2·2H2O",
    "Al2O3.2SiO2.2H2O",
    "Na2B4O5(OH)4.8(H2O)",
    "CaSO4.0.5H2O",
    "CaSO4·2H2O",
  ],
  ...[
    "Na0.33(Al1.67Mg0.33)Si4O10(OH)2",
    "K0.65Al2.0(Al0.65Si3.35O10)(OH)2",
    "PrO1.83",
    "Mg3[Si4O10](OH)2",
    "Ca10(PO4)6F2",
  ],
  ...[
    "0.3Na2O.0.7CaO.0.2Al2O3.2.6SiO2",
    "K₂O·Al₂O₃·6SiO₂",
    "KAl2(AlSi3)O10(OH)1.75F0.25",
    "Na2O•2B2O3 ∙ 10H2O",
    "Fe3O4",
  ],
  ...[
    "CaO.SiO2",
    "K0.8Al2.35Si3.4O10.5(OH)1.5",
    "Al1.05Si2O5(OH)4",
    "ZrSiO4",
    "3MgO.4SiO2.H2O",
    "Na3AlF6",
    "LiAl(PO4)F",
  ],
];

const FLUXES = ["Na2O", "K2O", "Li2O", "CaO", "MgO", "SrO", "BaO", "ZnO", "PbO"];
const REST = ["TiO2", "ZrO2", "P2O5", "Fe2O3", "FeO", "MnO", "SnO2", "CoO", "CuO", "NiO", "Cr2O3", "Bi2O3"];
const FOREIGN = ["V2O5", "CeO2", "Rb2O", "CdO", "Sb2O3", "La2O3"];
const USUAL = ["potash-feldspar", "silica", "whiting", "kaolin", "nepheline-syenite", "talc", "dolomite", "ball-clay"];
const FRITS = [
  "frit-soda-borosilicate",
  "frit-calcium-borosilicate",
  "frit-alkaline",
  "frit-lead-bisilicate",
  "zinc-oxide",
];

/** A glaze by its oxides that glass models can answer for. */
export function oxides(chance: Chance): OxideComposition {
  const amounts: Record<string, number> = {
    SiO2: chance.between(45, 80),
    Al2O3: chance.between(2, 18),
    ...(chance.happens(0.6) ? { B2O3: chance.between(0.5, 22) } : {}),
  };
  for (const flux of chance.some(FLUXES, chance.pick([2, 3, 4, 5]))) amounts[flux] = chance.between(0.5, 12);
  for (const oxide of chance.some(REST, chance.pick([0, 0, 1, 2]))) amounts[oxide] = chance.between(0.05, 5);
  if (chance.happens(0.1)) amounts[chance.pick(FOREIGN)] = chance.between(0.1, 3);
  if (chance.happens(0.1)) amounts[chance.pick(["MnO2", "Co3O4", "H2O", "SO3"])] = chance.between(0.1, 2);
  const basis = chance.pick(["weightPercent", "molePercent", "moles"] as const);
  const total = Object.values(amounts).reduce((sum, amount) => sum + amount, 0);
  const to = basis === "moles" ? total : chance.between(96, 101);
  for (const oxide in amounts) amounts[oxide] = Number(((amounts[oxide]! * to) / total).toFixed(4));
  return { oxides: { basis, amounts } };
}

function line(chance: Chance, parts: number): RecipeLine {
  if (chance.happens(0.15)) return { formula: chance.pick(FORMULAS), parts };
  if (chance.happens(0.2)) {
    const weightPercent = {
      SiO2: chance.between(40, 70),
      Al2O3: chance.between(5, 25),
      CaO: chance.between(0, 8),
      K2O: chance.between(0.5, 6),
      ...(chance.happens(0.4) ? { FeO: chance.between(0.1, 3), Fe2O3: chance.between(0.1, 3) } : {}),
      ...(chance.happens(0.2) ? { MnO2: chance.between(0.1, 1) } : {}),
    };
    const lossOnIgnitionPercent = chance.happens(0.5) ? chance.between(0, 4) : undefined;
    return {
      analysis: { weightPercent, ...(lossOnIgnitionPercent === undefined ? {} : { lossOnIgnitionPercent }) },
      parts,
    };
  }
  return { material: chance.happens(0.3) ? chance.pick(listMaterials()).id : chance.pick(USUAL), parts };
}

/** A glaze by its recipe. */
export function recipe(chance: Chance): Recipe {
  const base: RecipeLine[] = [
    { material: chance.pick(["potash-feldspar", "soda-feldspar", "nepheline-syenite"]), parts: chance.between(20, 60) },
    { material: "silica", parts: chance.between(10, 35) },
    { material: chance.pick(["whiting", "dolomite", "wollastonite"]), parts: chance.between(5, 22) },
    { material: "kaolin", parts: chance.between(3, 20) },
    ...(chance.happens(0.5) ? [{ material: chance.pick(FRITS), parts: chance.between(2, 30) }] : []),
    ...Array.from({ length: chance.pick([0, 1, 2]) }, () => line(chance, chance.between(0.5, 12))),
  ];
  const additions = chance.some(
    ["tin-oxide", "zircon", "rutile", "red-iron-oxide", "cobalt-carbonate"],
    chance.pick([0, 1, 2]),
  );
  return { recipe: base, additions: additions.map((material) => ({ material, parts: chance.between(0.5, 9) })) };
}

/** One coat of glaze. */
export function coat(chance: Chance): SingleGlaze {
  const thickness = chance.happens(0.8) ? { thicknessMm: chance.scale(0.05, 1.4) } : {};
  if (chance.happens(0.45)) return { ...recipe(chance), ...thickness };
  if (chance.happens(0.6)) return { ...oxides(chance), ...thickness };
  return {
    expansion: {
      value: chance.between(4, 10),
      ...(chance.happens(0.6)
        ? {
            rangeC: chance.pick([
              [20, 300],
              [20, 400],
              [25, 500],
              [100, 550],
            ]),
          }
        : {}),
      ...(chance.happens(0.6) ? { plusMinus: chance.between(0.1, 0.9) } : {}),
    },
    ...(chance.happens(0.5) ? { transitionC: chance.between(480, 720) } : {}),
    ...thickness,
  };
}
