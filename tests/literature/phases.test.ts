/** Strain of quartz and cristobalite, and of mixtures, against published cells and worked composites. */
import { describe, expect, it } from "vitest";
import { mixture, mixtureStrain, PHASES, toVolume } from "../../api/engine/body/index.ts";
import { close } from "../support/close.ts";

const strainPercent = (id: string, c: number) => PHASES.get(id)!.strain(c) * 100;

describe("phases", () => {
  it("quartz 20–575 °C: 1.409 % from cells (Levien 1980; Kihara 1990)", () =>
    close(strainPercent("quartz", 575), 1.409, { abs: 0.02, why: "the curve is rounded to 0.01 % and tabulated" }));
  it("quartz steps by about 0.45 % through its inversion (usual ceramic figure, read)", () =>
    close(strainPercent("quartz", 575) - strainPercent("quartz", 500), 0.45, {
      abs: 0.07,
      why: "the thermodynamic model gives 0.504 from 500 to 575 °C",
    }));
  it("cristobalite 20–290 °C: 1.79 % from cells (Downs & Palmer 1994; Wyckoff 1925)", () =>
    close(strainPercent("cristobalite", 290), 1.79, { abs: 0.005 }));
  it("mullite 20–1000 °C: mean 5.0–5.6e-6/K (handbooks, from memory)", () => {
    const mean = (strainPercent("mullite", 1000) / 980) * 1e4;
    expect(mean).toBeGreaterThan(5.0);
    expect(mean).toBeLessThan(5.7);
  });
});

describe("mixtures", () => {
  it("Kerner equals Levin with Hashin–Shtrikman stiffness: 12.389546 (derived)", () =>
    close(
      mixture(
        [
          { fraction: 0.3, value: 25, bulk: 90 },
          { fraction: 0.7, value: 5, bulk: 40.5 },
        ],
        29,
      ).kerner,
      12.389546,
      { abs: 5e-7 },
    ));

  // Worked example of the composite formulas (arithmetic): quartz .20 (25.2), mullite .15 (5.37), glass .65 (5.5).
  const porcelain = [
    { fraction: 0.2, value: 25.2, bulk: PHASES.get("quartz")!.bulkPa },
    { fraction: 0.15, value: 5.37, bulk: PHASES.get("mullite")!.bulkPa },
    { fraction: 0.65, value: 5.5, bulk: PHASES.get("glass")!.bulkPa },
  ];
  it.each([
    ["linear", 9.426],
    ["turner", 8.016],
    ["kerner", 9.033],
  ] as const)("quartz, mullite and glass by %s: %d", (rule, expected) =>
    close(mixture(porcelain, PHASES.get("glass")!.shearPa)[rule], expected, {
      abs: 0.02,
      why: "bulk moduli come from E and ν here, from printed K there",
    }),
  );

  // 30 anorthite, 40 tricalcium phosphate, 30 glass by weight, with 5.5, 12.5 and 5.5e-6/K (derived).
  it.each([
    ["linear", 8.01, 0.006],
    ["turner", 8.45, 0.12],
    ["kerner", 8.21, 0.05],
  ] as const)("bone china by %s: %de-6/K", (rule, expected, abs) => {
    const volumes = toVolume({ anorthite: 30, "tricalcium-phosphate": 40, glass: 30 });
    const expansions: Record<string, number> = { anorthite: 5.5, "tricalcium-phosphate": 12.5, glass: 5.5 };
    const parts = Object.entries(volumes).map(([id, fraction]) => ({
      fraction,
      value: expansions[id]!,
      bulk: PHASES.get(id)!.bulkPa,
    }));
    const why = "the print does not say which moduli it used; the linear rule needs none";
    close(mixture(parts, PHASES.get("glass")!.shearPa)[rule], expected, { abs, why });
  });
  it("bone china from the curves of its phases lies in its class, 7.8–8.8e-6/K over 20–500 °C (from memory)", () => {
    const volumes = toVolume({ anorthite: 30, "tricalcium-phosphate": 40, glass: 30 });
    const mean = (mixtureStrain(volumes, 500).kerner / 480) * 1e6;
    expect(mean).toBeGreaterThan(7.8);
    expect(mean).toBeLessThan(8.8);
  });
});
