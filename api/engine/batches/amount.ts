/** How much dry glaze an amount comes to. @module */
import { type Faults, readVolume, readWeight } from "../lengths/index.ts";
import { quantity, round } from "../quantity.ts";
import { FIRED_DENSITY, type Figure } from "./practice.ts";
import { drySolids } from "./slurry.ts";
import type { Amount, BatchReport, Dips } from "./types.ts";

const MAX_PIECES = 100_000;
/** Least that can be weighed out with any sense [g]. */
const LEAST_G = 1;

/** Dry glaze wanted: of the recipe alone, or with its additions [g]. */
export interface Wanted {
  grams: number;
  withAdditions: boolean;
  dips: BatchReport["dips"];
}

/**
 * @param amount - dry weight, volume or dips
 * @param gravity - of the mixed glaze [-]
 * @param density - of the solids [g/cm3]
 * @param loss - share of the dry batch that leaves in the kiln [-]
 */
export function wantedDry(amount: Amount, gravity: number, density: Figure, loss: number, faults: Faults): Wanted {
  const wanted = readAmount(amount, gravity, density, loss, faults);
  if (wanted.grams < LEAST_G) {
    const message = `That comes to ${round(wanted.grams, 3)} g of dry glaze, too little to weigh out. Ask for at least ${LEAST_G} g.`;
    faults.add("/amount", message, { allowed: [`${LEAST_G} g or more`] });
  }
  return wanted;
}

function readAmount(amount: Amount, gravity: number, density: Figure, loss: number, faults: Faults): Wanted {
  if ("dry" in amount) {
    return { grams: readWeight(amount.dry, "/amount/dry", "The dry weight", faults), withAdditions: false, dips: null };
  }
  if ("volume" in amount) {
    const ml = readVolume(amount.volume, "/amount/volume", "The volume", faults);
    return { grams: drySolids(ml * gravity, ml, density.value), withAdditions: true, dips: null };
  }
  return forDips(amount.dips, gravity, density, loss, faults);
}

/**
 * Dry glaze for dips: pieces × area × fired thickness × ρ_fired/(1 − loss), and what must stay in the bucket.
 */
function forDips(dips: Dips, gravity: number, density: Figure, loss: number, faults: Faults): Wanted {
  const at = "/amount/dips";
  const { pieces, areaCm2, thicknessMm } = dips;
  faults.number(pieces, `${at}/pieces`, "The number of pieces", { from: 1, to: MAX_PIECES, unit: "pieces" });
  faults.number(areaCm2, `${at}/areaCm2`, "The glazed surface", { from: 0.1, to: 1e6, unit: "cm2" });
  faults.number(thicknessMm, `${at}/thicknessMm`, "The fired glaze", { from: 0.01, to: 10, unit: "mm" });
  const keep =
    dips.keepInBucket === undefined
      ? 0
      : readVolume(dips.keepInBucket, `${at}/keepInBucket`, "What stays in the bucket", faults);
  const on = (fired: number) => (pieces * areaCm2 * (thicknessMm / 10) * fired) / (1 - loss);
  const dry = on(FIRED_DENSITY.value);
  const dryOnWare = quantity(dry, on(FIRED_DENSITY.low), on(FIRED_DENSITY.high), "g", { decimals: 0 });
  const message =
    `${pieces} ${pieces === 1 ? "piece" : "pieces"} of ${areaCm2} cm2 with ${thicknessMm} mm of fired glaze carry about ${round(dry, 0)} g of dry glaze` +
    (keep > 0
      ? `; ${round(keep / 1000, 2)} l stays in the bucket to dip in.`
      : ". The bucket is empty then: say what must stay in it to dip in.");
  return {
    grams: dry + drySolids(keep * gravity, keep, density.value),
    withAdditions: true,
    dips: { dryOnWare, message },
  };
}
