/** Stress at each depth of a glazed wall. @module */
import { bilayerStress, bodyStress, DEFAULTS, type FitReport, type Ware } from "../../fit/index.ts";

/** One layer of the wall, from the outside in; stresses in MPa, tension positive. */
export interface Layer {
  material: "glaze" | "clay";
  /** What it is called beside the picture. */
  name: string;
  /** Thickness [mm]. */
  mm: number;
  /** Stress at its outer and inner face [MPa]. */
  outer: number;
  inner: number;
  /** 90 % interval of its mean [MPa]; the second glaze of a pair repeats the first and has none. */
  likely?: readonly [number, number];
}

/** The wall cut through. */
export interface Wall {
  layers: Layer[];
  glazed: NonNullable<Ware["glazed"]>;
  /** Which way a free piece bends. */
  bends: "hollow" | "domed" | undefined;
}

/** Poisson's ratio; its exact value cancels when the profile is scaled to the stress of the report [-]. */
const POISSON = 0.2;

/**
 * Stress through the thickness: level in a wall that stays straight, sloping in one that is free to bend. The profile of
 * {@link bilayerStress} is scaled so that the glaze's mean is the stress of the report.
 * @param report - the answer
 * @param ware - as asked; defaults as in the fit
 */
export function wallOf(report: FitReport, ware: Ware = {}): Wall {
  const { stress, glaze, body, mismatch } = report;
  const glazed = ware.glazed ?? DEFAULTS.glazed;
  const wallMm = ware.wallMm ?? DEFAULTS.wallMm;
  const mm = glaze.thickness.value;
  const likely = [stress.low, stress.high] as const;
  const skin: Layer = { material: "glaze", name: "glaze", mm, outer: stress.value, inner: stress.value, likely };
  if (glazed !== "one-face-free") {
    const faces = glazed === "both-faces" ? 2 : 1;
    const share = (mpa: number) => bodyStress(mpa, mm, wallMm, faces);
    const level = share(stress.value);
    // A stretched glaze squeezes the clay: the ends of the interval change places.
    const clayLikely = [share(stress.high), share(stress.low)] as const;
    const clay: Layer = { material: "clay", name: "clay", mm: wallMm, outer: level, inner: level, likely: clayLikely };
    const skins = coatsOf(report) ?? [skin];
    const backs = skins.map(({ likely: _, ...back }) => back).reverse();
    return { layers: [...skins, clay, ...(faces === 2 ? backs : [])], glazed, bends: undefined };
  }
  const delta = mismatch.value === 0 ? 1e-9 : mismatch.value / 100;
  const profile = bilayerStress(
    {
      glazePa: glaze.youngs.value * 1e9,
      glazePoisson: POISSON,
      glazeM: mm / 1e3,
      bodyPa: body.youngs.value * 1e9,
      bodyPoisson: POISSON,
      wallM: wallMm / 1e3,
    },
    delta,
  );
  const share = stress.value / profile.glazeMean;
  return {
    layers: [
      { ...skin, outer: profile.glazeSurface * share, inner: profile.glazeInterface * share },
      {
        material: "clay",
        name: "clay",
        mm: wallMm,
        outer: profile.bodyInterface * share,
        inner: profile.bodyBack * share,
      },
    ],
    glazed,
    bends: Math.abs(stress.value) < 1 ? undefined : stress.value > 0 ? "hollow" : "domed",
  };
}

/** Several coats, each with its own stress, the outer one first. */
function coatsOf({ coats }: FitReport): Layer[] | undefined {
  if (!coats || coats.length < 2) return undefined;
  return coats.map(({ thicknessMm, stress }, i) => ({
    material: "glaze",
    name: i === 0 ? "outer coat" : i === coats.length - 1 ? "inner coat" : "coat",
    mm: thicknessMm,
    outer: stress.value,
    inner: stress.value,
    likely: [stress.low, stress.high],
  }));
}
