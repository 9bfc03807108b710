/** Surface tension by published sets, against sums worked by hand. */
import { describe, expect, it } from "vitest";
import { surfaceTension } from "../../api/engine/glass/index.ts";
import { close } from "../support/close.ts";

const MOLES = { SiO2: 0.7, Na2O: 0.15, CaO: 0.15 };
const WEIGHT = { SiO2: 70.4, Na2O: 15.6, CaO: 14 };
const by = (id: string, ...glass: Parameters<typeof surfaceTension>) =>
  surfaceTension(...glass).find((answer) => answer.model === id)!;

describe("sums worked by hand, derived (arithmetic) from each set's table", () => {
  it("Kucuk: 271.2 + 15 × 3.34, soda and silica counting 0", () => {
    close(by("kucuk-1999", MOLES, WEIGHT).value?.value, 271.2 + 15 * 3.34, { abs: 0.5 });
  });
  it("Dietzel: 70.4 × 3.4 + 15.6 × 1.5 + 14 × 4.8 at 900 °C, 4 less for each 100 K", () => {
    const at900 = 70.4 * 3.4 + 15.6 * 1.5 + 14 * 4.8;
    close(by("dietzel-1942", MOLES, WEIGHT).value?.value, at900, { abs: 0.5 });
    close(by("dietzel-1942", MOLES, WEIGHT, 1200).value?.value, at900 - 12, { abs: 0.5 });
  });
  it("Appen: 0.7 × 290 + 0.15 × 295 + 0.15 × 510", () => {
    close(by("appen-1949", MOLES, WEIGHT).value?.value, 0.7 * 290 + 0.15 * 295 + 0.15 * 510, { abs: 0.5 });
  });
});

it("the three agree within a fifth on a soda-lime glass", () => {
  const values = surfaceTension(MOLES, WEIGHT, 1300).map((answer) => answer.value!.value);
  expect(Math.max(...values) / Math.min(...values)).toBeLessThan(1.2);
});

it("lead and boron lower it: enamel frits with lead had 200, others 250 mN/m (Harrison and Moore 1938, read)", () => {
  const base = by("kucuk-1999", MOLES, WEIGHT).value!.value;
  const lead = by("kucuk-1999", { SiO2: 0.6, PbO: 0.25, Na2O: 0.15 }, WEIGHT).value!.value;
  expect(lead).toBeLessThan(base);
});

it("names what a set lacks, and gives no figure when that is too much", () => {
  const answer = by("appen-1949", { SiO2: 0.6, K2O: 0.2, B2O3: 0.2 }, { SiO2: 52, K2O: 27, B2O3: 21 });
  expect(answer.missingOxides).toEqual(["K2O", "B2O3"]);
  expect(answer.value).toBeNull();
});
