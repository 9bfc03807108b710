/** Split ring and thin strip: worked values and an independent solution. */
import { describe, expect, it } from "vitest";
import {
  bilayerStress,
  cantileverDeflection,
  ringClosing,
  ringClosingOf,
  ringStress,
  spanSag,
  straightWallStress,
  stripCurvature,
  stripMismatch,
} from "../../api/engine/fit/index.ts";
import solved from "../independent/layers.json" with { type: "json" };
import { close } from "../support/close.ts";

// Worked examples of the formulas (derived; Timoshenko 1925 from memory). Tolerance: half of the last printed digit.
describe("worked examples", () => {
  it("strip: 0.0409 per metre, 0.818 mm at the end of 200 mm, 0.204 mm between supports", () => {
    const k = stripCurvature(6e-4, 3e-4, 5e-3, 70e9, 60e9);
    close(k, 0.0409, { abs: 0.00005 });
    close(cantileverDeflection(k, 0.2) * 1000, 0.818, { abs: 0.0005 });
    close(spanSag(k, 0.2) * 1000, 0.204, { abs: 0.0006, why: "printed from the rounded curvature" });
    close(stripMismatch(k, 3e-4, 5e-3, 70e9, 60e9), 6e-4, { rel: 1e-12 });
  });
  it("ring of 30 mm radius, 4 mm wall, 0.3 mm glaze at −60 MPa closes by 0.6362 mm", () => {
    const closing = ringClosing(-60e6, 0.03, 0.004, 3e-4, 60e9);
    close(closing * 1000, 0.6362, { abs: 0.00005 });
    close(ringStress(closing, 0.03, 0.004, 3e-4, 60e9) / 1e6, -60, { rel: 1e-12 });
    expect(ringClosing(20e6, 0.03, 0.004, 3e-4, 60e9)).toBeLessThan(0);
  });
});

// A plate that does not narrow as it is pulled is a strip: both are Timoshenko's 1925 sum, in two forms (derived).
describe("a strip is a plate without Poisson's ratio", () => {
  it.each([
    [3e-4, 5e-3, 70e9, 60e9],
    [1e-3, 2e-3, 55e9, 20e9],
    [2e-3, 1e-3, 20e9, 90e9],
  ])("%d on %d m, %d on %d Pa", (glazeM, wallM, glazePa, bodyPa) => {
    const { curvature } = bilayerStress({ glazePa, glazePoisson: 0, glazeM, bodyPa, bodyPoisson: 0, wallM }, 6e-4);
    close(stripCurvature(6e-4, glazeM, wallM, glazePa, bodyPa), curvature, { rel: 1e-10 });
    close(stripMismatch(curvature, glazeM, wallM, glazePa, bodyPa), 6e-4, { rel: 1e-10 });
    close(ringClosingOf(6e-4, 0.03, wallM, glazeM, glazePa, bodyPa), 2 * Math.PI * 0.03 ** 2 * curvature, {
      rel: 1e-10,
    });
  });
  it("the docstring's ring closes by 0.527 mm", () => {
    close(ringClosingOf(9.19e-4, 0.03, 0.004, 3e-4, 70e9, 60e9) * 1000, 0.527, { abs: 0.0005 });
  });
});

// Energy minimised numerically with numpy and scipy, script tests/independent/layers.py, record layers.json.
describe("independent solution by energy", () => {
  it.each(solved.plates.map((plate) => [plate.case.t / plate.case.h, plate] as const))("plate, t/H %d", (_, plate) => {
    const { e_g, e_b, nu_g, nu_b, t, h, mismatch } = plate.case;
    const layers = { glazePa: e_g, glazePoisson: nu_g, glazeM: t, bodyPa: e_b, bodyPoisson: nu_b, wallM: h };
    const bent = bilayerStress(layers, mismatch);
    const why = "the minimiser stops at about seven digits";
    close(bent.glazeMean / 1e6, plate.free.glazeMeanMPa, { rel: 1e-4, why });
    close(bent.bodyInterface / 1e6, plate.free.bodyInterfaceMPa, { rel: 1e-4, why });
    close(bent.bodyBack / 1e6, plate.free.bodyBackMPa, { rel: 1e-4, why });
    close(Math.abs(bent.curvature), Math.abs(plate.free.curvaturePerM), { rel: 1e-4, why });
    close(straightWallStress(layers, mismatch, 1) / 1e6, plate.straight.glazeMeanMPa, { rel: 1e-4, why });
  });
  it("ring as a curved beam of two layers", () => {
    const { e_g, e_b, t, h, r, mismatch } = solved.ring.case;
    close(ringClosingOf(mismatch, r, h, t, e_g, e_b) * 1000, solved.ring.solved.gapClosingMm, {
      rel: 0.035,
      why: "the strip formula leaves the ring's own curvature out; R/H is 7.5",
    });
  });
});
