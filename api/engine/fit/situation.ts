/** From a request to what the simulation needs, with every assumption said aloud. @module */
import { type BodyModel, describeBody, Z90 } from "../body/index.ts";
import { EngineError, ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { RISE_WITH_TEMPERATURE } from "../glass/index.ts";
import type { Glaze, SingleGlaze } from "../recipe/types.ts";
import { DEFAULTS } from "./defaults.ts";
import { coolingIssues } from "./read-cooling.ts";
import { type GlazeReading, readGlaze } from "./read-glaze.ts";
import { peakRemarks, remarks, thicknessRemarks } from "./remarks.ts";
import { coolingSchedule } from "./set-point.ts";
import type { Situation } from "./simulate.ts";
import { weaker } from "./toughness.ts";
import type { FitRequest } from "./types.ts";

/** The question, made ready; what is told of the glaze is told of the outer coat. */
export interface Prepared extends Omit<GlazeReading, "properties" | "viscosity"> {
  situation: Situation;
  body: BodyModel;
  /** Every coat, the outer one first. */
  coats: readonly (Pick<GlazeReading, "chemistry"> & { thicknessMm: number })[];
}

/**
 * Makes a request ready; collects every issue of glaze, body, firing and ware before refusing.
 * @param request - the question
 * @returns the situation in the engine's units, with assumptions as warnings
 * @throws EngineError with all issues, pointers from the root of the request
 */
export function prepare(request: FitRequest): Prepared {
  const issues: Issue[] = [];
  const coats = coatsOf(request.glaze);
  const read = coats.map(({ glaze, at }) => collect(issues, () => readGlaze(glaze, at, request.doubts ?? {})));
  const body = collect(issues, () => describeBody(request.body, "/body"));
  const { firing = {}, ware = {} } = request;
  const wallMm = ware.wallMm ?? DEFAULTS.wallMm;
  const serviceYears = ware.serviceYears ?? DEFAULTS.serviceYears;
  const cooling = firing.cooling ?? [{ toC: 20, cPerHour: firing.coolingCPerHour ?? DEFAULTS.coolingCPerHour }];
  const edgeMm = ware.edgeRadiusMm ?? Math.max(wallMm / 2, 0.25);
  const within = (value: number, low: number, high: number, pointer: string, said: string, unit = " mm") => {
    if (value >= low && value <= high) return;
    issues.push({ pointer, message: `${said}; I read ${value}${unit}.`, allowed: [low, high] });
  };
  const thicknesses = coats.map(({ glaze, at }) => {
    const mm = glaze.thicknessMm ?? DEFAULTS.thicknessMm;
    within(mm, 0.01, 5, `${at}/thicknessMm`, "A fired glaze is between 0.01 and 5 mm thick");
    return mm;
  });
  within(wallMm, 0.5, 100, "/ware/wallMm", "A clay wall is between 0.5 and 100 mm thick");
  within(edgeMm, 0.1, 1000, "/ware/edgeRadiusMm", "An edge has a radius between 0.1 and 1000 mm");
  issues.push(...coolingIssues(firing));
  within(serviceYears, 0.01, 200, "/ware/serviceYears", "Service lies between 0.01 and 200 years", "");
  const glazes = read.filter((glaze) => glaze !== undefined);
  const [outer, ...under] = glazes;
  if (issues.length > 0 || !outer || !body) throw new EngineError(issues);

  const warnings: Notice[] = [];
  const cautions: Notice[] = [];
  const sources: string[] = [];
  const notes: Notice[] = [];
  let skinMm = 0;
  coats.forEach(({ glaze, at }, i) => {
    const reading = glazes[i]!;
    warnings.push(...reading.warnings);
    cautions.push(...reading.cautions);
    sources.push(...reading.sources);
    notes.push(...thicknessRemarks(glaze, thicknesses[i]!, at), ...peakRemarks(reading.viscosity, firing.peakC));
    skinMm += thicknesses[i]!;
  });
  warnings.push(...body.warnings, ...notes, ...remarks(request, body, skinMm, wallMm));
  sources.push(RISE_WITH_TEMPERATURE.source, ...body.sources);
  const { chemistry, contributions, model, properties } = outer;
  const { expansion, recipeSd, transitionC, t12C, fragility, setPointSdK, youngsGPa } = properties;
  return {
    chemistry,
    contributions,
    model,
    coats: glazes.map((glaze, i) => ({ chemistry: glaze.chemistry, thicknessMm: thicknesses[i]! })),
    body,
    warnings,
    cautions: glazes.length > 1 ? onceEach(cautions) : cautions,
    sources,
    // Written out: the runtime is slow at literals that go on after a spread, and every fit makes one.
    situation: {
      expansion,
      recipeSd,
      transitionC,
      t12C,
      fragility,
      setPointSdK,
      youngsGPa,
      // A crack runs from the coat that it runs through most easily.
      toughness: glazes.map((glaze) => glaze.properties.toughness).reduce(weaker),
      thicknessM: thicknesses[0]! / 1000,
      under: under.map(({ properties }, i) => ({ ...properties, thicknessM: thicknesses[i + 1]! / 1000 })),
      rise: RISE_WITH_TEMPERATURE,
      thicknessSd: DEFAULTS.thicknessShare / Z90,
      body,
      wallM: wallMm / 1000,
      glazed: ware.glazed ?? DEFAULTS.glazed,
      cooling: coolingSchedule(cooling),
      serviceYears,
      edgeM: edgeMm / 1000,
      onWare: request.doubts?.onWare !== false,
    },
  };
}

/** Most coats that are answered for. */
const MOST_COATS = 6;

/** The coats of a glaze with their places in the request, the outer one first. */
function coatsOf(glaze: Glaze): { glaze: SingleGlaze; at: string }[] {
  if (!("layers" in glaze) || !glaze.layers) return [{ glaze: glaze as SingleGlaze, at: "/glaze" }];
  if (glaze.layers.length === 0 || glaze.layers.length > MOST_COATS) {
    const message = `Give 1 to ${MOST_COATS} coats, the outer one first; I read ${glaze.layers.length}.`;
    throw new ImpossibleValueError([{ pointer: "/glaze/layers", message, allowed: [1, MOST_COATS] }]);
  }
  return glaze.layers.map((coat, i) => ({ glaze: coat, at: `/glaze/layers/${i}` }));
}

/** A caution is said once, however many coats ask for it. */
function onceEach(notices: readonly Notice[]): Notice[] {
  return [...new Map(notices.map((notice) => [notice.code, notice])).values()];
}

function collect<T>(issues: Issue[], run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof EngineError)) throw error;
    issues.push(...error.issues);
    return undefined;
  }
}
