/** Where crystals may come out of a melt: an indication. @module */
import file from "../../../data/models/liquidus.json" with { type: "json" };
import type { Notice } from "../errors.ts";
import type { Estimate } from "../quantity.ts";
import { measuredModel } from "./measured-model.ts";
import type { ModelFile } from "./model-file.ts";
import { MODEL_OXIDES, vectorOf } from "./oxides.ts";
import { rangeWarnings, widening } from "./range-warnings.ts";
import { QUANTITY_COUNT, quantitiesOf } from "./terms.ts";
import type { MoleFractions } from "./types.ts";

const LIQUIDUS = measuredModel(file as unknown as ModelFile);

/** A liquidus with what it may be used for. */
export interface LiquidusIndication {
  /** Liquidus temperature [°C]. */
  liquidusC: Estimate;
  note: string;
  warnings: Notice[];
  sources: string[];
}

/**
 * Temperature above which no crystal survives in the melt. A glaze cooled slowly through the 200 K below it may grow
 * crystals and turn matt, if it is runny enough there; fast or stiff ones stay clear.
 * @param moleFractions - fired glass, oxide → mole fraction, summing to 1 [-]
 * @returns liquidus [°C] with a spread of some 90 K to either side
 * @remarks An indication only: a smooth sum cannot follow the valleys between one crystal's field and the next.
 * Source: sciglass-2019, fitted by data/fitting/fit-models.ts.
 */
export function liquidusIndication(moleFractions: MoleFractions): LiquidusIndication {
  const x = new Float64Array(MODEL_OXIDES.length);
  const q = new Float64Array(QUANTITY_COUNT);
  const unknown = vectorOf(moleFractions, x);
  quantitiesOf(x, q);
  return {
    liquidusC: {
      value: LIQUIDUS.predict(q),
      scale: LIQUIDUS.scale(q) * widening(unknown),
      shape: LIQUIDUS.shape,
    },
    note: "An indication only: it says where crystals could grow, not that they will.",
    warnings: rangeWarnings(LIQUIDUS, x, unknown, moleFractions),
    sources: LIQUIDUS.file.sources,
  };
}
