/** The question, made ready. @module */
import type { Notice } from "../errors.ts";
import { surfaceTension, viscosityCurve } from "../glass/index.ts";
import { Faults } from "../lengths/index.ts";
import { mixture, moleFractionsOf, type ReadCoat, readCoat, withMore } from "./coats.ts";
import { CLEARANCE_MM, GLAZED_MM } from "./practice.ts";
import { readTimeline, type Timeline } from "./timeline.ts";
import type { Coat, LaterHeat, RunningRequest, Wall } from "./types.ts";

/** A question, read. */
export interface ReadRunning {
  /** From the clay outwards. */
  coats: ReadCoat[];
  firing: Timeline;
  refiring: { firing: Timeline; coats: ReadCoat[] };
  wall: Required<Wall>;
  laterHeat: { asked: LaterHeat; timeline: Timeline }[];
  bisque: boolean;
  warnings: Notice[];
}

const MOST_COATS = 6;
const MOST_LATER = 5;

/**
 * Reads a question and gathers everything that cannot be.
 * @throws ImpossibleValueError with every issue, pointers from the root of the request
 */
export function readRunning(request: RunningRequest): ReadRunning {
  const faults = new Faults();
  const coats = readCoats(request, faults);
  const firing = faults.gather("/firing", () => readTimeline(request.firing ?? {}));
  const again = request.refiring;
  const refired =
    again?.firing === undefined ? firing : faults.gather("/refiring/firing", () => readTimeline(again.firing!));
  const over = readStack(again?.coats ?? [], "/refiring/coats", faults, 0);
  const wall: Required<Wall> = {
    slopeDeg: request.wall?.slopeDeg ?? 90,
    glazedMm: request.wall?.glazedMm ?? GLAZED_MM,
    clearanceMm: request.wall?.clearanceMm ?? CLEARANCE_MM,
  };
  faults.number(wall.slopeDeg, "/wall/slopeDeg", "The slope from level", { from: 0, to: 90, unit: "°" });
  faults.number(wall.glazedMm, "/wall/glazedMm", "The height of the glaze", { from: 1, to: 3000, unit: "mm" });
  faults.number(wall.clearanceMm, "/wall/clearanceMm", "The clearance", { from: 0.1, to: 1000, unit: "mm" });
  const later = request.laterHeat ?? [];
  if (later.length > MOST_LATER)
    faults.add("/laterHeat", `At most ${MOST_LATER} later firings; I read ${later.length}.`);
  const laterHeat = later.slice(0, MOST_LATER).flatMap((asked, i) => {
    const { peakC, heatingCPerHour = 100, holdMinutes = 0, coolingCPerHour = 100 } = asked;
    const at = `/laterHeat/${i}`;
    if (firing && peakC >= firing.peakC) {
      const message = `A later heat of ${peakC} °C is no cooler than the glaze firing (${Math.round(firing.peakC)} °C). Ask for it as a refiring.`;
      faults.add(`${at}/peakC`, message);
    }
    const timeline = faults.gather(at, () => readTimeline({ peakC, heatingCPerHour, holdMinutes, coolingCPerHour }));
    return timeline ? [{ asked, timeline }] : [];
  });
  faults.throwIfAny();
  const warnings = [...coats, ...over].flatMap(({ warnings }) => warnings);
  warnings.push(...firing!.warnings);
  if (again?.firing !== undefined) warnings.push(...under("/refiring", refired!.warnings));
  const ready: ReadRunning = {
    coats,
    firing: firing!,
    refiring: { firing: refired!, coats: over },
    wall,
    laterHeat,
    bisque: request.bisque ?? true,
    warnings: [...under("", warnings), ...wallWarnings(request.wall, wall)],
  };
  return ready;
}

/** Warnings of the firing are told from the root. */
function under(prefix: string, notices: readonly Notice[]): Notice[] {
  const own = new Set(["/heatingCPerHour", "/coolingCPerHour", "/cone", "/segments"]);
  return notices.map((notice) =>
    notice.pointer !== undefined && own.has(notice.pointer)
      ? { ...notice, pointer: `${prefix}/firing${notice.pointer}` }
      : notice,
  );
}

