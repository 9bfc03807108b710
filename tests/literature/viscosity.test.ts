/** The viscosity curves against standard glasses with certified or published temperatures. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseGlaze } from "../../api/engine/chemistry/index.ts";
import { VISCOSITY, viscosityCurve } from "../../api/engine/glass/index.ts";
import { myegaAt, myegaTemperature } from "../../api/engine/glass/myega.ts";
import { MODEL_OXIDES } from "../../api/engine/glass/oxides.ts";
import { trainingRange } from "../../api/engine/glass/range-warnings.ts";
import { scaleFunction } from "../../api/engine/glass/spread.ts";
import { quantileOf } from "../../api/engine/quantity.ts";
import { close } from "../support/close.ts";

const FLUEGEL = "fluegel-2007, read second-hand: measured";
const LAKATOS = "lakatos-1976, read second-hand";

interface Standard {
  glass: string;
  basis: "molePercent" | "weightPercent";
  amounts: Record<string, number>;
  /** log10 of the viscosity [Pa·s] → temperature [°C]. */
  published: [log: number, celsius: number][];
  source: string;
  /** Asked for: the scatter between laboratories, or more with a reason [K]. */
  tolerance: { abs: number; why: string };
}

const standards: readonly Standard[] = [
  {
    glass: "NIST 710A",
    basis: "molePercent",
    amounts: { SiO2: 71.43, Al2O3: 1.31, Na2O: 8.25, K2O: 6.27, CaO: 9.62, TiO2: 0.32, ZnO: 2.81 },
    published: [
      [1.5, 1319],
      [6.6, 731],
      [12, 545],
    ],
    source: FLUEGEL,
    tolerance: { abs: 17, why: "the larger standard error that the best published regression claims, 9–17 K" },
  },
  {
    glass: "NIST 717A",
    basis: "molePercent",
    amounts: { SiO2: 72.25, Al2O3: 2.19, Na2O: 1.03, K2O: 5.42, B2O3: 16.97, Li2O: 2.14 },
    published: [
      [1.5, 1388],
      [6.6, 719],
      [12, 514],
    ],
    source: FLUEGEL,
    tolerance: { abs: 25, why: "a low-alkali borosilicate, few like it among the measured glasses" },
  },
  {
    glass: "NIST 711",
    basis: "molePercent",
    amounts: { SiO2: 71.28, Al2O3: 0.51, Na2O: 3.76, K2O: 5.55, PbO: 18.9 },
    published: [
      [1.5, 1185],
      [6.6, 614],
      [12, 443],
    ],
    source: FLUEGEL,
    tolerance: {
      abs: 45,
      why: "a lead glass: few viscosities of lead glasses among the measured ones, the interval says so",
    },
  },
  {
    glass: "NIST 710",
    basis: "molePercent",
    amounts: { SiO2: 72.74, Al2O3: 0.11, Na2O: 8.7, K2O: 5.07, CaO: 12.82, Fe2O3: 0.01 },
    published: [
      [1.5, 1293],
      [6.6, 725],
      [12, 556],
    ],
    source: FLUEGEL,
    tolerance: { abs: 17, why: "the larger standard error that the best published regression claims, 9–17 K" },
  },
  {
    glass: "DGG I (without its sulphate)",
    basis: "molePercent",
    amounts: { SiO2: 70.94, Al2O3: 0.72, Na2O: 14.34, K2O: 0.21, MgO: 6.16, CaO: 7.13, Fe2O3: 0.07, TiO2: 0.1 },
    published: [
      [1.5, 1301],
      [6.6, 721],
      [12, 539],
    ],
    source: FLUEGEL,
    tolerance: { abs: 9, why: "the smaller standard error that the best published regression claims, 9–17 K" },
  },
  {
    glass: "S1",
    basis: "weightPercent",
    amounts: { SiO2: 77.02, Al2O3: 0.19, Na2O: 12.03, K2O: 0.13, CaO: 10.12 },
    published: [
      [1, 1503.7],
      [3, 1054.3],
      [5, 843.3],
    ],
    source: LAKATOS,
    tolerance: { abs: 40, why: "10 Pa·s lies below nearly all measured viscosities" },
  },
  {
    glass: "D17",
    basis: "weightPercent",
    amounts: { SiO2: 62.01, Al2O3: 1.05, Na2O: 12.15, CaO: 10.42, B2O3: 14.37 },
    published: [
      [1, 1200],
      [3, 905.3],
      [5, 772.4],
    ],
    source: LAKATOS,
    tolerance: { abs: 55, why: "a miss, kept in sight: reads 40–50 K low on this soda-lime borosilicate" },
  },
  {
    glass: "FAL5",
    basis: "weightPercent",
    amounts: { SiO2: 68, Al2O3: 6, Na2O: 11, K2O: 2, CaO: 11, MgO: 2 },
    published: [
      [1, 1499.7],
      [3, 1069.9],
      [5, 864.3],
    ],
    source: LAKATOS,
    tolerance: { abs: 15, why: "three times the 3–5 K that the authors claim inside their own soda-lime family" },
  },
];

