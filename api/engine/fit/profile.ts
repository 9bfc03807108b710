/** Stress through glaze and wall, ready to be drawn. @module */
import { quantileOf, round } from "../quantity.ts";
import { POISSON } from "./constants.ts";
import { type Situation, skinOf } from "./simulate.ts";
import { bilayerStress, bodyStress, type Layers } from "./stress.ts";
import type { ProfilePoint } from "./types.ts";

/**
 * Stress from the outer face of the glaze inward, at the centre of the doubt.
 * A straight wall carries even stress in each layer; a flat piece glazed on one face bends, so its stress slopes. Of
 * several coats on such a piece the curvature follows from the means, by the balance of moments.
 * @param s - the situation
 * @param middle - centres: stress of the glaze [Pa], mismatch [-], Young's modulus of the glaze [Pa]; of several coats
 * the mean stress of each
 * @returns points at each face, depth [mm], stress [MPa, tension positive]; forces over glaze and wall add up to nothing
 */
export function stressProfile(
  s: Situation,
  middle: {
    stress: number;
    mismatch: number;
    glazePa: number;
    coats?: readonly { thicknessMm: number; stress: number }[];
  },
): ProfilePoint[] {
  const t = skinOf(s) * 1000;
  const h = s.wallM * 1000;
  if (s.glazed === "one-face-free" && !middle.coats) {
    const layers: Layers = {
      glazePa: middle.glazePa,
      glazePoisson: POISSON,
      glazeM: s.thicknessM,
      bodyPa: s.body.youngsGPa.value * 1e9,
      bodyPoisson: s.body.poisson,
      wallM: s.wallM,
    };
    const bent = bilayerStress(layers, middle.mismatch);
    return [
      at(0, bent.glazeSurface, "glaze"),
      at(t, bent.glazeInterface, "glaze"),
      at(t, bent.bodyInterface, "body"),
      at(t + h, bent.bodyBack, "body"),
    ];
  }
  if (s.glazed === "one-face-free" && middle.coats) return bentStacked(s, middle.coats);
  const both = s.glazed === "both-faces";
  if (middle.coats) return stacked(s, middle.coats, both);
  const wall = bodyStress(middle.stress, s.thicknessM, s.wallM, both ? 2 : 1);
  const points = [
    at(0, middle.stress, "glaze"),
    at(t, middle.stress, "glaze"),
    at(t, wall, "body"),
    at(t + h, wall, "body"),
  ];
  if (both) points.push(at(t + h, middle.stress, "glaze"), at(2 * t + h, middle.stress, "glaze"));
  return points;
}

function at(depthMm: number, pascal: number, layer: ProfilePoint["layer"]): ProfilePoint {
  return { depthMm: round(depthMm, 4), stressMPa: round(pascal / 1e6, 2), layer };
}

/** Coats one under the other, each at its mean, the wall, and on two faces the coats again from the clay outward. */
function stacked(
  s: Situation,
  coats: readonly { thicknessMm: number; stress: number }[],
  both: boolean,
): ProfilePoint[] {
  const force = coats.reduce((sum, { thicknessMm, stress }) => sum + thicknessMm * stress, 0);
  const h = s.wallM * 1000;
  const wall = (-force * (both ? 2 : 1)) / h;
  const points: ProfilePoint[] = [];
  let depth = 0;
  const add = (thicknessMm: number, stress: number, layer: ProfilePoint["layer"]) => {
    points.push(at(depth, stress, layer), at(depth + thicknessMm, stress, layer));
    depth += thicknessMm;
  };
  for (const { thicknessMm, stress } of coats) add(thicknessMm, stress, "glaze");
  add(h, wall, "body");
  if (both) for (const { thicknessMm, stress } of [...coats].reverse()) add(thicknessMm, stress, "glaze");
  return points;
}

/**
 * Coats one under the other on a piece that bends.
 *
 *     κ = (σ_b H²/2 − Σ σ_j t_j y_j)/(Σ E_j t_j³/12 + E₂H³/12),   σ_b = −Σ σ_j t_j/H
 *
 * y_j is the height of the middle of a coat over the clay, E the Young's modulus over 1 − ν; each layer slopes by Eκ about
 * its mean.
 */
function bentStacked(s: Situation, coats: readonly { thicknessMm: number; stress: number }[]): ProfilePoint[] {
  const layers = [s, ...s.under].map(({ youngsGPa, thicknessM }, j) => ({
    t: thicknessM,
    stiff: (quantileOf(youngsGPa, 0.5) * 1e9) / (1 - POISSON),
    stress: coats[j]!.stress,
    layer: "glaze" as ProfilePoint["layer"],
  }));
  const h = s.wallM;
  const wall = {
    t: h,
    stiff: (s.body.youngsGPa.value * 1e9) / (1 - s.body.poisson),
    stress: layers.reduce((sum, { stress, t }) => sum - stress * t, 0) / h,
    layer: "body" as const,
  };
  let top = skinOf(s);
  let moment = (wall.stress * h * h) / 2;
  let resists = 0;
  for (const { t, stress } of layers) {
    moment -= stress * t * (top - t / 2);
    top -= t;
  }
  for (const { t, stiff } of [...layers, wall]) resists += (stiff * t ** 3) / 12;
  const curvature = moment / resists;
  let depth = 0;
  return [...layers, wall].flatMap(({ t, stiff, stress, layer }) => {
    const rise = (stiff * curvature * t) / 2;
    const points = [at(depth * 1000, stress + rise, layer), at((depth + t) * 1000, stress - rise, layer)];
    depth += t;
    return points;
  });
}
