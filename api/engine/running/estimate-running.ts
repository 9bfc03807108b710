/** The front door: how far a glaze runs, again when refired, and what else may go wrong on the wall. @module */
import { quantity, UNITS } from "../quantity.ts";
import { DATA_VERSION, DEFAULT_SEED, ENGINE_VERSION } from "../version.ts";
import { cautionsFor } from "./cautions.ts";
import { checklist } from "./checklist.ts";
import { runDraws } from "./draws.ts";
import { laterHeatOf } from "./later-heat.ts";
import { layersReport } from "./layers.ts";
import { meltOf, type ReadyMelt } from "./melt.ts";
import { footWords, outcomeOf, reachingWords } from "./outcome.ts";
import { meltMinutes, meltPath, viscosityAt } from "./path.ts";
import { SOLIDS_FIRST } from "./practice.ts";
import { profileOf } from "./profile.ts";
import { type ReadRunning, readRunning, tensionOf, togetherMm } from "./read-request.ts";
import { recipeSigns } from "./recipe-signs.ts";
import { refiringOf } from "./refiring.ts";
import { simulateRun, type WallM } from "./simulate.ts";
import { slowingOf } from "./slowing.ts";
import type { Run, RunningReport, RunningRequest } from "./types.ts";
import { flowWords, inTwenty, mm, stated } from "./words.ts";

/**
 * How far a glaze runs down a wall over a firing.
 *
 *     L = (ρ g sin θ h²/3) ∫ dt/η(T(t)),   later Huppert's sheet; less what fills the roll
 *
 * @param request - glaze or coats, firing, wall, refiring, later heat, seed
 * @returns run and roll [mm], the chance to reach the shelf [-], viscosity along the firing [log10 Pa·s], refiring, what slows
 * it, layers, a checklist of faults, later firings
 * @throws EngineError with every issue, pointers from the root of the request
 * @remarks Pure and deterministic: one seed, one answer. The melt is taken as even but for a share of grains; clay taken
 * up from the body, which stiffens it, is left out.
 * Sources: derived; huppert-1982, myega-2009, roscoe-1952.
 * @example estimateRunning({ glaze: { oxides: { basis: "molePercent", amounts: { SiO2: 70, Al2O3: 8, CaO: 12, K2O: 5, Na2O: 5 } } }, firing: { peakC: 1240 } }).catchPlate // false
 */
export function estimateRunning(request: RunningRequest): RunningReport {
  const seed = request.seed ?? DEFAULT_SEED;
  const read = readRunning(request);
  const { coats, firing, wall } = read;
  const outer = coats.at(-1)!;
  const draws = runDraws(seed, outer.curve.logViscosity(firing.peakC).shape);
  const tension = tensionOf(outer, firing.peakC);
  const walls: WallM = {
    slopeDeg: wall.slopeDeg,
    glazedM: wall.glazedMm / 1000,
    clearanceM: wall.clearanceMm / 1000,
    tensionNPerM: tension.quantity.value / 1000,
  };
  const melt = meltOf(coats, firing, SOLIDS_FIRST, draws);
  const sample = simulateRun(melt, walls, draws, { reaching: true });
  const outcome = outcomeOf(sample, walls);
  const { thicknessMm, plusMinusMm } = togetherMm(coats);
  const { melt: again, ...refiring } = refiringOf(read, sample, walls, draws);
  const peak = viscosityAt(melt.curve, firing.peakC, firing.plusMinusK);
  const minutes = meltMinutes(melt.curve, firing);
  const faults = checklist(situationOf(read, { peak: peak.value, minutes: minutes.value, tension }));
  return {
    headline: headline(read, outcome, peak.value),
    ...outcome,
    text: `${outcome.text} ${reachingWords(outcome.reachingThickness, wall.clearanceMm)}`,
    thickness: quantity(thicknessMm, Math.max(thicknessMm - plusMinusMm, 0), thicknessMm + plusMinusMm, UNITS.length),
    firing: {
      peak: quantity(
        firing.peakC,
        firing.peakC - firing.plusMinusK,
        firing.peakC + firing.plusMinusK,
        UNITS.temperature,
        {
          decimals: 0,
        },
      ),
      from: firing.from,
      meltMinutes: minutes,
      path: meltPath(melt.curve, firing),
    },
    viscosityAtPeak: peak,
    surfaceTension: tension.quantity,
    wall,
    profile: profileOf(sample, walls),
    refiring,
    slows: slowingOf(coats, firing, walls, draws, outcome.run),
    layers: layersReport(coats, melt, firing, walls, draws),
    faults,
    laterHeat: read.laterHeat.map(({ asked, timeline }) =>
      laterHeatOf(asked, timeline, [...coats, ...read.refiring.coats], walls, draws),
    ),
    engine: { version: ENGINE_VERSION, dataVersion: DATA_VERSION, seed },
    warnings: [...read.warnings, ...mixtureWarnings(melt, read)],
    cautions: cautionsFor(read, outcome, faults),
    sources: sourcesOf(read, tension.source, [melt, again], request),
  };
}

function headline(
  { coats, wall }: ReadRunning,
  { run, reachesShelf, catchPlate, bareBandMm }: Run,
  peak: number,
): string {
  const what = coats.length > 1 ? "This stack of coats" : "This glaze";
  const shelf = `${stated(wall.clearanceMm)} of bare clay`;
  if (wall.slopeDeg === 0) return `${what} lies level and does not run.`;
  const flows = `${what} ${flowWords(peak)} at the peak and runs ${run.value < 0.05 ? "" : "about "}${mm(run.value)}`;
  return catchPlate
    ? `${flows}. It crosses ${shelf} ${inTwenty(reachesShelf)} times. ${footWords(catchPlate, bareBandMm)}`
    : `${flows}. It should stay above ${shelf}.`;
}

function situationOf(
  { coats, firing, refiring, bisque }: ReadRunning,
  { peak, minutes, tension }: { peak: number; minutes: number; tension: ReturnType<typeof tensionOf> },
) {
  const soak = firing.legs
    .filter(({ fromC, toC }) => fromC === toC && toC > firing.peakC - 60)
    .reduce((sum, { seconds }) => sum + seconds / 60, 0);
  const all = [...coats, ...refiring.coats];
  return {
    signs: all.map(recipeSigns),
    thicknessMm: togetherMm(all).thicknessMm,
    coats: all.length,
    logViscosity: peak,
    meltMinutes: minutes,
    soakMinutes: soak,
    tension: tension.quantity.value,
    tensionKnown: tension.known,
    tensionSource: tension.source,
    overFired: refiring.coats.length > 0,
    bisque,
  };
}

/** Oxides that only the mixture brings out of range. */
function mixtureWarnings({ curve }: ReadyMelt, { coats }: ReadRunning) {
  return coats.length > 1 ? curve.warnings : [];
}

function sourcesOf(
  { coats, refiring, laterHeat }: ReadRunning,
  tension: string,
  melts: readonly ReadyMelt[],
  { firing }: RunningRequest,
): string[] {
  const keys = new Set<string>([
    "huppert-1982",
    "thin-film-solved",
    "roscoe-1952",
    "common-practice",
    "appen-1949",
    "from-memory-handbooks",
    tension,
  ]);
  for (const { chemistry } of [...coats, ...refiring.coats]) for (const key of chemistry.sources) keys.add(key);
  for (const { curve } of melts) for (const key of curve.sources) keys.add(key);
  if (firing.cone !== undefined) keys.add("beerman-1956").add("cone-charts");
  if (laterHeat.length > 0) keys.add("inada-1978-3");
  return [...keys].sort();
}