const cases = standards.flatMap((standard) =>
  standard.published.map(([log, celsius]) => ({ ...standard, log, celsius })),
);

describe("standard glasses", () => {
  it.each(cases)("$glass, 10^$log Pa·s at $celsius °C ($source)", ({ basis, amounts, log, celsius, tolerance }) => {
    const { moleFractions } = analyseGlaze({ oxides: { basis, amounts } });
    const estimate = viscosityCurve(moleFractions).temperatureC(log);
    close(estimate.value, celsius, tolerance);
    expect(quantileOf(estimate, 0.05)).toBeLessThanOrEqual(celsius);
    expect(quantileOf(estimate, 0.95)).toBeGreaterThanOrEqual(celsius);
  });

  it("agrees with the magma model of 2008 where the two may be compared (giordano-2008, calculated)", () => {
    const amounts = { SiO2: 70, Al2O3: 15, CaO: 7, Na2O: 3, K2O: 5 };
    const { moleFractions } = analyseGlaze({ oxides: { basis: "weightPercent", amounts } });
    const curve = viscosityCurve(moleFractions);
    close(curve.temperatureC(12).value, 753, { abs: 25, why: "it was fitted to magmas; 55 K low on glazes at 10^12" });
    close(curve.logViscosity(1200).value, 5.14, {
      abs: 0.8,
      why: "it reads 45 K low on glazes at 10^3, the other way here",
    });
  });
});

describe("accuracy wanted on unseen publications (the figures of a first regression with physical terms)", () => {
  it("log10 viscosity at 1200 °C: median at most 0.11", () => {
    expect(VISCOSITY.heldOut.log_visc_1200!.medianAbsoluteError).toBeLessThanOrEqual(0.11);
  });
  it("temperature of 10^4 Pa·s: median at most 18 K", () => {
    expect(VISCOSITY.heldOut.t_log4!.medianAbsoluteError).toBeLessThanOrEqual(18);
  });
  it("90 % intervals hold 87–93 % overall and 83–96 % in each quarter", () => {
    for (const { quarter, held } of VISCOSITY.intervals) {
      expect(held).toBeGreaterThanOrEqual(quarter === "all" ? 0.87 : 0.83);
      expect(held).toBeLessThanOrEqual(quarter === "all" ? 0.93 : 0.96);
    }
  });
});

