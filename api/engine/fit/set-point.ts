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
