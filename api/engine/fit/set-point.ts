/** The temperature at which a cooling glaze begins to hold stress. @module */
import { myegaTemperature } from "../glass/index.ts";
import { SET_POINT } from "./constants.ts";

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
 * Limit of log η at infinite temperature [log10 Pa·s], used for every glass: the fitted −1.951556 (data/models/viscosity.json)
 * would move a set point by less than 0.001 K.
 */
const LIMIT = -1.95;
const ZERO_C = 273.15;

/**
 * Temperature of a viscosity over that of 10^12 Pa·s, both in kelvin, on the glass's own curve.
 * @param logViscosity - log10 η [Pa·s]
 * @param fragility - slope of log η against T₁₂/T at T₁₂ [-]
 * @returns ratio [-], below 1 for stiffer glass; the curve's form makes it the same for every T₁₂
 * @example settingRatio(12, 36) // 1
 */
export function settingRatio(logViscosity: number, fragility: number): number {
  if (logViscosity <= LIMIT) return Number.POSITIVE_INFINITY;
  return myegaTemperature({ limit: LIMIT, t12K: 1, fragility }, logViscosity).value;
}

/**
 * How far the set point lies above the temperature of 10^12 Pa·s.
 * @param t12C - temperature of 10^12 Pa·s, about Tg as reported by dilatometer or calorimeter [°C]
 * @param coolingCPerHour - cooling rate [K/h]
 * @param fragility - of the glass [-]; 36 for alkali-lime silicates (from memory)
 * @returns offset [K], negative for kiln cooling: slower cooling sets lower
 * @remarks Of the bulk glass. On ware a thin glaze takes up clay and sets higher: zero stress has been seen 20–100 K
 * above the dilatometric Tg on heating (Inada 1978); simulate.ts adds that by thickness.
 * @example setPointOffset(600, 100) // −26.4
 */
export function setPointOffset(t12C: number, coolingCPerHour: number, fragility = SET_POINT.fragility): number {
  return (t12C + ZERO_C) * (settingRatio(logSettingViscosity(coolingCPerHour), fragility) - 1);
}

/** Ramp of a cooling schedule, with the soak at its end, for any glass. */
export interface Cooling {
  fromC: number;
  toC: number;
  /** log10 of the viscosity at which the ramp's rate sets a glass [Pa·s]. */
  logRamp: number;
  /** log10 of the viscosity that the soak still relaxes [Pa·s]; −Infinity without a soak. */
  logHold: number;
}

/** The same for one glass: temperatures over that of 10^12 Pa·s, in kelvin [-]. */
export interface GlassCooling {
  fromC: number;
  toC: number;
  ramp: number;
  hold: number;
}

/** A schedule read for one glass by its fragility. */
export function coolingOf(schedule: readonly Cooling[], fragility: number): GlassCooling[] {
  return schedule.map(({ fromC, toC, logRamp, logHold }) => ({
    fromC,
    toC,
    ramp: settingRatio(logRamp, fragility),
    hold: settingRatio(logHold, fragility),
  }));
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

/** No soak relaxes nothing: log 0 is −Infinity. */
function holdLog(minutes: number): number {
  return Math.log10(SET_POINT.shearModulusGPa * 1e9 * minutes * 60);
}

/**
 * Where a glass sets along a schedule: the last place at which it could still relax.
 * A ramp sets it where its viscosity reaches the ramp's; a soak below that point sets it anew, if the soak is long enough.
 * @param t12C - temperature of 10^12 Pa·s [°C]
 * @param schedule - from {@link coolingOf}
 * @returns set point [°C]
 */
export function setPointAlong(t12C: number, schedule: readonly GlassCooling[]): number {
  const kelvin = t12C + ZERO_C;
  let setAt = Number.POSITIVE_INFINITY;
  for (const { fromC, toC, ramp, hold } of schedule) {
    const byRamp = kelvin * ramp - ZERO_C;
    if (byRamp <= fromC) setAt = Math.max(byRamp, toC);
    if (toC >= kelvin * hold - ZERO_C) setAt = toC;
  }
  // A schedule that ends hot goes on cooling at its last rate.
  const last = schedule.at(-1)!;
  return setAt <= last.toC ? Math.min(setAt, kelvin * last.ramp - ZERO_C) : setAt;
}