describe("the doubt about a viscosity", () => {
  const GLASS = { SiO2: 0.7, Al2O3: 0.05, Na2O: 0.15, CaO: 0.1 };
  const curve = viscosityCurve(GLASS);

  it("is √(logSd² + (temperatureSd × slope)²) times the spread at this glass, in log10 η", () => {
    const { low, high } = trainingRange(VISCOSITY.training.rangesMolePercent);
    const k = scaleFunction(
      VISCOSITY.spread,
      low,
      high,
    )(Float64Array.from(MODEL_OXIDES, (oxide) => (GLASS as Record<string, number>)[oxide] ?? 0));
    for (const celsius of [500, 800, 1200]) {
      const { logViscosity, slope } = myegaAt(curve.parameters, celsius + 273.15);
      const estimate = curve.logViscosity(celsius);
      close(estimate.value, logViscosity, { rel: 1e-12 });
      // logSd 0.08 and temperatureSdK 8: data/models/viscosity.json.
      close(estimate.scale, k * Math.sqrt(0.08 ** 2 + (8 * slope) ** 2), { rel: 1e-9 });
    }
  });
  it("is the same divided by the slope in temperature", () => {
    for (const log of [2, 6.6, 12]) {
      const celsius = curve.temperatureC(log);
      const { slope } = myegaAt(curve.parameters, celsius.value + 273.15);
      close(curve.logViscosity(celsius.value).value, log, { abs: 1e-9 });
      close(celsius.scale, curve.logViscosity(celsius.value).scale / slope, { rel: 1e-9 });
    }
    close(curve.temperatureC(12).value, curve.parameters.t12K - 273.15, { abs: 1e-9 });
  });
  it("grows by 1 + 10 × the share of an oxide that no measured glass has, which moves nothing", () => {
    const odd = viscosityCurve({ SiO2: 0.665, Al2O3: 0.0475, Na2O: 0.1425, CaO: 0.095, V2O5: 0.05 });
    close(odd.parameters.t12K, curve.parameters.t12K, { rel: 1e-12 });
    close(odd.logViscosity(1000).scale, 1.5 * curve.logViscosity(1000).scale, { rel: 1e-9 });
    close(odd.temperatureC(4).scale, 1.5 * curve.temperatureC(4).scale, { rel: 1e-9 });
    expect([curve.warnings, curve.sources]).toEqual([[], VISCOSITY.sources]);
    expect(odd.warnings.map((warning) => warning.code)).toEqual(["oxide-not-in-model"]);
  });
});

it("keeps T12 within 400 to 1400 K and ln fragility within 2.5 to 4.8, however odd the melt", () => {
  // Ends of data/models/viscosity.json; each of these melts runs far beyond one of them.
  const ends = MODEL_OXIDES.flatMap((a) =>
    MODEL_OXIDES.map((b) => viscosityCurve(a === b ? { [a]: 1 } : { [a]: 0.5, [b]: 0.5 }).parameters),
  );
  const t12 = ends.map((one) => one.t12K);
  const ln = ends.map((one) => Math.log(one.fragility));
  expect([Math.min(...t12), Math.max(...t12)]).toEqual([400, 1400]);
  close(Math.min(...ln), 2.5, { rel: 1e-12 });
  close(Math.max(...ln), 4.8, { rel: 1e-12 });
});

