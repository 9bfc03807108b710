/** °C or °F, millimetres or inches: what is typed and what is read. The service itself speaks °C and mm. @module */

export type Temperature = "C" | "F";
export type Length = "mm" | "in";
export interface Units {
  temperature: Temperature;
  length: Length;
}
export const METRIC: Units = { temperature: "C", length: "mm" };

const MM_PER_INCH = 25.4;
const KEY = "ringtrue-units";

/** @example toCelsius(2264, "F") // 1240 */
export const toCelsius = (value: number, unit: Temperature) => (unit === "F" ? ((value - 32) * 5) / 9 : value);
export const fromCelsius = (c: number, unit: Temperature) => (unit === "F" ? (c * 9) / 5 + 32 : c);
/** Differences and rates have no 32 in them. @example toKelvins(180, "F") // 100 */
export const toKelvins = (value: number, unit: Temperature) => (unit === "F" ? (value * 5) / 9 : value);
export const fromKelvins = (k: number, unit: Temperature) => (unit === "F" ? (k * 9) / 5 : k);
export const toMm = (value: number, unit: Length) => (unit === "in" ? value * MM_PER_INCH : value);
export const fromMm = (mm: number, unit: Length) => (unit === "in" ? mm / MM_PER_INCH : mm);

/** A figure without needless digits. @example tidy(0.30000000004) // "0.3" */
export const tidy = (value: number, decimals = 4): string => String(Number(value.toFixed(decimals)));

/** A temperature to 5 degrees, with its unit. @example sayTemperature(642, METRIC) // "640 °C" */
export function sayTemperature(c: number, { temperature }: Units, step = 5): string {
  return `${Math.round(fromCelsius(c, temperature) / step) * step}\u00a0°${temperature}`;
}

/** A length with its unit. @example sayLength(0.3, METRIC) // "0.30 mm" */
export function sayLength(mm: number, { length }: Units): string {
  return length === "in" ? `${fromMm(mm, length).toFixed(3)}\u00a0in` : `${mm.toFixed(2)}\u00a0mm`;
}

const NUMBER = "(\\d+(?:\\.\\d+)?)";
const RATE = new RegExp(`${NUMBER}[ \u00a0](?:°C an hour|K/h|°C/h)`, "g");
const SPAN = new RegExp(`${NUMBER}( to |–| and )${NUMBER}([ \u00a0])°C`, "g");
const ONE = new RegExp(`(−?)${NUMBER}([ \u00a0])°C`, "g");
const LENGTH = new RegExp(`${NUMBER}([ \u00a0])mm\\b`, "g");

/**
 * Turns the units in a sentence of the service into the reader's.
 * @example localise("sets near 640 °C, 0.30 mm thick", { temperature: "F", length: "in" })
 * // "sets near 1184 °F, 0.012 in thick"
 */
export function localise(text: string, units: Units): string {
  let out = text;
  if (units.temperature === "F") {
    const f = (c: string | number) => String(Math.round(fromCelsius(Number(c), "F")));
    out = out
      .replace(RATE, (_, rate: string) => `${Math.round(fromKelvins(Number(rate), "F"))}\u00a0°F an hour`)
      .replace(SPAN, (_, a: string, mid: string, b: string, gap: string) => `${f(a)}${mid}${f(b)}${gap}°F`)
      .replace(ONE, (_, minus: string, c: string, gap: string) => `${f(minus ? -Number(c) : c)}${gap}°F`);
  }
  if (units.length === "in") {
    out = out.replace(LENGTH, (_, mm: string, gap: string) => `${(Number(mm) / MM_PER_INCH).toFixed(3)}${gap}in`);
  }
  return out;
}

export function keptUnits(): Units {
  const kept = localStorage.getItem(KEY) ?? "";
  return { temperature: kept.includes("F") ? "F" : "C", length: kept.includes("in") ? "in" : "mm" };
}
export function keepUnits({ temperature, length }: Units): void {
  localStorage.setItem(KEY, `${temperature} ${length}`);
}
