/** The temperature at which a cooling glaze begins to hold stress. @module */
import { SET_POINT } from "./constants.ts";

/** log10 of the viscosity at the glass transition temperature as reported by dilatometer or calorimeter [Pa·s]. */
const LOG_VISCOSITY_AT_TG = 12;

/**
 * Viscosity at which stress stays: the relaxation time equals the time spent in the structural-relaxation interval.
 *
 *     η = G δT / q
 *
 * @param coolingCPerHour - cooling rate through the set point [K/h]
 * @returns log10 of the viscosity [Pa·s]; 13.5 at 50 K/h, 13.0 at 150 K/h
 * @example logSettingViscosity(100) // 13.164
 */
export function logSettingViscosity(coolingCPerHour: number): number {
  const ratePerSecond = coolingCPerHour / 3600;
  return Math.log10((SET_POINT.shearModulusGPa * 1e9 * SET_POINT.structuralIntervalK) / ratePerSecond);
}

/**
 * How far the set point lies above Tg.
 *
 *     Ts − Tg = −(log η_set − 12) · Tg/m        slope of log η at Tg: m/Tg, Tg in kelvin
 *
 * @param transitionC - glass transition temperature, 10^12 Pa·s [°C]
 * @param coolingCPerHour - cooling rate [K/h]
 * @returns offset [K], negative for kiln cooling: slower cooling sets lower
 * @remarks Fragility m = 36 for alkali-lime silicates (from memory). A glaze on ware has been seen to reach zero stress
 * 20–100 K above its dilatometric Tg on heating (Inada 1978); the doubt of ±25 K (one standard deviation) leans on both.
 * @example setPointOffset(600, 100) // −28.2
 */
export function setPointOffset(transitionC: number, coolingCPerHour: number): number {
  return offsetAt(transitionC, logSettingViscosity(coolingCPerHour));
}

/** {@link setPointOffset} with the setting viscosity already worked out [log10 Pa·s]. */
export function offsetAt(transitionC: number, logViscosity: number): number {
  const kelvinPerDecade = (transitionC + 273.15) / SET_POINT.fragility;
  return -(logViscosity - LOG_VISCOSITY_AT_TG) * kelvinPerDecade + SET_POINT.shiftK;
}

/** Ramp of a cooling schedule, with the soak at its end. */
export interface Cooling {
  fromC: number;
  toC: number;
  /** log10 of the viscosity at which the ramp's rate sets the glass [Pa·s]. */
  logRamp: number;
  /** log10 of the viscosity that the soak still relaxes [Pa·s]; −Infinity without a soak. */
  logHold: number;
}

/**
 * A schedule made ready: each ramp and soak with the viscosity it can still relax.
 *
 *     ramp: η = G δT/q      soak: η = G t
 *
 * @param segments - cooling from hot to cold, rates [K/h], soaks [min]
 * @example coolingSchedule([{ toC: 20, cPerHour: 100 }])[0].logRamp // 13.164
 */
export function coolingSchedule(
  segments: readonly { toC: number; cPerHour: number; holdMinutes?: number }[],
): Cooling[] {
  let fromC = Number.POSITIVE_INFINITY;
  return segments.map(({ toC, cPerHour, holdMinutes = 0 }) => {
    const ramp = { fromC, toC, logRamp: logSettingViscosity(cPerHour), logHold: holdLog(holdMinutes) };
    fromC = toC;
    return ramp;
  });
}

function holdLog(minutes: number): number {
  return minutes > 0 ? Math.log10(SET_POINT.shearModulusGPa * 1e9 * minutes * 60) : Number.NEGATIVE_INFINITY;
}

/**
 * Where a glass sets along a schedule: the last place at which it could still relax.
 * A ramp sets it where its viscosity reaches the ramp's; a soak below that point sets it anew, if the soak is long enough.
 * @param transitionC - Tg [°C]
 * @param schedule - from {@link coolingSchedule}
 * @returns set point [°C]
 */
export function setPointAlong(transitionC: number, schedule: readonly Cooling[]): number {
  let setAt: number | undefined;
  for (const { fromC, toC, logRamp, logHold } of schedule) {
    const byRamp = transitionC + offsetAt(transitionC, logRamp);
    if (setAt === undefined && byRamp > toC) setAt = Math.min(byRamp, fromC);
    const bySoak = transitionC + offsetAt(transitionC, logHold);
    if (toC >= bySoak) setAt = undefined;
  }
  // A schedule that ends hot goes on cooling at its last rate.
  const last = schedule.at(-1)!;
  return setAt ?? Math.min(last.toC, transitionC + offsetAt(transitionC, last.logRamp));
}
