/** The stress of every draw, in one coat or in each of several. @module */
import { POISSON } from "./constants.ts";
import { DRAWS } from "./draws.ts";
import { type Bent, type CoatArrays, facesOf, type Situation } from "./simulate.ts";
import { bentStack, bilayerStress, type Layers, sharedStress, stackStress } from "./stress.ts";

/**
 * One coat on the wall.
 * @param bent - filled, if the piece bends
 */
export function drawStress(s: Situation, bodyPa: Float64Array, coat: CoatArrays, bent: Bent | null): void {
  if (bent !== null) {
    drawBent(s, bodyPa, coat, bent);
    return;
  }
  const { mismatch, stress, glazeM, glazePa } = coat;
  const faces = facesOf(s);
  const perGlaze = 1 / (1 - POISSON);
  const perWall = s.wallM / (1 - s.body.poisson);
  for (let i = 0; i < DRAWS; i++) {
    stress[i] = sharedStress(glazePa[i]! * perGlaze, glazeM[i]!, bodyPa[i]! * perWall, mismatch[i]!, faces);
  }
}

/** One coat on a piece that bends. */
function drawBent(
  s: Situation,
  bodyPa: Float64Array,
  { mismatch, stress, glazeM, glazePa }: CoatArrays,
  { across, underGlaze }: Bent,
): void {
  const pair: Layers = {
    glazePa: 0,
    glazePoisson: POISSON,
    glazeM: 0,
    bodyPa: 0,
    bodyPoisson: s.body.poisson,
    wallM: s.wallM,
  };
  for (let i = 0; i < DRAWS; i++) {
    pair.glazePa = glazePa[i]!;
    pair.glazeM = glazeM[i]!;
    pair.bodyPa = bodyPa[i]!;
    const { glazeMean, glazeSurface, glazeInterface, bodyInterface } = bilayerStress(pair, mismatch[i]!);
    stress[i] = glazeMean;
    across[i] = Math.abs(glazeSurface - glazeInterface);
    underGlaze[i] = bodyInterface;
  }
}

/**
 * Several coats: each pulls the common wall, see {@link stackStress}.
 * @param bent - filled, if the piece bends, and with it how each coat slopes
 */
export function drawStackStress(
  s: Situation,
  bodyPa: Float64Array,
  coats: readonly CoatArrays[],
  bent: Bent | null,
): void {
  const layers = coats.map(() => ({ pa: 0, poisson: POISSON, thicknessM: 0, mismatch: 0 }));
  const wall = { pa: 0, poisson: s.body.poisson, thicknessM: s.wallM };
  for (let i = 0; i < DRAWS; i++) {
    wall.pa = bodyPa[i]!;
    for (let j = 0; j < coats.length; j++) {
      const layer = layers[j]!;
      layer.pa = coats[j]!.glazePa[i]!;
      layer.thicknessM = coats[j]!.glazeM[i]!;
      layer.mismatch = coats[j]!.mismatch[i]!;
    }
    const stress = stackStress(layers, wall, s.glazed);
    for (let j = 0; j < coats.length; j++) coats[j]!.stress[i] = stress[j]!;
    if (bent === null) continue;
    const { strain, curvature } = bentStack(layers, wall);
    bent.underGlaze[i] = (wall.pa / (1 - wall.poisson)) * strain;
    let across = 0;
    for (let j = 0; j < coats.length; j++) {
      const { pa, poisson, thicknessM } = layers[j]!;
      coats[j]!.across[i] = Math.abs((pa / (1 - poisson)) * curvature * thicknessM);
      across += coats[j]!.across[i]!;
    }
    bent.across[i] = across;
  }
}

/**
 * The skin as a whole: thickness added, everything else averaged by thickness.
 * @param coats - their stresses drawn
 * @param skin - filled
 */
export function meltIntoSkin(coats: readonly CoatArrays[], skin: CoatArrays): void {
  for (let i = 0; i < DRAWS; i++) {
    let thickness = 0;
    for (const coat of coats) thickness += coat.glazeM[i]!;
    const mean = (key: "stress" | "mismatch" | "glazePa" | "alpha"): number => {
      let sum = 0;
      for (const coat of coats) sum += coat[key][i]! * coat.glazeM[i]!;
      return sum / thickness;
    };
    skin.glazeM[i] = thickness;
    skin.stress[i] = mean("stress");
    skin.mismatch[i] = mean("mismatch");
    skin.glazePa[i] = mean("glazePa");
    skin.alpha[i] = mean("alpha");
  }
}
