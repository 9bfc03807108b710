/** A glaze known only by its expansion. @module */
import { Z90 } from "../body/index.ts";
import { ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { RISE_WITH_TEMPERATURE } from "../glass/index.ts";
import { expansionMeant, round } from "../quantity.ts";
import type { StatedExpansion } from "../recipe/types.ts";
import { meanIssues, rangeRemarks } from "../stated-mean.ts";
import { SET_POINT, TOUGHNESS } from "./constants.ts";
import { DEFAULTS } from "./defaults.ts";
import { NORMAL_SHAPE } from "./draws.ts";
import type { GlazeReading } from "./read-glaze.ts";

/** Standard deviation of a stated glass transition [K] (common practice, no source). */
const STATED_TRANSITION_SD_C = 10;

/** Expansions of glasses that can be glazes [1e-6/K]. */
const POSSIBLE: readonly [number, number] = [0, 20];

/** Range of a mean where none is told [°C]. */
const BOOKS = [20, 300] as const;

/**
 * A mean over 20–300 °C as a share of one over another range: a mean is the value at the middle of its range [-].
 * @example bookShare([20, 500]) // 0.901
 */
export function bookShare([from, to]: readonly [number, number]): number {
  const { perKelvin, anchorC } = RISE_WITH_TEMPERATURE;
  return 1 / (1 + perKelvin * ((from + to) / 2 - anchorC));
}

/** How far past its transition a bar of glass can be run before it sags [K] (common practice, no source). */
const SAGS_BEYOND_K = 50;

/** A mean to where the glaze is soft was not measured, but worked out as if glass grew by straight lines. */
export function softRemarks(
  value: number,
  range: readonly [number, number],
  transitionC: number,
  at: string,
): Notice[] {
  if (range[1] <= transitionC + SAGS_BEYOND_K) return [];
  const message = `No bar of this glaze can be run to ${range[1]} °C: it softens near ${round(transitionC, 0)} °C. Taken as it stands, ${value} makes ${round(value * bookShare(range), 2)} ×10⁻⁶/K over 20–300 °C. If it was worked out from a recipe, such figures are meant for 20 to 300 or 400 °C: give that range, or better the recipe.`;
  return [{ code: "range-past-softening", message, pointer: `${at}/rangeC` }];
}

/**
 * Reads a stated expansion, with what is assumed about the rest said aloud.
 *
 *     over 20–300 °C: α/(1 + s((a + b)/2 − 160)) for a mean stated over a to b
 *
 * @param glaze - mean expansion [1e-6/K], its range [°C] and tolerance, glass transition [°C]
 * @param pointer - JSON Pointer of the glaze in the request
 * @throws ImpossibleValueError with every fault
 */
export function readStated(glaze: StatedExpansion, pointer: string): GlazeReading {
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
  issues.push(...meanIssues("glaze", rangeC ?? BOOKS, plusMinus, at));
  const { transitionC } = glaze;
  if (transitionC !== undefined && !(transitionC >= 300 && transitionC <= 900)) {
    issues.push({
      pointer: `${pointer}/transitionC`,
      message: "The glass transition of a glaze lies between 300 and 900 °C.",
    });
  }
  if (issues.length > 0) throw new ImpossibleValueError(issues);

  const warnings: Notice[] = rangeRemarks(rangeC, at);
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
  const range = rangeC ?? BOOKS;
  const toBooks = bookShare(range);
  warnings.push(...softRemarks(value, range, transitionC ?? DEFAULTS.transitionC, at));
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
      toughness: TOUGHNESS["alkali-lime"],
    },
    viscosity: null,
    warnings,
    cautions: [],
    sources: [],
  };
}