describe("laws of the viscosity curve", () => {
  const glass = fc.record({
    limit: fc.double({ min: -4, max: -1.5, noNaN: true }),
    t12K: fc.double({ min: 400, max: 1400, noNaN: true }),
    fragility: fc.double({ min: 12, max: 120, noNaN: true }),
  });
  const log = fc.double({ min: 1, max: 13.5, noNaN: true });

  it("is 10^12 Pa·s at T12, with the fragility as its slope against T12/T", () => {
    expect(myegaAt({ limit: -2, t12K: 850, fragility: 38 }, 850).logViscosity).toBe(12);
    expect(myegaTemperature({ limit: -2, t12K: 850, fragility: 38 }, 12).value).toBe(850);
    fc.assert(
      fc.property(glass, (parameters) => {
        const { logViscosity, slope } = myegaAt(parameters, parameters.t12K);
        close(logViscosity, 12, { abs: 1e-9 });
        close(slope * parameters.t12K, parameters.fragility, { rel: 1e-9 });
      }),
    );
  });

  it("follows its formula: −2 + 14 × 0.5 × e⁻¹ at twice T12 with a fragility of 42 (by hand)", () => {
    // u = 850/1700 = 0.5; 42/14 − 1 = 2; exp[2 × (0.5 − 1)] = 1/e.
    const { logViscosity } = myegaAt({ limit: -2, t12K: 850, fragility: 42 }, 1700);
    close(logViscosity, -2 + 7 / Math.E, { abs: 1e-12 });
    close(myegaTemperature({ limit: -2, t12K: 850, fragility: 42 }, -2 + 7 / Math.E).value, 1700, { abs: 1e-6 });
  });

  it("comes back: the temperature of a viscosity has that viscosity", () => {
    fc.assert(
      fc.property(glass, log, (parameters, wanted) => {
        const { value, converged, iterations } = myegaTemperature(parameters, wanted);
        expect(converged).toBe(true);
        // Newton's method doubles the right digits with each round.
        expect(iterations).toBeLessThanOrEqual(10);
        close(myegaAt(parameters, value).logViscosity, wanted, { abs: 1e-8 });
      }),
    );
  });

  it("has no temperature for what lies at its limit or below, and says so", () => {
    for (const wanted of [-2, -3]) {
      const { value, converged, iterations } = myegaTemperature({ limit: -2, t12K: 850, fragility: 38 }, wanted);
      expect([value, converged, iterations]).toEqual([Number.NaN, false, 60]);
    }
  });

  it("falls with temperature", () => {
    fc.assert(
      fc.property(glass, log, log, (parameters, a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const [stiff, runny] = [Math.max(a, b), Math.min(a, b)].map((v) => myegaTemperature(parameters, v).value);
        expect(stiff!).toBeLessThan(runny!);
      }),
    );
  });

  it("has the derivatives it says", () => {
    fc.assert(
      fc.property(glass, log, (parameters, wanted) => {
        const t = myegaTemperature(parameters, wanted).value;
        const point = myegaAt(parameters, t);
        const by = (change: Partial<typeof parameters>, step: number) =>
          (myegaAt({ ...parameters, ...change }, t).logViscosity - point.logViscosity) / step;
        const why = "a one-sided difference";
        close(point.byT12, by({ t12K: parameters.t12K + 1e-4 }, 1e-4), { rel: 1e-4, abs: 1e-6, why });
        close(point.byFragility, by({ fragility: parameters.fragility + 1e-4 }, 1e-4), { rel: 1e-4, abs: 1e-5, why });
        close(point.byLimit, by({ limit: parameters.limit + 1e-6 }, 1e-6), { rel: 1e-3, abs: 1e-5, why });
        close(-point.slope, (myegaAt(parameters, t + 1e-4).logViscosity - point.logViscosity) / 1e-4, {
          rel: 1e-3,
          abs: 1e-6,
          why,
        });
      }),
    );
  });

  it("answers any mixture with finite figures", () => {
    const oxides = ["SiO2", "Al2O3", "B2O3", "Na2O", "K2O", "CaO", "PbO", "TiO2", "V2O5", "CoO"] as const;
    const mixture = fc.dictionary(fc.constantFrom(...oxides), fc.double({ min: 0.001, max: 1, noNaN: true }), {
      minKeys: 1,
    });
    fc.assert(
      fc.property(mixture, (moles) => {
        const total = Object.values(moles).reduce((a, b) => a + b, 0);
        const curve = viscosityCurve(Object.fromEntries(Object.entries(moles).map(([o, n]) => [o, n / total])));
        for (const estimate of [curve.logViscosity(1200), curve.temperatureC(4), curve.temperatureC(13)]) {
          expect(Number.isFinite(estimate.value) && Number.isFinite(estimate.scale) && estimate.scale > 0).toBe(true);
        }
      }),
    );
  });
});
