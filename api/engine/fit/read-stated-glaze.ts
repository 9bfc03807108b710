/** A glaze known only by its expansion. @module */
import { Z90 } from "../body/index.ts";
import { ImpossibleValueError, type Issue, type Notice } from "../errors.ts";
import { RISE_WITH_TEMPERATURE } from "../glass/index.ts";
import { expansionMeant, round } from "../quantity.ts";
import type { StatedExpansion } from "../recipe/types.ts";
import { SET_POINT } from "./constants.ts";
import { DEFAULTS } from "./defaults.ts";
import { NORMAL_SHAPE } from "./draws.ts";
import type { GlazeReading } from "./read-glaze.ts";

/** Standard deviation of a stated glass transition [K] (common practice, no source). */
const STATED_TRANSITION_SD_C = 10;

/** Expansions of glasses that can be glazes [1e-6/K]. */
const POSSIBLE: readonly [number, number] = [0, 20];

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
    viscosity: null,
    warnings,
    cautions: [],
    sources: [],
  };
}
