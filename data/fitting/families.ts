/** Families of glasses by what they are fluxed with, for the report. @module */
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";

/** A family of glasses. */
export interface Family {
  name: string;
  holds(x: Float64Array): boolean;
}

const share = (x: Float64Array, oxide: (typeof MODEL_OXIDES)[number]) => 100 * x[MODEL_OXIDES.indexOf(oxide)]!;
const above = (name: string, oxide: (typeof MODEL_OXIDES)[number], molePercent: number): Family => ({
  name: `${name} (${oxide} ≥ ${molePercent})`,
  holds: (x) => share(x, oxide) >= molePercent,
});

/** Families, overlapping; limits in mol %. */
export const FAMILIES: readonly Family[] = [
  { name: "no boron, no lead", holds: (x) => share(x, "B2O3") < 0.5 && share(x, "PbO") < 0.5 },
  above("boron", "B2O3", 3),
  above("lead", "PbO", 3),
  above("lithia", "Li2O", 3),
  above("soda", "Na2O", 5),
  above("potash", "K2O", 5),
  above("lime", "CaO", 8),
  above("magnesia", "MgO", 5),
  above("strontia", "SrO", 2),
  above("baria", "BaO", 2),
  above("zinc", "ZnO", 2),
  above("titania", "TiO2", 1),
  above("zirconia", "ZrO2", 1),
  above("iron", "Fe2O3", 1),
];
