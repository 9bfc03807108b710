/** From a request to what the simulation needs, with every assumption said aloud. @module */
import { type BodyModel, describeBody, Z90 } from "../body/index.ts";
import { analyseGlaze, type GlazeChemistry } from "../chemistry/index.ts";
import { EngineError, ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import {
  type ExpansionContributions,
  expansionContributions,
  type GlassProperties,
  glassProperties,
  RISE_WITH_TEMPERATURE,
  type ViscosityCurve,
  viscosityCurve,
  WITHOUT_PAPERS,
} from "../glass/index.ts";
import { type Estimate, expansionMeant, quantileOf, round } from "../quantity.ts";
import type { Glaze, OxideComposition, Recipe, SingleGlaze, StatedExpansion } from "../recipe/types.ts";
import { SET_POINT, TOUGHNESS } from "./constants.ts";
import { NORMAL_SHAPE } from "./draws.ts";
import { crystalSd, materialsSd } from "./glaze-doubts.ts";
import { coolingSchedule } from "./set-point.ts";
import type { Situation } from "./simulate.ts";
import type { Doubts, FitRequest } from "./types.ts";

/** What is taken where a request is silent. */
export const DEFAULTS = {
  thicknessMm: 0.3,
  /** Half-width of a 90 % interval of the thickness, as a share (common practice, no source). */
  thicknessShare: 0.25,
  wallMm: 5,
  glazed: "both-faces",
  coolingCPerHour: 100,
  serviceYears: 10,
  /** Half-width taken for a stated glaze expansion whose doubt is not told [1e-6/K] (common practice, no source). */
  statedPlusMinus: 0.4,
  /** Tg of a glaze of unknown composition [°C]; ± is one standard deviation (common practice, no source). */
  transitionC: 630,
  transitionSdC: 40,
  youngsGPa: 70,
  youngsSdGPa: 5,
} as const;

/** The question, made ready. */
export interface Prepared {
  situation: Situation;
  body: BodyModel;
  /** Null for a glaze known only by its expansion. */
  chemistry: GlazeChemistry | null;
  contributions: ExpansionContributions | null;
  model: string;
  /** Every coat, the outer one first; the fields above are the outer one's. */
  coats: readonly { chemistry: GlazeChemistry | null; thicknessMm: number }[];
  warnings: Notice[];
  cautions: Notice[];
  sources: string[];
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
    notes.push(...thicknessRemarks(glaze, thicknesses[i]!, at));
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

/** A schedule falls from segment to segment, at rates a kiln can keep; it is given once, not twice. */
function coolingIssues({ cooling, coolingCPerHour, peakC }: NonNullable<FitRequest["firing"]>): Issue[] {
  const issues: Issue[] = [];
  const rate = (value: number, pointer: string) => {
    if (value >= 1 && value <= 20000) return;
    const message = `Cooling lies between 1 and 20000 °C an hour; I read ${value}.`;
    issues.push({ pointer, message, allowed: [1, 20000] });
  };
  if (coolingCPerHour !== undefined) rate(coolingCPerHour, "/firing/coolingCPerHour");
  if (cooling === undefined) return issues;
  if (coolingCPerHour !== undefined) {
    issues.push({ pointer: "/firing/cooling", message: "Give one rate or a list of segments, not both." });
  }
  if (cooling.length === 0) {
    issues.push({
      pointer: "/firing/cooling",
      message: "A cooling needs at least one segment: where to, and how fast.",
    });
  }
  let before = peakC ?? 1700;
  cooling.forEach(({ toC, cPerHour, holdMinutes }, i) => {
    const at = `/firing/cooling/${i}`;
    if (!(toC < before) || toC < -50) {
      const message = `Each segment cools on from the one before: ${toC} °C is not below ${before} °C.`;
      issues.push({ pointer: `${at}/toC`, message });
    }
    rate(cPerHour, `${at}/cPerHour`);
    if (holdMinutes !== undefined && !(holdMinutes >= 0 && holdMinutes <= 10080)) {
      issues.push({ pointer: `${at}/holdMinutes`, message: "A soak lasts between 0 and 10080 minutes (a week)." });
    }
    before = toC;
  });
  return issues;
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

type GlazeReading = Omit<Prepared, "situation" | "body" | "coats"> & {
  properties: Pick<
    Situation,
    "expansion" | "recipeSd" | "transitionC" | "t12C" | "fragility" | "setPointSdK" | "youngsGPa" | "toughness"
  >;
};

function readGlaze(glaze: SingleGlaze, at: string, doubts: Doubts): GlazeReading {
  if ("expansion" in glaze && glaze.expansion) return readStated(glaze, at);
  let chemistry: GlazeChemistry;
  let properties: GlassProperties;
  let viscosity: ViscosityCurve;
  try {
    chemistry = analyseGlaze(glaze as Recipe | OxideComposition);
    properties = glassProperties(chemistry.moleFractions);
    viscosity = viscosityCurve(chemistry.moleFractions);
    refuseUnknowable(properties.expansion, chemistry.moleFractions);
  } catch (error) {
    if (!(error instanceof EngineError)) throw error;
    throw new EngineError(error.issues.map((issue) => ({ ...issue, pointer: at + issue.pointer })));
  }
  const under = (notices: readonly Notice[]) =>
    notices.map((notice) => (notice.pointer === undefined ? notice : { ...notice, pointer: at + notice.pointer }));
  const contributions = expansionContributions(chemistry.moleFractions);
  const crystals = doubts.crystals === false ? 0 : crystalSd(chemistry.fired.molePercent);
  const materials = doubts.materials === false ? 0 : materialsSd(chemistry, contributions.oxides);
  return {
    chemistry,
    contributions,
    model: "measured-glasses",
    properties: {
      expansion: doubts.betweenPapers === false ? agreed(properties.expansion) : properties.expansion,
      transitionC: properties.transitionC,
      ...settingFrom(properties.transitionC, viscosity),
      fragility: viscosity.parameters.fragility,
      youngsGPa: properties.youngsGPa,
      recipeSd: Math.hypot(materials, crystals),
      toughness: kindOf(chemistry.moleFractions),
    },
    warnings: [
      ...under(chemistry.warnings),
      ...under(properties.warnings),
      ...(crystals > 0 ? [crystalRemark(crystals, at)] : []),
    ],
    cautions: [...chemistry.cautions],
    sources: [...chemistry.sources, ...properties.sources],
  };
}

/** The expansion as it would be known if all papers agreed. */
function agreed({ value, scale, shape }: Estimate): Estimate {
  return { value, scale: scale * WITHOUT_PAPERS, shape };
}

function crystalRemark(sd: number, at: string): Notice {
  return {
    code: "crystals",
    message: `This glaze holds enough opacifier to stay milky with crystals, which are not glass: I allowed another ±${round(sd * Z90, 1)} ×10⁻⁶/K for them.`,
    pointer: at,
  };
}

/** Widest 90 % interval of the expansion with which a verdict still says something [1e-6/K]. */
export const WIDEST = 12;

/** Refuses glasses of which nothing can be said: nothing like them was ever measured. */
function refuseUnknowable(expansion: Estimate, moleFractions: Readonly<Record<string, number>>): void {
  const width = quantileOf(expansion, 0.95) - quantileOf(expansion, 0.05);
  if (width <= WIDEST) return;
  const [most] = Object.entries(moleFractions).sort((a, b) => b[1] - a[1]);
  const silica = round((moleFractions.SiO2 ?? 0) * 100, 0);
  throw new ImpossibleValueError([
    {
      pointer: "",
      message: `I can't judge this one: no glass like it was ever measured (${silica} mol % silica${
        most && most[0] !== "SiO2" ? `, ${round(most[1] * 100, 0)} mol % ${most[0]}` : ""
      }). Glazes I know hold 40 to 85 mol % silica with a few per cent of alumina and at least 5 mol % of fluxes. Check the recipe for a missing line.`,
    },
  ]);
}

/** Which toughness range applies: lead above 5 mol % lowers it, boron above 10 mol % raises it (data/fit/mechanics.json). */
function kindOf(moleFractions: Readonly<Record<string, number>>): Situation["toughness"] {
  if ((moleFractions.PbO ?? 0) > 0.05) return "lead";
  if ((moleFractions.B2O3 ?? 0) > 0.1) return "borosilicate";
  return "alkali-lime";
}

/** The less tough of two kinds of glaze. */
function weaker(a: Situation["toughness"], b: Situation["toughness"]): Situation["toughness"] {
  return TOUGHNESS[b].value < TOUGHNESS[a].value ? b : a;
}

/**
 * Temperature of 10^12 Pa·s from two witnesses of like weight: the viscosity curve, fitted to few glasses so stiff, and
 * the glass transition, reported for many. Where they part, half of the gap is added to the doubt of the set point.
 *
 *     value (T_curve + Tg)/2,   scale √(s_curve² + s_Tg²)/2,   set point ± √(25² + (gap/2)²)
 *
 * @returns estimate [°C] with the shape of the transition's residuals; standard deviation of the set point about it [K]
 */
function settingFrom(transition: Estimate, { temperatureC }: ViscosityCurve): Pick<Situation, "t12C" | "setPointSdK"> {
  const stiff = temperatureC(LOG_VISCOSITY_AT_TG);
  const gap = Math.abs(stiff.value - transition.value) / 2;
  const scale = Math.hypot(stiff.scale, transition.scale) / 2;
  return {
    t12C: { value: (stiff.value + transition.value) / 2, scale, shape: transition.shape },
    setPointSdK: Math.hypot(SET_POINT.shiftSdK, gap),
  };
}

/** log10 of the viscosity at the glass transition [Pa·s]. */
const LOG_VISCOSITY_AT_TG = 12;
/** Standard deviation of a stated glass transition [K] (common practice, no source). */
const STATED_TRANSITION_SD_C = 10;

/** Expansions of glasses that can be glazes [1e-6/K]. */
const POSSIBLE: readonly [number, number] = [0, 20];

function readStated(glaze: StatedExpansion, pointer: string): GlazeReading {
  const { value, rangeC, plusMinus } = glaze.expansion;
  const at = `${pointer}/expansion`;
  const issues: Issue[] = [];
  if (!(value >= POSSIBLE[0] && value <= POSSIBLE[1])) {
    const meant = expansionMeant(value);
    issues.push({
      pointer: `${at}/value`,
      message: `${value} cannot be the expansion of a glaze in 1e-6/K; they run from about 2 to 13.${
        meant === undefined ? "" : ` If it is counted in another unit, you may mean ${meant}.`
      }`,
      allowed: [...POSSIBLE],
      ...(meant === undefined ? {} : { suggestion: String(meant) }),
    });
  }
  const [from, to] = rangeC ?? [20, 300];
  if (!(to - from >= 50) || from < -50 || to > 900) {
    issues.push({
      pointer: `${at}/rangeC`,
      message: `A glaze's mean is taken from a cold to a hot temperature at least 50 °C apart, up to 900 °C; I read ${from} to ${to}.`,
    });
  }
  if (plusMinus !== undefined && !(plusMinus >= 0 && plusMinus <= 5)) {
    issues.push({ pointer: `${at}/plusMinus`, message: "The tolerance lies between 0 and 5 (1e-6/K)." });
  }
  const { transitionC } = glaze;
  if (transitionC !== undefined && !(transitionC >= 300 && transitionC <= 900)) {
    issues.push({
      pointer: `${pointer}/transitionC`,
      message: "The glass transition of a glaze lies between 300 and 900 °C.",
    });
  }
  if (issues.length > 0) throw new ImpossibleValueError(issues);

  const warnings: Notice[] = [];
  if (!rangeC) {
    warnings.push({
      code: "range-assumed",
      message: `No temperature range stands beside ${value} ×10⁻⁶/K. I have taken it as the mean from 20 to 300 °C.`,
      pointer: `${at}/rangeC`,
    });
  }
  if (plusMinus === undefined) {
    warnings.push({
      code: "tolerance-assumed",
      message: `No tolerance stands beside ${value} ×10⁻⁶/K. I have taken ±${DEFAULTS.statedPlusMinus} ×10⁻⁶/K.`,
      pointer: `${at}/plusMinus`,
    });
  }
  if (transitionC === undefined) {
    warnings.push({
      code: "set-point-assumed",
      message: `The recipe is unknown, so I took a glass transition of ${DEFAULTS.transitionC} ± ${round(DEFAULTS.transitionSdC * Z90, 0)} °C.`,
      pointer: `${pointer}/transitionC`,
    });
  }
  // A mean over another range is the value at its middle; brought to the middle of 20–300 °C.
  const { perKelvin, anchorC } = RISE_WITH_TEMPERATURE;
  const toBooks = 1 / (1 + perKelvin * ((from + to) / 2 - anchorC));
  const estimate = (centre: number, sd: number) => ({ value: centre, scale: sd, shape: NORMAL_SHAPE });
  const transition = estimate(
    transitionC ?? DEFAULTS.transitionC,
    transitionC === undefined ? DEFAULTS.transitionSdC : STATED_TRANSITION_SD_C,
  );
  return {
    chemistry: null,
    contributions: null,
    model: "stated",
    properties: {
      expansion: estimate(value * toBooks, ((plusMinus ?? DEFAULTS.statedPlusMinus) / Z90) * toBooks),
      recipeSd: 0,
      transitionC: transition,
      t12C: transition,
      fragility: SET_POINT.fragility,
      setPointSdK: SET_POINT.shiftSdK,
      youngsGPa: estimate(DEFAULTS.youngsGPa, DEFAULTS.youngsSdGPa),
      toughness: "alkali-lime",
    },
    warnings,
    cautions: [],
    sources: [],
  };
}

/** Thickness left out, or unusual. */
function thicknessRemarks({ thicknessMm }: SingleGlaze, taken: number, at: string): Notice[] {
  if (thicknessMm === undefined) {
    const message = `You did not say how thick the fired glaze is. I have taken ${taken} mm.`;
    return [{ code: "thickness-assumed", message, pointer: `${at}/thicknessMm` }];
  }
  if (thicknessMm <= 1.5) return [];
  const message = `${thicknessMm} mm is very thick for a glaze: it may run, crawl or pinhole, and cracks start at a small pull.`;
  return [{ code: "thick-glaze", message, pointer: `${at}/thicknessMm` }];
}

/** Unusual but possible: answered with a warning. */
function remarks(request: FitRequest, body: BodyModel, thicknessMm: number, wallMm: number): Notice[] {
  const notices: Notice[] = [];
  if (wallMm < thicknessMm * 3) {
    notices.push({
      code: "thin-wall",
      message: `The wall (${wallMm} mm) is hardly thicker than the glaze (${thicknessMm} mm): clay and glaze share the stress, and a thin wall may split.`,
      pointer: "/ware/wallMm",
    });
  }
  const peak = request.firing?.peakC;
  const [low, high] = body.class.firingC;
  if (peak !== undefined && body.classId !== null && (peak < low - 20 || peak > high + 20)) {
    notices.push({
      code: "firing-unusual",
      message: `${peak} °C is outside what ${body.class.name} is usually fired to (${low}–${high} °C). Fired short it stays porous and grows with moisture; fired hard its quartz dissolves and it expands less.`,
      pointer: "/firing/peakC",
    });
  }
  return notices;
}