function readCoats(request: RunningRequest, faults: Faults): ReadCoat[] {
  if ((request.glaze === undefined) === (request.coats === undefined)) {
    const message = request.glaze
      ? "Give one glaze or a list of coats, not both."
      : "Say which glaze: one, or a list of coats.";
    faults.add("/glaze", message);
    return [];
  }
  if (request.coats) return readStack(request.coats, "/coats", faults, 1);
  const coat = readCoat({ glaze: request.glaze! }, "", "/glaze", faults);
  return coat ? [coat] : [];
}

function readStack(coats: readonly Coat[], pointer: string, faults: Faults, least: number): ReadCoat[] {
  if (coats.length > MOST_COATS || coats.length < least) {
    const message = `A stack has ${least} to ${MOST_COATS} glazes, the outer one first; I read ${coats.length}.`;
    faults.add(pointer, message, { allowed: [least, MOST_COATS] });
  }
  // Asked from the outer coat in, as it is said: one over another. Worked out from the clay outwards, as it flows.
  return coats
    .slice(0, MOST_COATS)
    .flatMap((coat, i) => readCoat(coat, `${pointer}/${i}`, `${pointer}/${i}/glaze`, faults) ?? [])
    .reverse();
}

function wallWarnings(asked: Wall | undefined, wall: Required<Wall>): Notice[] {
  const warnings: Notice[] = [];
  const assumed = [
    ["glazedMm", `the glaze as ${wall.glazedMm} mm tall`],
    ["clearanceMm", `${wall.clearanceMm} mm of bare clay under it`],
  ] as const;
  const silent = assumed.filter(([key]) => asked?.[key] === undefined);
  if (silent.length > 0) {
    const message = `You did not say all of the wall. I have taken ${silent.map(([, words]) => words).join(" and ")}.`;
    warnings.push({ code: "wall-assumed", message, pointer: "/wall" });
  }
  if (wall.slopeDeg < 3) {
    const message = "On ground this level a glaze spreads and pools more than it runs; I reckon the run alone.";
    warnings.push({ code: "level-ground", message, pointer: "/wall/slopeDeg" });
  }
  return warnings;
}

/** Surface tension of the outer coat at the peak [mN/m]; the usual middle where the set lacks too much of it. */
export function tensionOf(coat: ReadCoat, peakC: number) {
  const sets = surfaceTension(coat.chemistry.moleFractions, coat.chemistry.fired.weightPercent, peakC);
  const known = sets.find(({ value }) => value !== null);
  return known?.value ? { quantity: known.value, source: known.sources[0]!, known: true } : USUAL_TENSION;
}
const USUAL_TENSION = {
  quantity: { value: 325, low: 250, high: 400, coverage: 0.9, unit: "mN/m" },
  source: "from-memory-handbooks",
  known: false,
};

/** Standard deviation of log10 η at the peak from the spread of the materials [-]. */
export function recipeSdOf(coats: readonly ReadCoat[], peakC: number): number {
  const { weightPercent, moleFractions } = mixture(coats);
  const at = (shares: Readonly<Record<string, number>>) => viscosityCurve(shares).logViscosity(peakC).value;
  const base = at(moleFractions);
  let variance = 0;
  for (const oxide of Object.keys(weightPercent)) {
    const sd = Math.max(...coats.map(({ chemistry }) => chemistry.weightPercentSd[oxide] ?? 0));
    if (sd > 0 && weightPercent[oxide]! + sd < 100) {
      variance += (at(moleFractionsOf(withMore(weightPercent, oxide, sd))) - base) ** 2;
    }
  }
  return Math.sqrt(variance);
}

/** Half-widths of independent thicknesses, together [mm]. */
export function togetherMm(coats: readonly ReadCoat[]): { thicknessMm: number; plusMinusMm: number } {
  return {
    thicknessMm: coats.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0),
    plusMinusMm: Math.hypot(...coats.map(({ plusMinusMm }) => plusMinusMm)),
  };
}
