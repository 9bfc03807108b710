import { describe, expect, it } from "vitest";
import { ATOMIC_WEIGHTS } from "../../api/engine/chemistry/atomic-weights.ts";
import { molarMass } from "../../api/engine/chemistry/index.ts";
import table from "../../data/atomic-weights.json" with { type: "json" };
import { close } from "../support/close.ts";

// Source of `standard`: T. Prohaska et al., Pure Appl. Chem. 94 (2022) 573–600, table of standard atomic weights.
// The abridged value must lie in the interval but for its own rounding, or within its own printed uncertainty of the full value.
describe("abridged atomic weights agree with the full standard weights", () => {
  it.each(Object.entries(table.values))("%s", (_symbol, { value, printed, uncertainty, standard }) => {
    expect(value).toBe(Number(printed));
    const interval = /^\[([\d.]+),([\d.]+)\]$/.exec(standard);
    if (interval) {
      const halfDigit = 0.5 * 10 ** -(printed.split(".")[1]?.length ?? 0);
      expect(value).toBeGreaterThanOrEqual(Number(interval[1]) - halfDigit);
      expect(value).toBeLessThanOrEqual(Number(interval[2]) + halfDigit);
    } else {
      close(value, Number(standard.replace(/\(.*/, "")), { abs: uncertainty });
    }
  });
});

// As printed in the abridged table of ciaaw-2021: the elements that carry a glaze.
const asPrinted = {
  ...{ H: 1.008, Li: 6.94, B: 10.81, C: 12.011, O: 15.999, F: 18.998, Na: 22.99, Mg: 24.305, Al: 26.982, Si: 28.085 },
  ...{ P: 30.974, S: 32.06, K: 39.098, Ca: 40.078, Ti: 47.867, Cr: 51.996, Mn: 54.938, Fe: 55.845, Co: 58.933 },
  ...{ Ni: 58.693, Cu: 63.546, Zn: 65.38, Sr: 87.62, Zr: 91.224, Sn: 118.71, Ba: 137.33, Pb: 207.2, Bi: 208.98 },
};
it.each(Object.entries(asPrinted))("%s is used as printed, %f g/mol", (symbol, weight) => {
  expect(ATOMIC_WEIGHTS.get(symbol)).toBe(weight);
});

// Formula masses as printed on mineral data sheets (webmineral; see mineral-analyses.test.ts for the sheets).
// The sheets use older weights, whence the tolerance of 0.02 g/mol.
const masses = [
  { formula: "KAlSi3O8", printed: 278.33 },
  { formula: "Mg3Si4O10(OH)2", printed: 379.27 },
  { formula: "CaSO4.2(H2O)", printed: 172.17 },
  { formula: "Na2B4O5(OH)4.8(H2O)", printed: 381.37 },
  { formula: "CaCO3", printed: 100.09 },
  { formula: "KLi2AlSi4O10F(OH)", printed: 388.3 },
  { formula: "Ca3Li2Be3(SiO4)3F2", printed: 475.4 },
  { formula: "K(Mg2.5Fe0.5)AlSi3O10(OH)1.75F0.25", printed: 433.53 },
  { formula: "Na0.95Ca0.05Al1.05Si2.95O8", printed: 263.02 },
  { formula: "Mg2SiO4", printed: 140.691 },
];
it.each(masses)("$formula weighs $printed g/mol as printed", ({ formula, printed }) => {
  close(molarMass(formula), printed, { abs: 0.02, why: "older atomic weights on the sheet" });
});
