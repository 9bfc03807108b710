/** What the glass is like beside its expansion, as an answer tells it. */
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { WIDEST } from "../../api/engine/fit/index.ts";
import { viscosityCurve } from "../../api/engine/glass/index.ts";
import { THAW } from "../../api/schemas/larch-lane.ts";
import { ask, oxides, type Report } from "./expansion-support.ts";

describe("properties", () => {
  it("each has its interval round its value, and its unit", async () => {
    const { properties } = await ask({});
    const { transition, youngs, density, viscosity, surfaceTension, liquidus } = properties!;
    const all = [
      [transition.value, "°C"],
      [youngs.value, "GPa"],
      [density.value!, "g/cm3"],
      [liquidus.indication, "°C"],
      ...viscosity.atTemperatures.map((one) => [one.logViscosity, "log10(Pa·s)"] as const),
      ...viscosity.atViscosities.map((one) => [one.temperature, "°C"] as const),
      ...surfaceTension.map((one) => [one.value!, "mN/m"] as const),
    ] as const;
    for (const [{ value, low, high, coverage, unit }, wanted] of all) {
      expect(low).toBeLessThan(value);
      expect(high).toBeGreaterThan(value);
      expect([coverage, unit]).toEqual([0.9, wanted]);
    }
    expect(liquidus.note).toContain("indication only");
  });

  it("both lists of the viscosity lie on one falling curve", async () => {
    const { viscosity } = (await ask({})).properties!;
    const points = [
      ...viscosity.atTemperatures.map((one) => [one.temperatureC, one.logViscosity.value] as const),
      ...viscosity.atViscosities.map((one) => [one.temperature.value, one.logViscosity] as const),
    ].sort((a, b) => a[0] - b[0]);
    for (let i = 1; i < points.length; i++) expect(points[i]![1]).toBeLessThan(points[i - 1]![1]);
    const curve = viscosityCurve(analyseGlaze(THAW).moleFractions);
    // Temperatures are rounded to 1 °C: half a degree of the slope, 0.02 at most in log10 where it is steepest.
    for (const [c, log] of points) expect(Math.abs(curve.logViscosity(c).value - log)).toBeLessThan(0.025);
    for (const { logViscosity } of viscosity.atTemperatures) {
      expect(logViscosity.value).toBeGreaterThanOrEqual(1.5);
      expect(logViscosity.value).toBeLessThanOrEqual(13);
    }
  });

  it("gives none for what was never measured, and says why", async () => {
    const { best, properties, warnings } = await ask({ glaze: oxides({ CoO: 100 }) });
    expect(best.expansion!.high - best.expansion!.low).toBeGreaterThan(WIDEST);
    expect(properties).toBeNull();
    expect(warnings.map((one) => one.code)).toContain("never-measured");
  });

  it("leaves an unknown oxide out aloud, with a wider interval", async () => {
    const plain = await ask({ glaze: oxides({ SiO2: 70, Al2O3: 8, Na2O: 10, CaO: 12 }) });
    const odd = await ask({ glaze: oxides({ SiO2: 66.5, Al2O3: 7.6, Na2O: 9.5, CaO: 11.4, V2O5: 5 }) });
    expect(odd.warnings.find((one) => one.code === "oxide-not-in-model")!.message).toContain("V2O5");
    const width = ({ best }: Report) => best.expansion!.high - best.expansion!.low;
    expect(width(odd)).toBeGreaterThan(1.4 * width(plain));
    expect(odd.properties).not.toBeNull();
  });
});
