/** The built-in materials: one frozen table, looked up by id or by a name of the trade. @module */
import ashes from "../../../data/materials/ashes-and-glass.json" with { type: "json" };
import borates from "../../../data/materials/borates.json" with { type: "json" };
import cautionTable from "../../../data/materials/cautions.json" with { type: "json" };
import clays from "../../../data/materials/clays.json" with { type: "json" };
import feldspars from "../../../data/materials/feldspars.json" with { type: "json" };
import fluxes from "../../../data/materials/fluxes.json" with { type: "json" };
import frits from "../../../data/materials/frits.json" with { type: "json" };
import oxides from "../../../data/materials/oxides-and-colourants.json" with { type: "json" };
import silica from "../../../data/materials/silica-lime-magnesia.json" with { type: "json" };
import { closest, UnknownNameError } from "../errors.ts";
import type { Material } from "./types.ts";

/** One caution as kept in the data; `oxide` or `elements`, and `limitFiredPercent`, where the fired glaze calls for it. */
export interface CautionRule {
  code: string;
  about: string;
  message: string;
  oxide?: string;
  /** Elements whose oxides are not counted. */
  elements?: readonly string[];
  /** Given at this much of the oxide, or of all oxides of the elements, in the fired glaze or more [wt %]. */
  limitFiredPercent?: number;
}

/** Every caution, in the order in which answers list them. */
export const CAUTIONS: readonly CautionRule[] = Object.freeze(cautionTable.cautions as CautionRule[]);

const cautionByCode = new Map(CAUTIONS.map((caution) => [caution.code, caution]));

type Row = Omit<Material, "kind" | "cautions"> & { cautions: string[] };
const files = [feldspars, clays, silica, fluxes, borates, oxides, frits, ashes] as { kind: string; materials: Row[] }[];

const MATERIALS: readonly Material[] = Object.freeze(
  files.flatMap(({ kind, materials }) =>
    materials.map((row) => {
      const cautions = row.cautions.map((code) => ({ code, message: cautionByCode.get(code)!.message }));
      return deepFreeze({ ...row, kind, cautions });
    }),
  ),
);

const byName = new Map<string, Material>();
for (const material of MATERIALS) for (const alias of material.aliases) byName.set(key(alias), material);
for (const material of MATERIALS) byName.set(material.id, material);

/**
 * Every built-in material, grouped by kind.
 * @returns the frozen table
 */
export function listMaterials(): readonly Material[] {
  return MATERIALS;
}

/**
 * A material by its id or another name of the trade, or undefined.
 * @param name - e.g. `whiting` or `China clay`
 */
export function materialCalled(name: string): Material | undefined {
  // Exact ids first: bringing a name to its plain form costs more than the rest of a line.
  return byName.get(name) ?? (name.length > 100 ? undefined : byName.get(key(name)));
}

/**
 * A material by its id or another name of the trade. Capitals, blanks and hyphens do not matter.
 * @param name - e.g. `whiting` or `China clay`
 * @param pointer - where the name stands in the input, for the error
 * @returns the material
 * @throws UnknownNameError with the materials that share the word, or the nearest name
 * @example findMaterial("China clay").id // "kaolin"
 */
export function findMaterial(name: string, pointer = ""): Material {
  if (typeof name !== "string") {
    throw new UnknownNameError([{ pointer, message: "Name a material here, such as whiting." }]);
  }
  const material = materialCalled(name);
  if (material) return material;
  const shown = name.slice(0, 40);
  const wanted = key(name.slice(0, 64));
  const kin = MATERIALS.filter(({ id }) => wanted.length > 2 && `-${id}-`.includes(`-${wanted}-`)).map(({ id }) => id);
  if (kin.length > 0) {
    const message = `“${shown}” could be several materials here: ${kin.join(", ")}. Say which.`;
    throw new UnknownNameError([{ pointer, message, allowed: kin }]);
  }
  const suggestion = closest(wanted, byName.keys());
  if (suggestion) {
    const message = `“${shown}” is not a material known here. Did you mean ${suggestion}?`;
    throw new UnknownNameError([{ pointer, message, suggestion }]);
  }
  const message = `“${shown}” is not a material known here. Give its analysis or formula in its place.`;
  throw new UnknownNameError([{ pointer, message }]);
}

function key(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, "-");
}

function deepFreeze<T>(value: T): T {
  if (value && typeof value === "object") {
    for (const inner of Object.values(value)) deepFreeze(inner);
    Object.freeze(value);
  }
  return value;
}
